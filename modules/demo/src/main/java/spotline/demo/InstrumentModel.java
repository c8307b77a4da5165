package spotline.demo;

/**
 * The instrument: one source, one geometry, two settings of the analyser.
 *
 * <p>At the magic angle between source and analyser every angular factor L is 1; other angles are not modelled.
 *
 * @param photonEnergyEv characteristic energy of the source
 * @param emissionAngleDeg from the surface normal
 * @param brightness counts per second at transmission 1 and unit emitted intensity
 * @param secondaryBackground intensity of the smooth secondary background at 1000 eV kinetic energy, in units of the
 *     emitted intensity per eV; it rises as {@code KE^-1.1}
 */
public record InstrumentModel(
        double photonEnergyEv,
        double emissionAngleDeg,
        double brightness,
        double secondaryBackground,
        AnalyserMode survey,
        AnalyserMode narrow) {
    /** Degrees; the angle whose cosine is 1/sqrt(3), rounded as records give it. */
    public static final double SOURCE_ANALYSER_ANGLE_DEG = 54.7;

    /** Widths of the analysis area at normal emission. */
    public static final double ANALYSIS_WIDTH_X_MM = 0.7;

    public static final double ANALYSIS_WIDTH_Y_MM = 0.3;

    private static final double SECONDARY_POWER = -1.1;

    public InstrumentModel {
        if (!(emissionAngleDeg >= 0 && emissionAngleDeg < 90)) {
            throw new IllegalArgumentException("emission angle must be 0 to below 90 degrees");
        }
        if (!(photonEnergyEv > 0) || !(brightness > 0) || !(secondaryBackground >= 0)) {
            throw new IllegalArgumentException("photon energy, brightness and background must not be negative");
        }
    }

    double cosEmission() {
        return emissionAngleDeg == 0 ? 1 : StrictMath.cos(StrictMath.toRadians(emissionAngleDeg));
    }

    double secondary(double kineticEv) {
        return secondaryBackground * StrictMath.pow(kineticEv / 1000, SECONDARY_POWER);
    }
}
