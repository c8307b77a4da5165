package spotline.reference;

/** Binding energies from the lowest to the highest met, eV. */
public record EnergyRange(double lowEv, double highEv) {
    public EnergyRange {
        if (!(lowEv <= highEv)) {
            throw new IllegalArgumentException("a range runs upwards, was " + lowEv + " to " + highEv + " eV");
        }
    }

    public boolean contains(double energyEv) {
        return energyEv >= lowEv && energyEv <= highEv;
    }

    EnergyRange including(double energyEv) {
        return new EnergyRange(Math.min(lowEv, energyEv), Math.max(highEv, energyEv));
    }
}
