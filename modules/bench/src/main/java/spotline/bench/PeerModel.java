package spotline.bench;

/**
 * A weighted model as a user of a general-purpose library writes it: point by point, value and derivatives in one pass,
 * one row of derivatives a point. The algorithms and cuts are those of the product, so that only the way of working
 * differs.
 */
abstract class PeerModel {
    final double[] x;
    final double[] weight;
    final double[] target;
    final double[] start;

    PeerModel(double[] x, double[] y, double[] deviations, double[] start) {
        this.x = x;
        this.start = start;
        weight = new double[y.length];
        target = new double[y.length];
        for (int i = 0; i < y.length; i++) {
            weight[i] = 1 / deviations[i];
            target[i] = y[i] * weight[i];
        }
    }

    /** Weighted values alone. */
    abstract void values(double[] p, double[] out);

    /** Weighted values and derivatives. */
    abstract void evaluate(double[] p, double[] out, double[][] jacobian);

    /** Weighted values and derivatives by forward differences. */
    final void differences(double[] p, double[] out, double[][] jacobian) {
        values(p, out);
        double[] moved = new double[out.length];
        double[] q = p.clone();
        for (int k = 0; k < p.length; k++) {
            double h = 1.5e-8 * Math.max(Math.abs(p[k]), 1e-3);
            q[k] = p[k] + h;
            h = q[k] - p[k];
            values(q, moved);
            q[k] = p[k];
            for (int i = 0; i < out.length; i++) jacobian[i][k] = (moved[i] - out[i]) / h;
        }
    }

    final double chiSquare(double[] p) {
        double[] out = new double[target.length];
        values(p, out);
        double sum = 0;
        for (int i = 0; i < out.length; i++) sum += (target[i] - out[i]) * (target[i] - out[i]);
        return sum;
    }
}
