package spotline.demo.corpus;

import java.util.List;

/**
 * Instrument settings of a case.
 *
 * @param satellites displacement towards lower binding energy, eV, and height, of an unmonochromated source
 * @param resolutionEv full Gaussian width of source and analyser together
 * @param transmissionPower of the kinetic energy
 * @param topCounts counts in the highest channel
 * @param strayShiftEv apparent shift of lines excited by stray radiation; 0 where there is none
 */
record Setup(
        double photonEv,
        boolean monochromated,
        List<double[]> satellites,
        double resolutionEv,
        double passEnergyEv,
        double transmissionPower,
        double lowEv,
        double highEv,
        double stepEv,
        double topCounts,
        double strayShiftEv,
        double strayShare) {
    /** Satellites: the second of the two sets in common use, from memory. */
    private static final List<double[]> ALUMINIUM = List.of(
            new double[] {9.8, 0.064},
            new double[] {11.8, 0.032},
            new double[] {20.1, 0.004},
            new double[] {23.4, 0.003},
            new double[] {69.7, 0.0055});

    private static final List<double[]> MAGNESIUM = List.of(
            new double[] {8.4, 0.080},
            new double[] {10.2, 0.041},
            new double[] {17.5, 0.0055},
            new double[] {20.0, 0.0045},
            new double[] {48.5, 0.005});

    Setup {
        satellites = List.copyOf(satellites);
    }

    int channels() {
        return (int) Math.round((highEv - lowEv) / stepEv) + 1;
    }

    static Setup draw(Draw draw) {
        double kind = draw.between(0, 1);
        boolean mono = kind < 0.6;
        boolean magnesium = kind > 0.82;
        double photon = mono ? 1486.69 : magnesium ? 1253.6 : 1486.6;
        double pass = draw.one(List.of(50.0, 80.0, 100.0, 160.0));
        double analyser = pass * draw.between(0.011, 0.017);
        double source = mono ? draw.between(0.25, 0.5) : magnesium ? 0.7 : 0.85;
        boolean stray = !mono && draw.chance(0.15);
        double shift = magnesium ? draw.one(List.of(-233.0, 323.9)) : draw.one(List.of(233.0, 556.9));
        double low = draw.one(List.of(-10.0, -5.0, 0.0));
        double high = magnesium ? draw.one(List.of(1100.0, 1150.0)) : draw.one(List.of(1200.0, 1350.0));
        return new Setup(
                photon,
                mono,
                mono ? List.of() : magnesium ? MAGNESIUM : ALUMINIUM,
                Math.hypot(analyser, source),
                pass,
                draw.between(-0.8, 0.2),
                low,
                high,
                draw.chance(0.7) ? 1.0 : 0.5,
                draw.logBetween(3e3, 2e5),
                stray ? shift : 0,
                stray ? draw.logBetween(0.003, 0.02) : 0);
    }
}
