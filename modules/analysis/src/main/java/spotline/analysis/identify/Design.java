package spotline.analysis.identify;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import spotline.numerics.linear.NonNegativeLeastSquares;

/**
 * The linear model of a survey: columns, their normal equations under given weights, and what is expected of amplitudes
 * beforehand.
 *
 * <p>Columns can be added while the work goes on and switched off; nothing computed before is computed again. Worked with
 * by one thread.
 */
final class Design {
    enum Kind {
        STATE,
        AUGER,
        LINE,
        /** How much broader than assumed an element's lines are. */
        WIDTH,
        LOSS,
        /** Losses that all strong elements share. */
        COMMON_LOSS,
        TAIL,
        GHOST
    }

    /**
     * @param owner number of the element among the members; -1 for none
     * @param offsetEv of a state
     * @param part number of the line, state or branch among its like
     */
    record Column(Kind kind, int owner, int part, double offsetEv, Curve curve, White white) {
        boolean free() {
            return kind == Kind.LINE || kind == Kind.WIDTH || kind == Kind.COMMON_LOSS || kind == Kind.TAIL;
        }
    }

    /** A whitened curve: independent deviations of unit variance from its first channel on. */
    static final class White {
        private final Whitening whitening;
        private final double[] values;
        private final int from;
        /** See {@link Whitening#transposed}; found when first asked for. */
        private double @Nullable [] pulled;

        White(Whitening whitening, double[] values) {
            this.whitening = whitening;
            this.values = values;
            int first = 0;
            while (first < values.length && values[first] == 0) first++;
            from = first;
        }

        double dot(White other) {
            double[] a = values;
            double[] b = other.values;
            double s0 = 0;
            double s1 = 0;
            double s2 = 0;
            double s3 = 0;
            int k = Math.max(from, other.from);
            int n = a.length;
            for (; k + 3 < n; k += 4) {
                s0 += a[k] * b[k];
                s1 += a[k + 1] * b[k + 1];
                s2 += a[k + 2] * b[k + 2];
                s3 += a[k + 3] * b[k + 3];
            }
            for (; k < n; k++) s0 += a[k] * b[k];
            return s0 + s1 + s2 + s3;
        }

        /** Product with a curve that is not whitened yet. */
        double dot(Curve curve) {
            double[] onto = pulled;
            if (onto == null) {
                onto = whitening.transposed(values);
                pulled = onto;
            }
            return curve.dot(onto);
        }

        double square() {
            return dot(this);
        }

        double[] values() {
            return values.clone();
        }
    }

    private final double[] counts;
    private final Whitening whitening;
    private final White data;
    /** Where a curve of few channels is laid out on all of them; zeros in between. */
    private final double[] spread;
    /** Where it is whitened when only its square is asked for; zeros in between. */
    private final double[] deviations;

    private final List<Column> columns = new ArrayList<>();
    private double[][] gram = new double[64][64];
    private double[] right = new double[64];
    private boolean[] enabled = new boolean[64];

    Design(double[] counts, Whitening whitening) {
        this.counts = counts;
        this.whitening = whitening;
        this.spread = new double[counts.length];
        this.deviations = new double[counts.length];
        this.data = new White(whitening, whitening.apply(counts));
    }

    int size() {
        return columns.size();
    }

    int channels() {
        return counts.length;
    }

    Column column(int index) {
        return columns.get(index);
    }

    White white(Curve curve) {
        curve.addTo(spread, 1);
        White white = white(spread);
        Arrays.fill(spread, 0);
        return white;
    }

    /** The square of a curve once whitened, without keeping it. */
    double square(Curve curve) {
        curve.addTo(spread, 1);
        whitening.apply(spread, deviations);
        double square = new White(whitening, deviations).square();
        Arrays.fill(spread, 0);
        Arrays.fill(deviations, 0);
        return square;
    }

    White white(double[] curve) {
        return new White(whitening, whitening.apply(curve));
    }

    /** Counts less a model, whitened. */
    White residual(double[] model) {
        double[] rest = new double[counts.length];
        for (int i = 0; i < rest.length; i++) rest[i] = counts[i] - model[i];
        return new White(whitening, whitening.apply(rest));
    }

    /** Estimate of the smooth background below a model of lines. */
    double[] background(double[] model) {
        double[] rest = new double[counts.length];
        for (int i = 0; i < rest.length; i++) rest[i] = counts[i] - model[i];
        return whitening.smooth(rest);
    }

    /** Index of the new column; -1 where the curve is empty. */
    int add(Kind kind, int owner, int part, double offsetEv, Curve curve) {
        if (curve.isEmpty()) return -1;
        White white = white(curve);
        double own = white.square();
        if (!(own > 0)) return -1;
        int n = columns.size();
        if (n == gram.length) grow();
        for (int j = 0; j < n; j++) {
            Column other = columns.get(j);
            double value =
                    3 * other.curve().channels() < counts.length ? white.dot(other.curve()) : white.dot(other.white());
            gram[n][j] = value;
            gram[j][n] = value;
        }
        gram[n][n] = own * (1 + 1e-9);
        right[n] = white.dot(data);
        enabled[n] = true;
        columns.add(new Column(kind, owner, part, offsetEv, curve, white));
        return n;
    }

    private void grow() {
        int size = 2 * gram.length;
        double[][] wider = new double[size][];
        for (int i = 0; i < size; i++) {
            wider[i] = i < gram.length ? Arrays.copyOf(gram[i], size) : new double[size];
        }
        gram = wider;
        right = Arrays.copyOf(right, size);
        enabled = Arrays.copyOf(enabled, size);
    }

    /** Amplitudes expected at a value with a standard deviation. */
    void expect(int column, double value, double deviation) {
        double precision = 1 / (deviation * deviation);
        gram[column][column] += precision;
        right[column] += precision * value;
    }

    /** A weighted sum of amplitudes expected at 0 with a standard deviation. */
    void expectZero(int[] indices, double[] factors, double deviation) {
        double precision = 1 / (deviation * deviation);
        for (int a = 0; a < indices.length; a++) {
            for (int b = 0; b < indices.length; b++) {
                gram[indices[a]][indices[b]] += precision * factors[a] * factors[b];
            }
        }
    }

    void disable(int column) {
        enabled[column] = false;
    }

    void disableOwner(int owner) {
        for (int i = 0; i < columns.size(); i++) if (columns.get(i).owner() == owner) enabled[i] = false;
    }

    double gram(int a, int b) {
        return gram[a][b];
    }

    /** Standard deviation of each channel by itself. */
    double[] deviations() {
        return whitening.deviations();
    }

    /** Product of a whitened curve with the whitened counts. */
    double rightOf(White curve) {
        return curve.dot(data);
    }

    double right(int column) {
        return right[column];
    }

    double[][] matrix() {
        return gram;
    }

    /** @param start amplitudes of an earlier fit to begin with, may be shorter or empty */
    LinearFit solve(double[] start) {
        int n = columns.size();
        int[] picked = new int[n];
        int m = 0;
        for (int i = 0; i < n; i++) if (enabled[i]) picked[m++] = i;
        double[][] h = new double[m][m];
        double[] g = new double[m];
        boolean[] free = new boolean[m];
        boolean[] begin = new boolean[m];
        for (int a = 0; a < m; a++) {
            int i = picked[a];
            g[a] = right[i];
            free[a] = columns.get(i).free();
            begin[a] = i < start.length ? start[i] > 0 : true;
            for (int b = 0; b < m; b++) h[a][b] = gram[i][picked[b]];
        }
        NonNegativeLeastSquares.Solution solution = NonNegativeLeastSquares.solve(h, g, free, begin);
        double[] x = new double[n];
        int[] passive = solution.indices();
        for (int k = 0; k < passive.length; k++) {
            int i = picked[passive[k]];
            x[i] = solution.value(passive[k]);
            passive[k] = i;
        }
        double gained = 0;
        for (int i : passive) gained += x[i] * right[i];
        return new LinearFit(this, x, passive, data.square() - gained);
    }

    double[] curve(double[] x) {
        double[] total = new double[counts.length];
        for (int i = 0; i < columns.size(); i++)
            if (x[i] != 0) columns.get(i).curve().addTo(total, x[i]);
        return total;
    }
}
