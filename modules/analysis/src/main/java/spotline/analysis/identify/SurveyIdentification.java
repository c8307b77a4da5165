package spotline.analysis.identify;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import spotline.core.Work;
import spotline.reference.EnergyRange;
import spotline.reference.GhostLine;
import spotline.reference.ReferenceData;
import spotline.reference.XraySatellite;
import spotline.spectra.BindingScan;
import spotline.spectra.Transmission;

/**
 * Finds the elements of a survey by all their lines together.
 *
 * <p>A model of the whole survey is fitted: for each element its photoelectron lines, Auger group, X-ray satellites, loss
 * structure and inelastic tail, over a smooth background. Amplitudes come from non-negative least squares with Poisson
 * weights; elements enter and leave by what the likelihood gains; the shift of the energy scale is searched along.
 *
 * <p>Shape: a survey in, elements with evidence, unassigned features and the model out. Units: eV. Errors: none; a survey
 * without lines has no elements.
 *
 * <p>Source: verdicts by the second-line rule of common practice (no source); the parts of the model name theirs.
 */
public final class SurveyIdentification {
    private static final double GHOST_GAIN = 20;
    private static final double DECIDED_GAIN = 36;
    private static final double PLASMON_GAIN = 30;
    private static final int MOST_PLASMONS = 2;
    private static final double LARGEST_CARBON_UNCERTAINTY = 0.6;

    private final ReferenceData reference;
    private final IdentifySettings settings;

    public SurveyIdentification(ReferenceData reference, IdentifySettings settings) {
        this.reference = reference;
        this.settings = settings;
    }

    /**
     * @param declared symbols the record expects: a prior for the shift and for doubtful cases, never a proof
     * @param knownShiftEv shift to be used, eV; empty to search for it
     */
    public Identification identify(
            BindingScan survey,
            Transmission transmission,
            Set<String> declared,
            OptionalDouble knownShiftEv,
            boolean monochromated,
            Work work) {
        SurveyGrid grid = SurveyGrid.of(survey);
        AtomTable table = AtomTable.of(reference, grid.photonEv);
        double width = LineWidth.of(grid);
        Templates templates = new Templates(grid, transmission, satellites(grid.photonEv, monochromated), width);
        FilteredSurvey filtered = new FilteredSurvey(grid, Math.max(1.6, 1.3 * width));
        double low = knownShiftEv.orElse(settings.lowestShiftEv());
        double high = knownShiftEv.orElse(settings.highestShiftEv());
        ShiftSearch search = new ShiftSearch(filtered, templates, table.atoms(), declared, low, high);
        work.check();
        Atom carbon = table.atom("C").orElseThrow();
        ShiftContest.Settled settled = knownShiftEv.isPresent()
                ? ShiftContest.known(search, templates, low)
                : ShiftContest.settle(search, filtered, templates, low, high, carbon, work);
        List<GhostLine> ghosts = reference.ghostLines(grid.photonEv);
        SurveyModelFit model = settled.model().sobered();
        if (!monochromated) model.addGhosts(ghosts, GHOST_GAIN);
        for (int k = 0; k < MOST_PLASMONS; k++) {
            Optional<Plasmon> plasmon = CommonStructure.plasmon(model, PLASMON_GAIN);
            if (plasmon.isEmpty()) break;
            model.expectPlasmon(plasmon.get());
            model = model.sobered();
        }
        Hunt hunt = new Hunt(model.templates, table.atoms(), model.shiftEv());
        model = ModelSelection.grow(model, hunt, declared, work);
        Optional<CarbonShift.Placed> placed = settled.carbon();
        if (knownShiftEv.isEmpty() && placed.isEmpty()) {
            ShiftContest.Settled again = ShiftContest.place(model, carbon, low, high);
            placed = again.carbon();
            if (placed.isPresent()) {
                model = again.model().sobered();
                hunt = new Hunt(model.templates, table.atoms(), model.shiftEv());
                model = ModelSelection.grow(model, hunt, declared, work);
            }
        }
        work.check();
        List<ElementSeen> judged = new Judge(model, hunt, new LineSources(model, ghosts), declared).elements();
        List<ElementSeen> elements =
                judged.stream().filter(e -> !undecided(e, declared)).toList();
        List<HeaderDoubt> doubts = new HeaderCheck(reference, settings, transmission, monochromated, declared)
                .doubts(grid, model, search, elements, work);
        if (!doubts.isEmpty())
            elements = elements.stream().map(SurveyIdentification::doubted).toList();
        List<Feature> features = new ArrayList<>();
        for (ElementSeen e : judged) if (undecided(e, declared)) features.add(feature(e));
        features.addAll(new Features(reference, model, ghosts, monochromated).above(settings.minimumSignificance()));
        elements = new ArrayList<>(elements);
        elements.sort(Comparator.comparingInt(
                e -> table.atom(e.element()).orElseThrow().element().z()));
        return new Identification(
                elements,
                model.shiftEv(),
                features.stream().map(Feature::peak).toList(),
                Optional.of(detail(survey, model, elements, placed, knownShiftEv, carbon, features, doubts)));
    }

    /** Weak, and several things would do as well: a feature without a name rather than an element. */
    private static boolean undecided(ElementSeen e, Set<String> declared) {
        if (e.verdict() == Verdict.PRESENT || declared.contains(e.element())) return false;
        if (e.evidence().likelihoodGain() >= DECIDED_GAIN) return false;
        List<Evidence.Alternative> others = e.evidence().alternatives();
        // What is met every week stays possible where a loss or a shoulder might do as well.
        boolean source =
                !ModelSelection.common(e.element()) && others.stream().anyMatch(a -> Double.isNaN(a.likelihoodGain()));
        long rivals =
                others.stream().filter(a -> !Double.isNaN(a.likelihoodGain())).count();
        return rivals >= 2 || source || e.lines().isEmpty();
    }

    private static Feature feature(ElementSeen e) {
        List<String> explanations = new ArrayList<>();
        for (LineSeen line : e.lines()) explanations.add(line.line());
        for (Evidence.Alternative a : e.evidence().alternatives()) explanations.add(a.explanation());
        LineSeen top = e.lines().stream()
                .max(Comparator.comparingDouble(LineSeen::significance))
                .orElse(new LineSeen(e.element(), 0, 0, 1));
        return new Feature(new SurveyPeak(top.energyEv(), top.significance(), Double.NaN), explanations);
    }

    private static ElementSeen doubted(ElementSeen e) {
        return new ElementSeen(e.element(), Verdict.POSSIBLE, e.lines(), e.significance(), e.evidence());
    }

    private List<XraySatellite> satellites(double photonEnergyEv, boolean monochromated) {
        if (monochromated) return List.of();
        return reference
                .sourceNear(photonEnergyEv, false)
                .map(reference::satellites)
                .orElse(List.of());
    }

    private static Identification.Detail detail(
            BindingScan survey,
            SurveyModelFit model,
            List<ElementSeen> elements,
            Optional<CarbonShift.Placed> placed,
            OptionalDouble known,
            Atom carbon,
            List<Feature> features,
            List<HeaderDoubt> doubts) {
        double[] lines = model.fit().curve();
        double[] background = model.background();
        EnergyRange allowed = ShiftContest.allowed(model, carbon);
        double shift = model.shiftEv();
        double low = Math.min(shift, allowed.lowEv());
        double high = Math.max(shift, allowed.highEv());
        String reason =
                "The states that the elements are met in leave the shift this range; hydrocarbon does not settle it.";
        if (known.isPresent()) {
            low = shift;
            high = shift;
            reason = "The shift was given.";
        } else if (placed.isPresent() && placed.get().standardUncertaintyEv() < LARGEST_CARBON_UNCERTAINTY) {
            double u = placed.get().standardUncertaintyEv();
            low = shift - 2 * u;
            high = shift + 2 * u;
            reason = String.format(
                    Locale.ROOT,
                    "Hydrocarbon C 1s stands at %.2f eV as measured and belongs at %.1f eV.",
                    CarbonShift.HYDROCARBON_EV - shift,
                    CarbonShift.HYDROCARBON_EV);
        }
        double[] residual = model.design.residual(lines).values();
        double sum = 0;
        int counted = 0;
        for (double r : residual) {
            if (r == 0) continue;
            sum += r * r;
            counted++;
        }
        return new Identification.Detail(
                low,
                high,
                reason,
                model.templates.gaussianEv,
                features,
                doubts,
                QuickComposition.of(model.toQuantify(), elements),
                ScanProposals.of(model, elements, background, survey.secondsPerChannel()),
                surveyModel(model, background),
                counted > 0 ? OptionalDouble.of(sum / counted) : OptionalDouble.empty());
    }

    private static SurveyModel surveyModel(SurveyModelFit model, double[] background) {
        SurveyGrid grid = model.templates.grid;
        double units = grid.unitsPerCount / grid.grouped;
        Map<String, double[]> parts = new LinkedHashMap<>();
        for (int e = 0; e < model.members.size(); e++) {
            if (!model.active(e) || !(model.amount(e) > 0)) continue;
            parts.put(model.members.get(e).symbol(), times(model.elementCurve(e), units));
        }
        double[] stray = model.strayCurve();
        for (double v : stray) {
            if (v != 0) {
                parts.put("stray radiation", times(stray, units));
                break;
            }
        }
        return new SurveyModel(
                grid.energy,
                times(grid.counts, units),
                times(background, units),
                times(model.design.deviations(), units),
                parts);
    }

    private static double[] times(double[] values, double factor) {
        double[] scaled = values.clone();
        for (int i = 0; i < scaled.length; i++) scaled[i] *= factor;
        return scaled;
    }
}
