package spotline.demo;

/**
 * A complex number with just the arithmetic that a transfer function needs. Elementary functions are the reproducible
 * ones of {@link StrictMath}: the same spectra must come out on every machine.
 */
public record Complex(double re, double im) {
    static final Complex ONE = new Complex(1, 0);

    Complex minus(Complex other) {
        return new Complex(re - other.re, im - other.im);
    }

    Complex times(double factor) {
        return new Complex(re * factor, im * factor);
    }

    Complex times(Complex other) {
        return new Complex(re * other.re - im * other.im, re * other.im + im * other.re);
    }

    Complex inverse() {
        double norm = re * re + im * im;
        return new Complex(re / norm, -im / norm);
    }

    Complex exp() {
        double size = StrictMath.exp(re);
        return new Complex(size * StrictMath.cos(im), size * StrictMath.sin(im));
    }
}
