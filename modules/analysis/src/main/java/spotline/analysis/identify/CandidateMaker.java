package spotline.analysis.identify;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.reference.AugerLine;
import spotline.reference.Element;
import spotline.reference.Elements;
import spotline.reference.EnergyRange;
import spotline.reference.LevelEnergy;
import spotline.reference.Line;
import spotline.reference.LineData;
import spotline.reference.NaturalWidth;
import spotline.reference.ReferenceData;
import spotline.spectra.BindingScan;
import spotline.spectra.Transmission;

/** Lays an element's lines over the peaks of a survey. */
final class CandidateMaker {
    /** A line this much wider than the search filter is not expected to show as a peak, eV. */
    private static final double WIDEST_NATURAL = 4;
    /** Lines closer to the photon energy or to the Fermi level than this are not used, eV. */
    private static final double SMALLEST_KINETIC = 60;

    private static final double SMALLEST_BINDING = 8;
    /** Secondary lines shallower than this are broadened by bonding and many-body effects: they may not show, eV. */
    private static final double SHALLOW = 80;

    private static final double SECOND_LINE_TOLERANCE = 2.5;
    private static final double AUGER_TOLERANCE = 9;

    private final ReferenceData reference;
    private final IdentifySettings settings;
    private final BindingScan survey;
    private final Transmission transmission;
    private final List<SurveyPeak> peaks;
    private final PeakSearch search;

    CandidateMaker(
            ReferenceData reference,
            IdentifySettings settings,
            BindingScan survey,
            Transmission transmission,
            List<SurveyPeak> peaks) {
        this.reference = reference;
        this.settings = settings;
        this.survey = survey;
        this.transmission = transmission;
        this.peaks = peaks;
        this.search = new PeakSearch(settings.peakFwhmEv(), settings.minimumSignificance());
    }

    /** How well the main line of an element sits on a peak at a shift: its significance, capped, times closeness. */
    double anchorScore(String symbol, double shift, List<SurveyPeak> all) {
        Optional<Line> main = Elements.bySymbol(symbol)
                .flatMap(e -> reference.mainLine(e, survey.photonEnergyEv()))
                .map(Line::high);
        Optional<LevelEnergy> level = main.flatMap(reference::bindingEnergy);
        if (level.isEmpty()) return 0;
        // Carbon on almost everything is hydrocarbon; of other elements any state will do.
        double usual = level.get().valueEv();
        EnergyRange states = symbol.equals("C")
                ? new EnergyRange(usual, usual)
                : reference.stateRange(main.orElseThrow()).orElse(new EnergyRange(usual, usual));
        double best = 0;
        for (SurveyPeak peak : all) {
            double at = peak.energyEv() + shift;
            double distance = Math.max(0, Math.max(states.lowEv() - at, at - states.highEv()));
            if (distance > 3) continue;
            best = Math.max(best, Math.min(40, peak.significance()) * Math.exp(-0.5 * distance * distance));
        }
        return best;
    }

    Optional<Candidate> candidate(Element element, double shift) {
        double hv = survey.photonEnergyEv();
        Optional<Line> main = reference.mainLine(element, hv).map(Line::high);
        if (main.isEmpty()) return Optional.empty();
        Optional<SurveyPeak> top = mainPeak(main.get(), shift);
        if (top.isEmpty()) return Optional.empty();
        OptionalDouble mainStrength = strength(main.get(), top.get().energyEv());
        if (mainStrength.isEmpty()) return Optional.empty();
        double unit = top.get().area() / mainStrength.getAsDouble();
        double chemicalShift = top.get().energyEv()
                - (reference.bindingEnergy(main.get()).orElseThrow().valueEv() - shift);
        List<Candidate.Expected> expected = new ArrayList<>();
        for (LineData data : reference.lines(element, hv)) {
            for (Line line : data.members()) {
                if (line.equals(main.get())) continue;
                double apart = Math.abs(reference
                                .bindingEnergy(line)
                                .map(LevelEnergy::valueEv)
                                .orElse(0.0)
                        - reference.bindingEnergy(main.get()).orElseThrow().valueEv());
                expectedLine(line, shift - chemicalShift, unit, apart < SECOND_LINE_TOLERANCE)
                        .ifPresent(expected::add);
            }
        }
        List<Candidate.AugerMatch> auger = new ArrayList<>();
        for (AugerLine line : reference.augerLines(element))
            augerMatch(line, shift).ifPresent(auger::add);
        return Optional.of(new Candidate(element.symbol(), main.get(), top.get(), expected, auger));
    }

    private Optional<SurveyPeak> mainPeak(Line main, double shift) {
        Optional<EnergyRange> range = reference.stateRange(main);
        if (range.isEmpty()) return Optional.empty();
        double low = range.get().lowEv() - shift - settings.toleranceEv();
        double high = range.get().highEv() - shift + settings.toleranceEv();
        return strongest(low, high);
    }

    private Optional<SurveyPeak> strongest(double low, double high) {
        SurveyPeak best = null;
        for (SurveyPeak peak : peaks) {
            if (peak.energyEv() < low || peak.energyEv() > high) continue;
            if (best == null || peak.area() > best.area()) best = peak;
        }
        return Optional.ofNullable(best);
    }

    private Optional<Candidate.Expected> expectedLine(Line line, double shift, double unit, boolean sameAsMain) {
        Optional<LevelEnergy> level = reference.bindingEnergy(line);
        if (level.isEmpty() || level.get().valueEv() < SMALLEST_BINDING) return Optional.empty();
        double energy = level.get().valueEv() - shift;
        if (!survey.range().contains(energy - 4) || !survey.range().contains(energy + 4)) return Optional.empty();
        OptionalDouble strength = strength(line, energy);
        double width = reference.naturalWidth(line).map(NaturalWidth::fwhmEv).orElse(0.0);
        if (strength.isEmpty()) return Optional.empty();
        // The filter sees less of a line that is wider than it is tuned to.
        double seen = settings.peakFwhmEv() / Math.hypot(settings.peakFwhmEv(), width);
        double area = unit * strength.getAsDouble() * seen * seen;
        double significance = area / search.areaDeviation(survey, energy);
        double tolerance = SECOND_LINE_TOLERANCE + Math.min(2, level.get().spreadEv());
        Optional<SurveyPeak> peak = strongest(energy - tolerance, energy + tolerance);
        // Broad and shallow lines explain a peak that is there, but say nothing when they are not.
        boolean telling = width <= WIDEST_NATURAL && level.get().valueEv() >= SHALLOW && !sameAsMain;
        return Optional.of(new Candidate.Expected(line, energy, area, telling ? significance : 0, peak));
    }

    private Optional<Candidate.AugerMatch> augerMatch(AugerLine line, double shift) {
        double energy = survey.photonEnergyEv() - line.kineticEv() - shift;
        if (!survey.range().contains(energy)) return Optional.empty();
        return Optional.of(new Candidate.AugerMatch(
                line.transition(), energy, strongest(energy - AUGER_TOLERANCE, energy + AUGER_TOLERANCE)));
    }

    /** Relative area of a line: cross section x E^0.75 x transmission. */
    private OptionalDouble strength(Line line, double measuredEv) {
        double kinetic = survey.photonEnergyEv() - measuredEv;
        OptionalDouble sigma = reference.crossSection(line, survey.photonEnergyEv());
        if (sigma.isEmpty() || kinetic < SMALLEST_KINETIC) return OptionalDouble.empty();
        return OptionalDouble.of(sigma.getAsDouble() * Math.pow(kinetic / 1000, 0.75) * transmission.at(kinetic));
    }
}
