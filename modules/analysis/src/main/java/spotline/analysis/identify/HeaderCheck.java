package spotline.analysis.identify;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import spotline.core.Work;
import spotline.reference.ReferenceData;
import spotline.reference.XraySatellite;
import spotline.reference.XraySource;
import spotline.spectra.Transmission;

/**
 * Asks whether a survey reads better under another header: its axis reversed, kinetic and binding energy mixed up, another
 * photon energy. A reading is judged by the share of the survey's lines that elements explain at their best shift.
 *
 * <p>Where the axis is a binding energy, a wrong photon energy leaves the photoelectron lines where they belong and moves
 * only the Auger groups: then the groups of the elements found are looked for under every other source.
 *
 * <p>Units: eV. Errors: none.
 */
final class HeaderCheck {
    /** A reading that explains this share of what stands out needs no rival. */
    private static final double GOOD_SHARE = 0.8;

    private static final double CLEARLY_BETTER = 1.3;
    private static final double LEAST_SUGGESTED = 0.5;
    /** Lines that stand out by less than this in all say nothing of a header. */
    private static final double LEAST_STRUCTURE = 300;

    private static final double AUGER_EXPECTED = 8;
    private static final double AUGER_ABSENT = 0.3;
    private static final double AUGER_GAIN = 60;
    private static final List<String> SOURCES = List.of("Al Ka", "Mg Ka");

    private final ReferenceData reference;
    private final IdentifySettings settings;
    private final Transmission transmission;
    private final boolean monochromated;
    private final Set<String> declared;

    HeaderCheck(
            ReferenceData reference,
            IdentifySettings settings,
            Transmission transmission,
            boolean monochromated,
            Set<String> declared) {
        this.reference = reference;
        this.settings = settings;
        this.transmission = transmission;
        this.monochromated = monochromated;
        this.declared = declared;
    }

    private record Reading(HeaderDoubt.Kind kind, double photonEv, SurveyGrid grid, String words) {}

    List<HeaderDoubt> doubts(
            SurveyGrid grid, SurveyModelFit model, ShiftSearch search, List<ElementSeen> elements, Work work) {
        List<HeaderDoubt> doubts = new ArrayList<>();
        byAuger(grid, model, elements).ifPresent(doubts::add);
        if (!doubts.isEmpty() || search.structure() < LEAST_STRUCTURE) return doubts;
        double asGiven = search.explainedShare(search.at(model.shiftEv()));
        if (asGiven > GOOD_SHARE) return doubts;
        Optional<HeaderDoubt> best = Optional.empty();
        for (Reading reading : readings(grid)) {
            work.check();
            ShiftSearch other = search(reading.grid());
            List<ShiftSearch.Found> found = other.best(settings.lowestShiftEv(), settings.highestShiftEv(), 1);
            if (found.isEmpty()) continue;
            double share = other.explainedShare(found.get(0));
            if (share < LEAST_SUGGESTED || share < CLEARLY_BETTER * asGiven) continue;
            if (best.isPresent() && best.get().asSuggested() >= share) continue;
            best = Optional.of(doubt(reading, asGiven, share, found.get(0)));
        }
        best.ifPresent(doubts::add);
        return doubts;
    }

    private static HeaderDoubt doubt(Reading reading, double asGiven, double share, ShiftSearch.Found found) {
        List<String> elements = found.members().stream()
                .sorted(Comparator.comparingDouble(Member::significance).reversed())
                .limit(6)
                .map(Member::symbol)
                .toList();
        String sentence = String.format(
                Locale.ROOT,
                "As the header has it, elements explain %.0f %% of what stands out in the survey; %s they explain %.0f %% (%s).",
                100 * asGiven,
                reading.words(),
                100 * share,
                String.join(", ", elements));
        return new HeaderDoubt(
                reading.kind(),
                reading.kind() == HeaderDoubt.Kind.PHOTON_ENERGY
                        ? OptionalDouble.of(reading.photonEv())
                        : OptionalDouble.empty(),
                asGiven,
                share,
                elements,
                sentence);
    }

    private ShiftSearch search(SurveyGrid grid) {
        AtomTable table = AtomTable.of(reference, grid.photonEv);
        double width = LineWidth.of(grid);
        List<XraySatellite> satellites = monochromated
                ? List.of()
                : reference
                        .sourceNear(grid.photonEv, false)
                        .map(reference::satellites)
                        .orElse(List.of());
        Templates templates = new Templates(grid, transmission, satellites, width);
        FilteredSurvey filtered = new FilteredSurvey(grid, Math.max(1.6, 1.3 * width));
        return new ShiftSearch(
                filtered, templates, table.atoms(), declared, settings.lowestShiftEv(), settings.highestShiftEv());
    }

    private List<Reading> readings(SurveyGrid grid) {
        List<Reading> readings = new ArrayList<>();
        double ends = grid.low() + grid.high();
        double[] mirrored = Arrays.stream(grid.energy).map(e -> ends - e).toArray();
        readings.add(new Reading(
                HeaderDoubt.Kind.AXIS_REVERSED,
                grid.photonEv,
                grid.reread(mirrored, grid.photonEv),
                "with the axis running the other way"));
        double[] mixed = Arrays.stream(grid.energy).map(e -> grid.photonEv - e).toArray();
        readings.add(new Reading(
                HeaderDoubt.Kind.KINETIC_AND_BINDING_MIXED_UP,
                grid.photonEv,
                grid.reread(mixed, grid.photonEv),
                "with kinetic and binding energy exchanged"));
        for (double photon : otherPhotons(grid.photonEv)) {
            double move = photon - grid.photonEv;
            double[] moved = Arrays.stream(grid.energy).map(e -> e + move).toArray();
            readings.add(new Reading(
                    HeaderDoubt.Kind.PHOTON_ENERGY,
                    photon,
                    grid.reread(moved, photon),
                    String.format(Locale.ROOT, "with a photon energy of %.1f eV", photon)));
        }
        return readings;
    }

    private List<Double> otherPhotons(double photonEv) {
        List<Double> others = new ArrayList<>();
        for (String name : SOURCES) {
            Optional<XraySource> source = reference.source(name, false);
            if (source.isEmpty() || Math.abs(source.get().photonEnergyEv() - photonEv) < 2) continue;
            others.add(source.get().photonEnergyEv());
        }
        return others;
    }

    /** Photoelectron lines in place, Auger groups where another source would put them. */
    private Optional<HeaderDoubt> byAuger(SurveyGrid grid, SurveyModelFit model, List<ElementSeen> elements) {
        Design design = model.design;
        for (double photon : otherPhotons(grid.photonEv)) {
            double expected = 0;
            double seen = 0;
            double gain = 0;
            List<String> groups = new ArrayList<>();
            Design.White residual = null;
            Hunt.Base base = null;
            for (ElementSeen element : elements) {
                int owner = model.owner(element.element());
                if (owner < 0 || model.members.get(owner).atom().auger().isEmpty()) continue;
                for (LineTests.Test test : LineTests.of(model, owner)) {
                    if (!test.auger() || test.expected() < AUGER_EXPECTED) continue;
                    expected += test.expected();
                    seen += Math.max(0, test.significance());
                    if (residual == null || base == null) {
                        residual = design.residual(model.fit().curve());
                        base = new Hunt.Base(design, model.fit().passive, c -> true);
                    }
                    double best = 0;
                    for (double off = -6; off <= 6; off += 2) {
                        Curve curve = model.templates.auger(
                                model.members.get(owner).emitter(),
                                model.meanOffset(owner) + photon - grid.photonEv + off);
                        if (curve.isEmpty()) continue;
                        best = Math.max(best, base.added(curve, residual).gain());
                    }
                    gain += best;
                    groups.add(element.element());
                }
            }
            if (expected == 0 || seen > AUGER_ABSENT * expected || gain < AUGER_GAIN) continue;
            return Optional.of(new HeaderDoubt(
                    HeaderDoubt.Kind.PHOTON_ENERGY,
                    OptionalDouble.of(photon),
                    seen / expected,
                    1,
                    groups,
                    String.format(
                            Locale.ROOT,
                            "The Auger groups of %s fit a photon energy of %.1f eV; the header says %.1f eV.",
                            String.join(", ", groups),
                            photon,
                            grid.photonEv)));
        }
        return Optional.empty();
    }
}
