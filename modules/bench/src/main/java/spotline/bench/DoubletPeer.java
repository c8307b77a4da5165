package spotline.bench;

/** Two doublets of fixed splitting and ratio on a line: position, area, two widths, fraction of each, constant, slope. */
final class DoubletPeer extends PeerModel {
    private final double splitting;
    private final double ratio;
    private final double origin;

    DoubletPeer(
            double[] x,
            double[] y,
            double[] deviations,
            double splitting,
            double ratio,
            double origin,
            double[] start) {
        super(x, y, deviations, start);
        this.splitting = splitting;
        this.ratio = ratio;
        this.origin = origin;
    }

    @Override
    void values(double[] p, double[] out) {
        for (int i = 0; i < x.length; i++) {
            double sum = p[10] + p[11] * (x[i] - origin);
            for (int d = 0; d < 10; d += 5) {
                sum += PseudoVoigt.value(x[i], p[d], p[d + 1], p[d + 2], p[d + 4]);
                sum += PseudoVoigt.value(x[i], p[d] + splitting, p[d + 1] * ratio, p[d + 3], p[d + 4]);
            }
            out[i] = sum * weight[i];
        }
    }

    @Override
    void evaluate(double[] p, double[] out, double[][] jacobian) {
        double[] one = new double[5];
        double[] two = new double[5];
        for (int i = 0; i < x.length; i++) {
            double[] row = jacobian[i];
            double root = weight[i];
            double sum = p[10] + p[11] * (x[i] - origin);
            for (int d = 0; d < 10; d += 5) {
                PseudoVoigt.evaluate(x[i], p[d], p[d + 1], p[d + 2], p[d + 4], one);
                PseudoVoigt.evaluate(x[i], p[d] + splitting, p[d + 1] * ratio, p[d + 3], p[d + 4], two);
                row[d] = root * (one[1] + two[1]);
                row[d + 1] = root * (one[2] + ratio * two[2]);
                row[d + 2] = root * one[3];
                row[d + 3] = root * two[3];
                row[d + 4] = root * (one[4] + two[4]);
                sum += one[0] + two[0];
            }
            row[10] = root;
            row[11] = root * (x[i] - origin);
            out[i] = root * sum;
        }
    }
}
