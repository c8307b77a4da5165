package spotline.reference;

/** Physical constants that the program uses. Source: CODATA 2022 (constants/codata.csv holds the wider set). */
public final class KnownConstants {
    /** Rest energy of the electron, eV. */
    public static final double ELECTRON_REST_ENERGY_EV = 510998.95069;

    /** Boltzmann constant, eV/K. Exact quotient of SI constants, rounded. */
    public static final double BOLTZMANN_EV_PER_K = 8.617333262145179e-5;

    /** Avogadro constant, 1/mol. Exact. */
    public static final double AVOGADRO_PER_MOL = 6.02214076e23;

    private KnownConstants() {}
}
