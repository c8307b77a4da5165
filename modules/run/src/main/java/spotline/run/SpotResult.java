package spotline.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spotline.analysis.charge.ChargeReference;
import spotline.analysis.identify.Identification;
import spotline.analysis.quantify.DerivedQuantity;
import spotline.analysis.quantify.FactorSet;
import spotline.analysis.quantify.Quantified;
import spotline.analysis.quantify.StateShare;
import spotline.core.Estimate;
import spotline.core.Finding;

/**
 * Everything that came of one spot.
 *
 * @param sample name of the sample
 * @param electricalState as declared
 * @param spectra in the order of measurement as far as it is known
 * @param identification empty when no survey could be searched
 * @param composition the primary result; rows of withheld numbers stay
 * @param variants the composition on other bases, by name
 * @param fits peak fits of narrow scans
 * @param states chemical states that peak fits tell apart, shared out inside their elements
 * @param derived ratios and sums that the treatment asks for
 * @param factors the sensitivity factors the compositions rest on; empty when nothing was quantified
 */
public record SpotResult(
        String spot,
        String sample,
        String electricalState,
        List<LinkedSpectrum> spectra,
        Optional<Identification> identification,
        ChargeReference charge,
        List<MeasuredIntensity> intensities,
        List<FittedPeak> peaks,
        List<Quantified> composition,
        List<Variant> variants,
        List<Finding> findings,
        List<LineFit> fits,
        List<StateShare> states,
        List<Derived> derived,
        Optional<FactorSet> factors) {
    /** A composition on another basis. */
    public record Variant(String name, List<Quantified> rows) {
        public Variant {
            rows = List.copyOf(rows);
        }
    }

    /** A ratio or a sum of atomic fractions; empty where an element of it has no number. */
    public record Derived(DerivedQuantity quantity, Optional<Estimate> value) {}

    /** A result without states and derived quantities. */
    public SpotResult(
            String spot,
            String sample,
            String electricalState,
            List<LinkedSpectrum> spectra,
            Optional<Identification> identification,
            ChargeReference charge,
            List<MeasuredIntensity> intensities,
            List<FittedPeak> peaks,
            List<Quantified> composition,
            List<Variant> variants,
            List<Finding> findings) {
        this(
                spot,
                sample,
                electricalState,
                spectra,
                identification,
                charge,
                intensities,
                peaks,
                composition,
                variants,
                findings,
                List.of(),
                List.of(),
                List.of(),
                Optional.empty());
    }

    /** The same spot with its energy reference looked at again. */
    SpotResult with(ChargeReference newCharge, List<Finding> more) {
        List<Finding> allFindings = new ArrayList<>(findings);
        allFindings.addAll(more);
        return new SpotResult(
                spot,
                sample,
                electricalState,
                spectra,
                identification,
                newCharge,
                intensities,
                peaks,
                composition,
                variants,
                allFindings,
                fits,
                states,
                derived,
                factors);
    }

    SpotResult with(Variant variant, List<Finding> more) {
        List<Variant> allVariants = new ArrayList<>(variants);
        allVariants.add(variant);
        List<Finding> allFindings = new ArrayList<>(findings);
        allFindings.addAll(more);
        return new SpotResult(
                spot,
                sample,
                electricalState,
                spectra,
                identification,
                charge,
                intensities,
                peaks,
                composition,
                allVariants,
                allFindings,
                fits,
                states,
                derived,
                factors);
    }

    /** The same spot with its amounts taken out: what was measured, and every row, stays. */
    SpotResult withheld() {
        return new SpotResult(
                spot,
                sample,
                electricalState,
                spectra,
                identification,
                charge,
                intensities,
                peaks,
                composition.stream().map(Quantified::withheld).toList(),
                variants.stream()
                        .map(v -> new Variant(
                                v.name(),
                                v.rows().stream().map(Quantified::withheld).toList()))
                        .toList(),
                findings,
                fits,
                states.stream()
                        .map(s -> new StateShare(
                                s.element(), s.line(), s.state(), Optional.empty(), s.fractionOfElement()))
                        .toList(),
                derived.stream()
                        .map(d -> new Derived(d.quantity(), Optional.empty()))
                        .toList(),
                factors);
    }

    public SpotResult {
        fits = List.copyOf(fits);
        states = List.copyOf(states);
        derived = List.copyOf(derived);
        spectra = List.copyOf(spectra);
        intensities = List.copyOf(intensities);
        peaks = List.copyOf(peaks);
        composition = List.copyOf(composition);
        variants = List.copyOf(variants);
        findings = List.copyOf(findings);
    }
}
