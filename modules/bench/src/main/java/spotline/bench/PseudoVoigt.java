package spotline.bench;

/** Sum of a Gaussian and a Lorentzian of one width, by area, at one point: value, then derivatives. */
final class PseudoVoigt {
    private static final double FOUR_LN2 = 4 * Math.log(2);
    private static final double GAUSS = Math.sqrt(Math.PI / FOUR_LN2);
    private static final double LORENTZ = 0.5 * Math.PI;

    private PseudoVoigt() {}

    static double value(double x, double position, double area, double width, double m) {
        double t = (x - position) / width;
        double exponent = FOUR_LN2 * t * t;
        double gauss = exponent > 40 ? 0 : Math.exp(-exponent);
        return area / (width * ((1 - m) * GAUSS + m * LORENTZ)) * ((1 - m) * gauss + m / (1 + 4 * t * t));
    }

    /** Value and derivatives by position, area, width and fraction. */
    static void evaluate(double x, double position, double area, double width, double m, double[] out) {
        double t = (x - position) / width;
        double exponent = FOUR_LN2 * t * t;
        double gauss = exponent > 40 ? 0 : Math.exp(-exponent);
        double lorentz = 1 / (1 + 4 * t * t);
        double norm = (1 - m) * GAUSS + m * LORENTZ;
        double unit = 1 / (width * norm);
        double sum = (1 - m) * gauss + m * lorentz;
        double slope = area * unit / width * ((1 - m) * gauss * 2 * FOUR_LN2 + m * lorentz * lorentz * 8) * t;
        out[0] = area * unit * sum;
        out[1] = slope;
        out[2] = unit * sum;
        out[3] = slope * t - out[0] / width;
        out[4] = area * unit * (lorentz - gauss - (LORENTZ - GAUSS) / norm * sum);
    }
}
