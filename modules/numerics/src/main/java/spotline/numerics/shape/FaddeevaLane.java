package spotline.numerics.shape;

/**
 * The Faddeeva function over stretches of an array, as a chain of short loops.
 *
 * <p>Short loops without branches, calls or conversions are what the compiler turns into vector instructions. Each is a
 * class of its own called through one interface: so many that the compiler gives up inlining them into one method, in which
 * it would run out of patience before it had looked at all of them.
 *
 * <p>Both expansions are polynomials with real coefficients at a complex point Z, evaluated by the recursion
 * {@code b_k = a_k + 2 Re(Z) b_(k+1) - |Z|^2 b_(k+2)} (Knuth, The Art of Computer Programming 2, 4.6.4) with two
 * multiplications a coefficient.
 */
final class FaddeevaLane {
    /** One loop. */
    interface Stage {
        void run(FaddeevaLane lane, int from, int to);
    }

    private static final Stage[] NEAR = NearStages.chain(true);
    private static final Stage[] FAR = FarStages.chain(13, true);
    private static final Stage[] DISTANT = FarStages.chain(8, true);
    private static final Stage[] COMPLEX_NEAR = NearStages.chain(false);
    private static final Stage[] COMPLEX_FAR = FarStages.chain(13, false);
    private static final Stage[] COMPLEX_DISTANT = FarStages.chain(8, false);

    // scratch slots
    private static final int FIRST_SLOT = 16;

    double[] x = new double[0];
    double position;
    double scale;
    double y;
    double[][] out = new double[0][];
    double[] factors = new double[0];
    // near: Re z, then 1 / |L - i z|^2, 2 Re Z, -|Z|^2, two terms of the recursion, one more; far: 1/z and 1/z^2
    // likewise
    double[] zx = x;
    double[] d = x;
    double[] r = x;
    double[] s = x;
    double[] b1 = x;
    double[] b2 = x;
    double[] t = x;

    /**
     * @param out Re w, Re w', Im w', Re(w + z w'), Im w, and Im(w + z w') if there is a sixth
     * @param factors what the first four are multiplied by; none where there are six
     */
    void set(
            double[] x,
            double position,
            double scale,
            double y,
            double[][] out,
            double[] factors,
            ShapeScratch scratch) {
        this.x = x;
        this.position = position;
        this.scale = scale;
        this.y = y;
        this.out = out;
        this.factors = factors;
        int n = x.length;
        zx = scratch.array(FIRST_SLOT, n);
        d = scratch.array(FIRST_SLOT + 1, n);
        r = scratch.array(FIRST_SLOT + 2, n);
        s = scratch.array(FIRST_SLOT + 3, n);
        b1 = scratch.array(FIRST_SLOT + 4, n);
        b2 = scratch.array(FIRST_SLOT + 5, n);
        t = scratch.array(FIRST_SLOT + 6, n);
    }

    void near(int from, int to) {
        if (from < to) run(out.length > 5 ? COMPLEX_NEAR : NEAR, from, to);
    }

    /** @param distant |z| above 16, where fewer terms do */
    void far(int from, int to, boolean distant) {
        if (from >= to) return;
        if (out.length > 5) run(distant ? COMPLEX_DISTANT : COMPLEX_FAR, from, to);
        else run(distant ? DISTANT : FAR, from, to);
    }

    private void run(Stage[] stages, int from, int to) {
        for (Stage stage : stages) stage.run(this, from, to);
    }
}
