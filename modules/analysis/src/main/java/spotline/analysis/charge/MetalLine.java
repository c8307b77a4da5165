package spotline.analysis.charge;

import java.util.Optional;
import java.util.OptionalDouble;
import spotline.core.Work;
import spotline.reference.Line;
import spotline.reference.ReferenceData;

/**
 * The line of a metal, measured on a grounded conductor: the check that no charge correction is needed.
 *
 * @param expectedEv binding energy of the metal, eV
 * @param agrees whether measured and expected lie within the tolerance
 */
record MetalLine(
        Line line, String spectrum, double measuredEv, OptionalDouble measurementU, double expectedEv, boolean agrees) {
    /** Further from the metal than this the line is of a compound, and no check of the contact, eV. */
    private static final double SAME_STATE = 1.2;

    /** Of the narrow scans whose line has a listed metal state near, the one closest to its metal energy. */
    static Optional<MetalLine> find(ChargeInput input, ReferenceData reference, double toleranceEv, Work work) {
        MetalLine best = null;
        for (ChargeInput.MeasuredLine measured : input.firstOfEachLine()) {
            Line high = measured.line().high();
            boolean metal = reference.chemicalStates(high).stream()
                    .anyMatch(s -> s.line().equals(high) && s.state().endsWith(" metal"));
            if (!metal) continue;
            double expected = reference.bindingEnergy(high).orElseThrow().valueEv();
            Optional<ReferenceLineFit> fit = TopFit.place(high, measured.scan(), Optional.empty(), work);
            if (fit.isEmpty()) continue;
            double at = fit.get().reference().position().value();
            double off = Math.abs(at - expected);
            if (off > SAME_STATE) continue;
            if (best != null && off >= Math.abs(best.measuredEv - best.expectedEv)) continue;
            best = new MetalLine(
                    high,
                    measured.scan().label(),
                    at,
                    fit.get().reference().position().standardUncertainty(),
                    expected,
                    off <= toleranceEv);
        }
        return Optional.ofNullable(best);
    }
}
