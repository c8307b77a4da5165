package spotline.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import spotline.analysis.charge.ChargeReference;
import spotline.analysis.peakfit.DefaultFit;
import spotline.analysis.peakfit.DefaultModels;
import spotline.analysis.peakfit.FitModel;
import spotline.analysis.peakfit.PeakFit;
import spotline.analysis.peakfit.PeakFitResult;
import spotline.analysis.peakfit.Satellite;
import spotline.core.Finding;
import spotline.core.Outcome;
import spotline.core.Severity;
import spotline.core.Work;
import spotline.reference.Line;
import spotline.reference.ReferenceData;

/**
 * Fits the narrow scans of a spot that a model serves: the analyst's, else the line's default. A fit shares an element out
 * among its states; how much of the element there is comes from its window.
 */
final class SpotFits {
    private static final Set<String> TOLD = Set.of("fit-only-sum", "fit-not-converged", "fit-residual-structure");

    private final ReferenceData reference;
    private final Memo memo;
    private final SpotInput input;
    private final Work work;
    private final List<LineFit> fits = new ArrayList<>();
    private final List<Finding> findings = new ArrayList<>();

    private SpotFits(ReferenceData reference, Memo memo, SpotInput input, Work work) {
        this.reference = reference;
        this.memo = memo;
        this.input = input;
        this.work = work;
    }

    /** @param present elements declared or surely seen */
    static SpotFits of(
            ReferenceData reference,
            Memo memo,
            SpotInput input,
            ChargeReference charge,
            List<SpotComposition.Taken> narrow,
            Set<String> present,
            Work work) {
        SpotFits made = new SpotFits(reference, memo, input, work);
        for (SpotComposition.Taken taken : narrow) made.fit(taken, charge.shiftEv(), present);
        return made;
    }

    List<LineFit> fits() {
        return fits;
    }

    List<Finding> findings() {
        return findings;
    }

    /** Every fitted peak; the fit that placed the energy reference where its scan has no other. */
    List<FittedPeak> peaks(ChargeReference charge, List<FittedPeak> ofReference) {
        List<FittedPeak> peaks = new ArrayList<>();
        for (FittedPeak p : ofReference) {
            if (fits.stream().noneMatch(f -> f.spectrum().equals(p.spectrum()))) peaks.add(p);
        }
        fits.forEach(f -> peaks.addAll(f.peaks(charge)));
        return peaks;
    }

    private void fit(SpotComposition.Taken taken, OptionalDouble shiftEv, Set<String> present) {
        PeakFitSettings settings = input.treatment().peakFit();
        Line line = taken.intensity().line().whole();
        LinkedSpectrum spectrum = taken.spectrum();
        if (settings.without().contains(line)) return;
        FitModel given = settings.models().get(line);
        if (given != null) {
            FitModel own = carried(given, spectrum);
            String name = key(spectrum);
            keep(
                    spectrum,
                    line,
                    false,
                    memo.of(
                            Memo.Key.of(PeakFit.STEP, spectrum.scan(), own, name),
                            () -> new PeakFit(reference).fit(spectrum.scan(), own, name, work)));
            return;
        }
        boolean serves = settings.defaultModels()
                && taken.intensity().detected()
                && spectrum.scan().countsKnown()
                && shiftEv.isPresent();
        if (!serves) return;
        Optional<FitModel> model =
                new DefaultModels(reference).of(line, spectrum.scan(), shiftEv.getAsDouble(), present);
        if (model.isEmpty()) return;
        FitModel usual = carried(model.get(), spectrum);
        String name = key(spectrum);
        Memo.Key key = Memo.Key.of("default " + PeakFit.STEP, spectrum.scan(), usual, name);
        keep(
                spectrum,
                line,
                true,
                memo.of(key, () -> new DefaultFit(new PeakFit(reference)).fit(spectrum.scan(), usual, name, work)));
    }

    private FitModel carried(FitModel model, LinkedSpectrum spectrum) {
        if (input.monochromated() || !model.satellites().isEmpty()) return model;
        return reference
                .sourceNear(spectrum.scan().photonEnergyEv(), false)
                .map(source -> model.with(Satellite.of(source, reference)))
                .orElse(model);
    }

    private String key(LinkedSpectrum spectrum) {
        return "fit spot " + input.spot().id() + " " + spectrum.label();
    }

    /**
     * A default model is not the analyst's choice and no amount of an element rests on it: what its fit has to say are
     * notes, and of those only what bears on the states.
     */
    private void keep(LinkedSpectrum spectrum, Line line, boolean byDefault, Outcome<PeakFitResult> outcome) {
        for (Finding f : outcome.allFindings()) {
            Finding placed = f.in(spectrum.label());
            if (!byDefault) findings.add(placed);
            else if (outcome.result().isEmpty() || TOLD.contains(f.rule())) findings.add(asNote(placed, line));
        }
        outcome.result().ifPresent(result -> fits.add(new LineFit(spectrum.label(), line, byDefault, result)));
    }

    private static Finding asNote(Finding f, Line line) {
        String message = "Default model of " + line + ": " + f.message();
        return new Finding(Severity.NOTE, f.rule(), f.spot(), f.sample(), f.spectrum(), message);
    }
}
