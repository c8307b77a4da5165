package spotline.analysis.identify;

/**
 * An element as it sits in a surface: under an overlayer its slow electrons come out weakened against its fast ones.
 *
 * @param burial thickness above it in attenuation lengths of 1000 eV electrons, along the way out; below 0 for an element
 *     that lies on top of what the mean free path stands for
 */
record Emitter(Atom atom, double burial) {
    /** Attenuation lengths of organic matter rise as this power of the energy (Seah, Spencer 2011, from memory). */
    private static final double ATTENUATION_EXPONENT = 0.842;

    private static final double LARGEST_FACTOR = 8;
    private static final double SLOWEST_EV = 60;

    Emitter(Atom atom) {
        this(atom, 0);
    }

    static double depth(double kineticEv) {
        return Math.pow(Math.max(SLOWEST_EV, kineticEv) / 1000, -ATTENUATION_EXPONENT);
    }

    /** What a line of a kinetic energy gains over the main line. */
    double factor(double kineticEv, double photonEv) {
        if (burial == 0) return 1;
        double main = photonEv - atom.main().bindingEv();
        double factor = Math.exp(-burial * (depth(kineticEv) - depth(main)));
        return Math.max(1 / LARGEST_FACTOR, Math.min(LARGEST_FACTOR, factor));
    }
}
