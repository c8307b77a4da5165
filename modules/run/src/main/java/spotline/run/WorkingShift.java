package spotline.run;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import spotline.analysis.charge.SpotCondition;
import spotline.analysis.identify.PeakSearch;
import spotline.analysis.identify.SurveyPeak;
import spotline.reference.EnergyRange;
import spotline.reference.LevelEnergy;
import spotline.reference.Line;
import spotline.reference.ReferenceData;

/**
 * Where the narrow scans of a spot without a survey put its energy scale: the shift under which the strongest peak of each
 * labelled scan falls among the states of its line, best on all of them. A working value for laying windows, no reference.
 */
final class WorkingShift {
    private static final double STEP = 0.1;
    private static final double SEARCH_FWHM = 1.3;
    private static final double MINIMUM_SIGNIFICANCE = 8;
    /** Hydrocarbon is the likeliest state of carbon on anything exposed to air; other states still count, for less. */
    private static final double OTHER_STATE_WEIGHT = 0.3;

    private record Anchor(double measuredEv, double usualEv, EnergyRange states, double weight) {}

    private final ReferenceData reference;
    private final Treatment treatment;

    WorkingShift(ReferenceData reference, Treatment treatment) {
        this.reference = reference;
        this.treatment = treatment;
    }

    /** Shift to add to measured binding energies, eV; 0 for a grounded conductor and where no scan tells. */
    double of(List<LinkedSpectrum> spectra, SpotCondition condition) {
        boolean grounded = condition.contact() == SpotCondition.Contact.GROUNDED
                && condition.conduction() == SpotCondition.Conduction.CONDUCTOR;
        if (grounded) return 0;
        List<Anchor> anchors = new ArrayList<>();
        for (LinkedSpectrum s : spectra) anchor(s, condition).ifPresent(anchors::add);
        if (anchors.isEmpty()) return 0;
        double best = 0;
        double bestScore = -1;
        int first = (int) Math.ceil(treatment.identify().lowestShiftEv() / STEP);
        int last = (int) Math.floor(treatment.identify().highestShiftEv() / STEP);
        for (int i = first; i <= last; i++) {
            double shift = i * STEP;
            double score = 0;
            for (Anchor a : anchors) score += a.weight() * closeness(a, shift);
            score *= 1 - 0.002 * Math.abs(shift);
            if (score > bestScore) {
                bestScore = score;
                best = shift;
            }
        }
        return best;
    }

    private static double closeness(Anchor a, double shift) {
        double at = a.measuredEv() + shift;
        double usual = at - a.usualEv();
        double outside =
                Math.max(0, Math.max(a.states().lowEv() - at, at - a.states().highEv()));
        return Math.exp(-0.5 * usual * usual) + OTHER_STATE_WEIGHT * Math.exp(-0.5 * outside * outside);
    }

    private Optional<Anchor> anchor(LinkedSpectrum spectrum, SpotCondition condition) {
        if (spectrum.survey()) return Optional.empty();
        LineAssignment lines = new LineAssignment(
                reference,
                new TreeSet<>(),
                new TreeSet<>(),
                treatment.quantify().doublets(),
                0);
        Optional<Line> line = lines.named(spectrum.region()).map(Line::high);
        Optional<LevelEnergy> level = line.flatMap(reference::bindingEnergy);
        Optional<SurveyPeak> top = new PeakSearch(SEARCH_FWHM, MINIMUM_SIGNIFICANCE)
                .find(spectrum.scan()).stream().max(Comparator.comparingDouble(SurveyPeak::area));
        if (level.isEmpty() || top.isEmpty()) return Optional.empty();
        double usual = level.get().valueEv();
        EnergyRange states = reference.stateRange(line.orElseThrow()).orElse(new EnergyRange(usual, usual));
        boolean hydrocarbon = line.get().element().equals("C") && condition.carbon() != SpotCondition.CarbonOrigin.OWN;
        return Optional.of(new Anchor(top.get().energyEv(), usual, states, hydrocarbon ? 2 : 0.5));
    }
}
