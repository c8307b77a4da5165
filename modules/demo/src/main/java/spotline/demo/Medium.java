package spotline.demo;

/**
 * The solid below the overlayer, as one homogeneous medium.
 *
 * @param densityGCm3 density, g/cm3
 * @param formulaMass mass of a formula unit, g/mol
 * @param formulaAtoms atoms of a formula unit, hydrogen not counted
 * @param valenceElectrons of a formula unit
 * @param bandGapEv band gap, eV
 */
public record Medium(
        double densityGCm3, double formulaMass, double formulaAtoms, double valenceElectrons, double bandGapEv) {
    /** Avogadro constant over 1e21 nm3/cm3. Source: SI, exact. */
    private static final double UNITS_PER_NM3 = 602.214076;

    public Medium {
        if (!(densityGCm3 > 0) || !(formulaMass > 0) || !(formulaAtoms > 0) || !(valenceElectrons > 0)) {
            throw new IllegalArgumentException("density, mass, atoms and valence electrons must be above 0");
        }
        if (!(bandGapEv >= 0)) throw new IllegalArgumentException("band gap must be 0 eV or more, was " + bandGapEv);
    }

    /** Atoms that the method sees, per nm3. */
    public double atomsPerNm3() {
        return densityGCm3 * UNITS_PER_NM3 / formulaMass * formulaAtoms;
    }
}
