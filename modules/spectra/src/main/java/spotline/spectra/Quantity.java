package spotline.spectra;

import static java.util.Objects.requireNonNull;

/** What is measured along an axis or as an ordinate: label and unit as the file gives them, and the energy scale. */
public record Quantity(String label, String unit, EnergyScale scale) {
    public Quantity {
        requireNonNull(label, "label");
        requireNonNull(unit, "unit");
        requireNonNull(scale, "scale");
    }

    public static Quantity of(String label, String unit) {
        return new Quantity(label, unit, EnergyScale.OTHER);
    }

    public static Quantity bindingEnergy() {
        return new Quantity("binding energy", "eV", EnergyScale.BINDING);
    }

    public static Quantity kineticEnergy() {
        return new Quantity("kinetic energy", "eV", EnergyScale.KINETIC);
    }
}
