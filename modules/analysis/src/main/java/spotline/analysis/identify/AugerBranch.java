package spotline.analysis.identify;

/**
 * A branch of an element's Auger group.
 *
 * @param name {@code "L3M45M45"}
 * @param kineticEv from the Fermi level
 * @param widthEv full width of its envelope
 * @param holes core holes that decay through it, in units of the C 1s cross section
 * @param listed the energy is tabulated, not estimated
 */
record AugerBranch(String name, double kineticEv, double widthEv, double holes, boolean listed) {}
