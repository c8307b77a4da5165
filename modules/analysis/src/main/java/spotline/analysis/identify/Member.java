package spotline.analysis.identify;

/**
 * An element taken into the model of a survey.
 *
 * @param offsetEv measured less tabulated binding energy of its main state
 * @param amount in the units of {@link Templates}
 * @param significance of its lines in the filtered survey: decides how much freedom its columns are given
 */
record Member(Emitter emitter, double offsetEv, double amount, double significance) {
    /** From here on states and Auger groups get amplitudes of their own. */
    private static final double CLEAR = 7;
    /** From here on losses and tails do. */
    private static final double STRONG = 22;

    boolean clear() {
        return significance >= CLEAR;
    }

    boolean strong() {
        return significance >= STRONG;
    }

    Atom atom() {
        return emitter.atom();
    }

    String symbol() {
        return emitter.atom().symbol();
    }
}
