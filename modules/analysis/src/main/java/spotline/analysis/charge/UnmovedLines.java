package spotline.analysis.charge;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import spotline.analysis.charge.ChargeEvidence.UnmovedLine;
import spotline.analysis.charge.ChargeInput.MeasuredLine;
import spotline.analysis.identify.PeakSearch;
import spotline.analysis.identify.SurveyPeak;
import spotline.core.Work;
import spotline.reference.Doublet;
import spotline.reference.Element;
import spotline.reference.Elements;
import spotline.reference.EnergyRange;
import spotline.reference.Line;
import spotline.reference.LineData;
import spotline.reference.ReferenceData;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

/**
 * Metal lines that stand at their metal's energy as measured though the spot was shifted: grounded hardware in the
 * analysis area, not the sample.
 */
final class UnmovedLines {
    /** A spot shifted by less tells nothing, eV. */
    private static final double LEAST_SHIFT = 0.6;

    private static final double NARROW_TOLERANCE = 0.1;
    private static final double SURVEY_TOLERANCE = 0.4;
    private static final double SURVEY_FWHM = 2;
    private static final double SIGNIFICANCE = 8;
    /** What a shifted line of the sample may be off from a listed energy, eV. */
    private static final double EXPLAINED = 1.2;
    /** Metals of clips, screws, foils, grids and holders; only lines with a doublet partner that the survey must show too. */
    private static final List<Line> HARDWARE = List.of(
            Line.parse("Cu 2p3/2"),
            Line.parse("Fe 2p3/2"),
            Line.parse("Ni 2p3/2"),
            Line.parse("Mo 3d5/2"),
            Line.parse("Ag 3d5/2"),
            Line.parse("In 3d5/2"),
            Line.parse("Au 4f7/2"));

    private UnmovedLines() {}

    static List<UnmovedLine> find(ChargeInput input, double shiftEv, ReferenceData reference, Work work) {
        if (Math.abs(shiftEv) < LEAST_SHIFT) return List.of();
        Map<Line, UnmovedLine> found = new LinkedHashMap<>();
        for (MeasuredLine measured : input.firstOfEachLine()) {
            narrow(measured, shiftEv, reference, work)
                    .ifPresent(u -> found.put(u.line().whole(), u));
        }
        input.survey()
                .ifPresent(survey -> survey(survey, input, shiftEv, reference)
                        .forEach(u -> found.putIfAbsent(u.line().whole(), u)));
        return List.copyOf(found.values());
    }

    private static Optional<UnmovedLine> narrow(
            MeasuredLine measured, double shiftEv, ReferenceData reference, Work work) {
        Line high = measured.line().high();
        if (!listedMetal(high, reference)) return Optional.empty();
        double metal = reference.bindingEnergy(high).orElseThrow().valueEv();
        Window near = Window.around(metal, 0.5, 0.5);
        if (near.lowEv() < measured.scan().range().lowEv()
                || near.highEv() > measured.scan().range().highEv()) {
            return Optional.empty();
        }
        Optional<ReferenceLineFit> fit = TopFit.place(high.toString(), measured.scan(), near, Optional.empty(), work);
        if (fit.isEmpty()) return Optional.empty();
        double at = fit.get().reference().position().value();
        double u = fit.get().reference().position().standardUncertainty().orElse(0);
        if (Math.abs(at - metal) > NARROW_TOLERANCE + 2 * u) return Optional.empty();
        EnergyRange states = reference.stateRange(high).orElse(new EnergyRange(metal, metal));
        double shifted = at + shiftEv;
        boolean explained = shifted > states.lowEv() - EXPLAINED && shifted < states.highEv() + EXPLAINED;
        return explained
                ? Optional.empty()
                : Optional.of(new UnmovedLine(high, measured.scan().label(), at, metal));
    }

    private static boolean listedMetal(Line high, ReferenceData reference) {
        return reference.chemicalStates(high).stream()
                .anyMatch(s -> !s.satellite() && s.state().endsWith(" metal"));
    }

    private static List<UnmovedLine> survey(
            BindingScan survey, ChargeInput input, double shiftEv, ReferenceData reference) {
        List<SurveyPeak> peaks = new PeakSearch(SURVEY_FWHM, SIGNIFICANCE).find(survey);
        List<UnmovedLine> found = new ArrayList<>();
        for (Line line : HARDWARE) {
            Optional<Doublet> doublet = reference.doublet(line, survey.photonEnergyEv());
            if (doublet.isEmpty() || reference.bindingEnergy(line).isEmpty()) continue;
            double metal = reference.bindingEnergy(line).get().valueEv();
            Optional<SurveyPeak> first = near(peaks, metal);
            Optional<SurveyPeak> second = near(peaks, metal + doublet.get().splittingEv());
            if (first.isEmpty()
                    || second.isEmpty()
                    || first.get().area() < second.get().area()) continue;
            if (explained(first.get().energyEv() + shiftEv, input, survey.photonEnergyEv(), reference)) continue;
            found.add(new UnmovedLine(line, survey.label(), first.get().energyEv(), metal));
        }
        return found;
    }

    private static Optional<SurveyPeak> near(List<SurveyPeak> peaks, double energyEv) {
        return peaks.stream()
                .filter(p -> Math.abs(p.energyEv() - energyEv) <= SURVEY_TOLERANCE)
                .findFirst();
    }

    /** Whether a line of an element of the spot lies there once the shift is applied. */
    private static boolean explained(
            double energyEv, ChargeInput input, double photonEnergyEv, ReferenceData reference) {
        for (String symbol : input.elements()) {
            Element element = Elements.bySymbol(symbol).orElseThrow();
            for (LineData data : reference.lines(element, photonEnergyEv)) {
                for (Line member : data.members()) {
                    double level = reference
                            .bindingEnergy(member)
                            .map(l -> l.valueEv())
                            .orElse(Double.NEGATIVE_INFINITY);
                    double high = reference
                            .stateRange(member)
                            .map(EnergyRange::highEv)
                            .orElse(level);
                    double low =
                            reference.stateRange(member).map(EnergyRange::lowEv).orElse(level);
                    if (energyEv > low - EXPLAINED && energyEv < high + EXPLAINED) return true;
                }
            }
            boolean auger = reference.augerLines(element).stream()
                    .anyMatch(a -> Math.abs(a.apparentBindingEv(photonEnergyEv) - energyEv) < 4 * EXPLAINED);
            if (auger) return true;
        }
        return false;
    }
}
