package spotline.demo;

/**
 * Where the emitting atoms sit, which decides the loss tail that comes with a zero-loss peak.
 *
 * <p>The reduced thickness {@code a = t / (L cos theta)} is that of the layer in attenuation lengths along the path out.
 * With {@code k(s)} the Fourier transform of {@link LossFunction}, electrons from depth x arrive with the transfer
 * {@code exp(-(x / (L cos theta)) (1 - k))}; the integral over the depths of the emitters, divided by its zero-loss part
 * ({@code k = 0}), is {@link #transfer}: every order of multiple scattering is in it.
 *
 * <p>Source: S. Tougaard, Surf. Interface Anal. 11 (1988) 453, for the depth integral; the quotients are derived here.
 */
public sealed interface Depth {
    /** Transfer function relative to the zero-loss peak, from {@code k = k(s)}; {@code 1} where {@code k = 0}. */
    Complex transfer(Complex k);

    /** Share of the zero-loss electrons that come through, relative to a bare half-space of the same atoms. */
    double zeroLossShare();

    /** Emitters fill the half-space below a layer: {@code exp(a k) / (1 - k)}. A bare half-space has a = 0. */
    record Below(double reducedThickness) implements Depth {
        public Below {
            check(reducedThickness);
        }

        @Override
        public Complex transfer(Complex k) {
            Complex bare = Complex.ONE.minus(k).inverse();
            return reducedThickness == 0
                    ? bare
                    : k.times(reducedThickness).exp().times(bare);
        }

        @Override
        public double zeroLossShare() {
            return StrictMath.exp(-reducedThickness);
        }
    }

    /** Emitters fill a layer at the surface: {@code (1 - exp(-a (1 - k))) / ((1 - k) (1 - exp(-a)))}. */
    record Within(double reducedThickness) implements Depth {
        public Within {
            check(reducedThickness);
            if (reducedThickness == 0) throw new IllegalArgumentException("a layer without thickness emits nothing");
        }

        @Override
        public Complex transfer(Complex k) {
            Complex path = Complex.ONE.minus(k);
            Complex escaped = Complex.ONE.minus(path.times(-reducedThickness).exp());
            return escaped.times(path.inverse()).times(1 / zeroLossShare());
        }

        @Override
        public double zeroLossShare() {
            return -StrictMath.expm1(-reducedThickness);
        }
    }

    private static void check(double reducedThickness) {
        if (!(reducedThickness >= 0) || Double.isInfinite(reducedThickness)) {
            throw new IllegalArgumentException("reduced thickness must be 0 or more, was " + reducedThickness);
        }
    }
}
