package spotline.analysis.identify;

/**
 * Tail of inelastically scattered electrons behind a peak of unit area from a homogeneous solid, every order of
 * scattering in it: {@code J(T) = K(T) + integral of K(t) J(T - t) dt} with {@code K(T) = B T / (C + T^2)^2}.
 *
 * <p>Units: per eV of loss T, eV. Errors: 0 outside 0 to {@value #REACH_EV} eV.
 *
 * <p>Source: S. Tougaard, Surf. Interface Anal. 11 (1988) 453: two-parameter universal cross section, B = 2866 eV2,
 * C = 1643 eV2.
 */
final class LossTail {
    private static final double B = 2866;
    private static final double C = 1643;
    static final double REACH_EV = 1500;
    private static final double STEP = 1;
    private static final LossTail UNIVERSAL = new LossTail();

    private final double[] table;

    private LossTail() {
        int n = (int) (REACH_EV / STEP) + 1;
        double[] k = new double[n];
        for (int i = 0; i < n; i++) {
            double t = i * STEP;
            k[i] = B * t / ((C + t * t) * (C + t * t));
        }
        table = new double[n];
        for (int i = 0; i < n; i++) {
            double sum = k[i];
            for (int j = 1; j < i; j++) sum += STEP * k[j] * table[i - j];
            table[i] = sum;
        }
    }

    static double at(double lossEv) {
        double place = lossEv / STEP;
        int i = (int) place;
        double[] table = UNIVERSAL.table;
        if (lossEv <= 0 || i + 1 >= table.length) return 0;
        double share = place - i;
        return table[i] + share * (table[i + 1] - table[i]);
    }
}
