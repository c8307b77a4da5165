package spotline.bench;

/** Lines of fixed Lorentzian fraction on a line: position, area, width of each, constant, slope. */
final class SurveyPeer extends PeerModel {
    private final int lines;
    private final double fraction;
    private final double origin;

    SurveyPeer(double[] x, double[] y, double[] deviations, int lines, double fraction, double origin, double[] start) {
        super(x, y, deviations, start);
        this.lines = lines;
        this.fraction = fraction;
        this.origin = origin;
    }

    @Override
    void values(double[] p, double[] out) {
        int last = 3 * lines;
        for (int i = 0; i < x.length; i++) {
            double sum = p[last] + p[last + 1] * (x[i] - origin);
            for (int k = 0; k < last; k += 3) sum += PseudoVoigt.value(x[i], p[k], p[k + 1], p[k + 2], fraction);
            out[i] = sum * weight[i];
        }
    }

    @Override
    void evaluate(double[] p, double[] out, double[][] jacobian) {
        int last = 3 * lines;
        double[] line = new double[5];
        for (int i = 0; i < x.length; i++) {
            double[] row = jacobian[i];
            double root = weight[i];
            double sum = p[last] + p[last + 1] * (x[i] - origin);
            for (int k = 0; k < last; k += 3) {
                PseudoVoigt.evaluate(x[i], p[k], p[k + 1], p[k + 2], fraction, line);
                row[k] = root * line[1];
                row[k + 1] = root * line[2];
                row[k + 2] = root * line[3];
                sum += line[0];
            }
            row[last] = root;
            row[last + 1] = root * (x[i] - origin);
            out[i] = root * sum;
        }
    }
}
