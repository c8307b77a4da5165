package spotline.reference;

/**
 * What the mean free path formulas need to know of a solid.
 *
 * @param densityGPerCm3 g/cm3
 * @param molarMassGPerMol of the formula unit, g/mol
 * @param valenceElectrons per formula unit
 * @param bandGapEv eV, 0 for a metal
 */
public record Material(
        String name, double densityGPerCm3, double molarMassGPerMol, double valenceElectrons, double bandGapEv) {
    public Material {
        require("density", densityGPerCm3, "g/cm3");
        require("molar mass", molarMassGPerMol, "g/mol");
        require("valence electrons", valenceElectrons, "a formula unit");
        if (!(bandGapEv >= 0)) throw new IllegalArgumentException("band gap must be 0 eV or more, was " + bandGapEv);
    }

    private static void require(String what, double value, String unit) {
        if (!(value > 0) || Double.isInfinite(value)) {
            throw new IllegalArgumentException(what + " must be above 0 " + unit + ", was " + value);
        }
    }
}
