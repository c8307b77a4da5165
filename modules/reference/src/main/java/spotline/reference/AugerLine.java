package spotline.reference;

/**
 * An Auger line seen in XPS. Its kinetic energy does not depend on the X-ray source.
 *
 * @param element symbol
 * @param transition as the trade writes it: "L3M45M45"
 * @param levels the three levels it was estimated from: "L3-M5-M5"
 * @param kineticEv usual kinetic energy in the solid the note names, eV, Fermi level; good to 1 eV for sharp metallic
 *     lines, to 4 eV for broad ones
 * @param estimateEv equivalent-cores estimate, eV, good to 5 to 12 eV: an independent check of {@code kineticEv}
 */
public record AugerLine(
        String element,
        String transition,
        String levels,
        double kineticEv,
        double estimateEv,
        String note,
        String source) {
    /** Where the line appears on the binding-energy scale of a source, eV. */
    public double apparentBindingEv(double photonEnergyEv) {
        return photonEnergyEv - kineticEv;
    }

    @Override
    public String toString() {
        return element + " " + transition;
    }
}
