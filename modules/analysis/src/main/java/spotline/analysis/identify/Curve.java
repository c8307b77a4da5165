package spotline.analysis.identify;

/** A function on the channels of a grid that is 0 outside a few stretches: packed, and immutable once built. */
final class Curve {
    private final int[] from;
    private final int[] to;
    private final double[][] values;

    private Curve(int[] from, int[] to, double[][] values) {
        this.from = from;
        this.to = to;
        this.values = values;
    }

    boolean isEmpty() {
        return from.length == 0;
    }

    /** Number of channels that it covers. */
    int channels() {
        int sum = 0;
        for (double[] v : values) sum += v.length;
        return sum;
    }

    double dot(double[] dense) {
        double sum = 0;
        for (int s = 0; s < from.length; s++) {
            double[] v = values[s];
            int offset = from[s];
            double s0 = 0;
            double s1 = 0;
            int k = 0;
            for (; k + 1 < v.length; k += 2) {
                s0 += v[k] * dense[offset + k];
                s1 += v[k + 1] * dense[offset + k + 1];
            }
            if (k < v.length) s0 += v[k] * dense[offset + k];
            sum += s0 + s1;
        }
        return sum;
    }

    double dot(Curve other) {
        double sum = 0;
        int i = 0;
        int j = 0;
        while (i < from.length && j < other.from.length) {
            int low = Math.max(from[i], other.from[j]);
            int high = Math.min(to[i], other.to[j]);
            if (low < high) {
                double[] a = values[i];
                double[] b = other.values[j];
                int shiftA = from[i];
                int shiftB = other.from[j];
                double s0 = 0;
                double s1 = 0;
                int k = low;
                for (; k + 1 < high; k += 2) {
                    s0 += a[k - shiftA] * b[k - shiftB];
                    s1 += a[k + 1 - shiftA] * b[k + 1 - shiftB];
                }
                if (k < high) s0 += a[k - shiftA] * b[k - shiftB];
                sum += s0 + s1;
            }
            if (to[i] < other.to[j]) i++;
            else j++;
        }
        return sum;
    }

    double[] dense(int channels) {
        double[] all = new double[channels];
        addTo(all, 1);
        return all;
    }

    /** Sum of the squares, weighted. */
    double square(double[] weights) {
        double sum = 0;
        for (int s = 0; s < from.length; s++) {
            double[] v = values[s];
            for (int k = 0; k < v.length; k++) sum += weights[from[s] + k] * v[k] * v[k];
        }
        return sum;
    }

    /** This curve with every channel multiplied by a weight. */
    Curve times(double[] weights) {
        double[][] scaled = new double[values.length][];
        for (int s = 0; s < values.length; s++) {
            double[] v = values[s].clone();
            for (int k = 0; k < v.length; k++) v[k] *= weights[from[s] + k];
            scaled[s] = v;
        }
        return new Curve(from, to, scaled);
    }

    void addTo(double[] dense, double factor) {
        for (int s = 0; s < from.length; s++) {
            double[] v = values[s];
            int offset = from[s];
            for (int k = 0; k < v.length; k++) dense[offset + k] += factor * v[k];
        }
    }

    /** Collects contributions on all channels; may be used again after {@link #build()}. */
    static final class Builder {
        private final double[] dense;
        private final boolean[] touched;
        /** Channels touched lie from the first to before the second. */
        private int first;

        private int end;

        Builder(int channels) {
            dense = new double[channels];
            touched = new boolean[channels];
            first = channels;
        }

        void add(int channel, double value) {
            dense[channel] += value;
            touched[channel] = true;
            if (channel < first) first = channel;
            if (channel >= end) end = channel + 1;
        }

        Curve build() {
            int n = end;
            int stretches = 0;
            for (int i = first; i < n; i++) if (touched[i] && (i == 0 || !touched[i - 1])) stretches++;
            int[] from = new int[stretches];
            int[] to = new int[stretches];
            double[][] values = new double[stretches][];
            int s = 0;
            for (int i = first; i < n; ) {
                if (!touched[i]) {
                    i++;
                    continue;
                }
                int next = i;
                while (next < n && touched[next]) next++;
                from[s] = i;
                to[s] = next;
                values[s] = new double[next - i];
                for (int k = i; k < next; k++) {
                    values[s][k - i] = dense[k];
                    dense[k] = 0;
                    touched[k] = false;
                }
                s++;
                i = next;
            }
            first = dense.length;
            end = 0;
            return new Curve(from, to, values);
        }
    }
}
