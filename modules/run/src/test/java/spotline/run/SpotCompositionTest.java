package spotline.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import spotline.analysis.background.Linear;
import spotline.analysis.background.Subtraction;
import spotline.analysis.intensity.Intensity;
import spotline.analysis.quantify.Basis;
import spotline.analysis.quantify.Composition;
import spotline.analysis.quantify.Contribution;
import spotline.analysis.quantify.ListedFactors;
import spotline.analysis.quantify.Quantified;
import spotline.analysis.quantify.SensitivityFactors;
import spotline.analysis.quantify.TheoreticalFactors;
import spotline.core.Estimate;
import spotline.core.Finding;
import spotline.core.Provenance;
import spotline.core.Severity;
import spotline.core.Work;
import spotline.holder.SpectrumRole;
import spotline.reference.LevelEnergy;
import spotline.reference.Line;
import spotline.reference.ReferenceData;
import spotline.spectra.BindingScan;
import spotline.spectra.Transmission;
import spotline.spectra.Window;

class SpotCompositionTest {
    private static final double PHOTONS = 1486.6;
    private static final OptionalDouble MAGIC = OptionalDouble.of(54.7356103);
    private final ReferenceData reference = ReferenceData.shipped();
    private final TheoreticalFactors factors =
            new TheoreticalFactors(reference, DefaultTreatment.treatment().factors());

    private SpotComposition composition() {
        return composition(Set.of());
    }

    private SpotComposition composition(Set<String> unseen) {
        return new SpotComposition(
                reference, factors, DefaultTreatment.treatment().quantify(), MAGIC, 0, new TreeSet<>(unseen));
    }

    private double factor(Line line, double at) {
        return factors.factor(line, PHOTONS, PHOTONS - at, MAGIC).orElseThrow().value();
    }

    /** An intensity that stands for a number of atoms, in a window from 4 eV below the line to 6 eV above. */
    private SpotComposition.Taken taken(
            String name, double atoms, double scale, boolean survey, boolean detected, Transmission transmission) {
        Line line = Line.parse(name);
        double at =
                reference.bindingEnergy(line.high()).map(LevelEnergy::valueEv).orElseThrow();
        Window window = new Window(at - 4, at + 6);
        String label = (survey ? "survey " : "narrow ") + name;
        double area = atoms * factor(line, at) * scale * transmission.at(PHOTONS - at);
        return taken(
                line,
                label,
                survey,
                at,
                window,
                Estimate.of(area, "counting/" + label, 0.01 * area),
                detected,
                transmission);
    }

    private SpotComposition.Taken taken(
            Line line,
            String label,
            boolean survey,
            double at,
            Window window,
            Estimate area,
            boolean detected,
            Transmission transmission) {
        double[] energy = new double[301];
        double[] counts = new double[301];
        for (int i = 0; i < 301; i++) {
            energy[i] = at - 15 + 0.1 * i;
            counts[i] = 10;
        }
        BindingScan scan =
                new BindingScan(label, PHOTONS, energy, counts, true, OptionalDouble.of(1), OptionalDouble.of(20));
        Subtraction nothing = Linear.of(2)
                .subtract(scan, window, "k", Work.UNWATCHED)
                .result()
                .orElseThrow();
        LinkedSpectrum spectrum = new LinkedSpectrum(
                label,
                new Provenance("made", "00", 1, 1, "made"),
                line.toString(),
                survey,
                SpectrumRole.MAIN,
                scan,
                transmission,
                Optional.empty());
        return new SpotComposition.Taken(
                spectrum,
                new Intensity(
                        line,
                        label,
                        at,
                        1.2,
                        window,
                        "linear",
                        area,
                        detected,
                        OptionalDouble.of(1),
                        OptionalDouble.of(2),
                        nothing));
    }

    private SpotComposition.Taken narrow(String name, double atoms) {
        return taken(name, atoms, 1000, false, true, new Transmission.Flat());
    }

    private SpotComposition.Taken survey(String name, double atoms, boolean detected) {
        return taken(name, atoms, 50, true, detected, new Transmission.Flat());
    }

    private static Quantified row(List<Contribution> contributions, String element) {
        return Composition.of(contributions).stream()
                .filter(r -> r.element().equals(element))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no row of " + element));
    }

    private static double percent(List<Contribution> contributions, String element) {
        return row(contributions, element).atomicPercent().orElseThrow().value();
    }

    private static List<String> rules(SpotComposition composition) {
        return composition.findings().stream().map(Finding::rule).toList();
    }

    @Test
    void transmissionIsDividedOutOnce() {
        Transmission steep = new Transmission.PowerLaw(-0.7);
        List<Contribution> rows = composition()
                .primary(
                        List.of(
                                taken("C 1s", 40, 1000, false, true, steep),
                                taken("O 1s", 60, 1000, false, true, steep)),
                        List.of(),
                        new TreeSet<>());
        assertThat(percent(rows, "C")).isCloseTo(40, within(1e-6));
    }

    @Test
    void anElementOfTheSurveyIsBroughtInThroughALineOfBoth() {
        SpotComposition composition = composition();
        List<Contribution> rows = composition.primary(
                List.of(narrow("C 1s", 30), narrow("O 1s", 50)),
                List.of(survey("C 1s", 30, true), survey("O 1s", 50, true), survey("Cl 2p", 20, true)),
                new TreeSet<>());
        assertThat(percent(rows, "Cl")).isCloseTo(20, within(1e-6));
        assertThat(row(rows, "Cl").basis()).isEqualTo(Basis.LINKED);
        assertThat(row(rows, "C").basis()).isEqualTo(Basis.NARROW);
        Estimate cl = row(rows, "Cl").atomicPercent().orElseThrow();
        // 3 % of the link, times 1 - X; derived
        assertThat(Math.abs(cl.contribution("link/Cl 2p"))).isCloseTo(0.03 * 20 * 0.8, within(1e-6));
        assertThat(cl.sources())
                .anyMatch(s -> s.startsWith("counting/survey O 1s") || s.startsWith("counting/survey C 1s"));
        assertThat(rules(composition)).contains("linked-from-survey");
    }

    @Test
    void aDeclaredElementThatIsNotThereKeepsItsLimit() {
        List<SpotComposition.Taken> wide =
                List.of(survey("C 1s", 60, true), survey("N 1s", 0.1, false), survey("Cl 2p", 0.1, false));
        List<Contribution> rows = composition()
                .primary(List.of(narrow("C 1s", 60), narrow("O 1s", 40)), wide, new TreeSet<>(List.of("N")));
        Quantified n = row(rows, "N");
        assertThat(n.belowDetection()).isTrue();
        assertThat(n.atomicPercent()).isEmpty();
        assertThat(n.detectionLimit().orElseThrow()).isBetween(0.001, 5.0);
        assertThat(rows).extracting(Contribution::element).doesNotContain("Cl");
    }

    @Test
    void anElementOfTheSurveyThatNothingLinksIsSaidToBeLeftOut() {
        SpotComposition composition = composition();
        List<Contribution> rows = composition.primary(
                List.of(narrow("C 1s", 40), narrow("O 1s", 60)), List.of(survey("Cl 2p", 20, true)), new TreeSet<>());
        assertThat(rows).extracting(Contribution::element).containsExactly("C", "O");
        assertThat(composition.findings())
                .anyMatch(f -> f.rule().equals("not-linked")
                        && f.severity() == Severity.CAUTION
                        && f.message().startsWith("Cl "));
    }

    @Test
    void withoutNarrowScansTheSurveyIsTheBasis() {
        List<Contribution> rows = composition()
                .primary(List.of(), List.of(survey("C 1s", 25, true), survey("O 1s", 75, true)), new TreeSet<>());
        assertThat(percent(rows, "O")).isCloseTo(75, within(1e-6));
        assertThat(row(rows, "O").basis()).isEqualTo(Basis.SURVEY);
    }

    /** S 2s lies at 228 eV, inside the window of Mo 3d: what it brings is computed from S 2p. */
    @Test
    void aLineUnderAnotherIsComputedAndTakenOut() {
        SpotComposition.Taken sulfur = narrow("S 2p", 60);
        SpotComposition.Taken mo = narrow("Mo 3d", 40);
        Line s2s = Line.parse("S 2s");
        double at = reference.bindingEnergy(s2s).map(LevelEnergy::valueEv).orElseThrow();
        assertThat(mo.intensity().window().contains(at)).isTrue();
        double extra = 60 * factor(s2s, at) * 1000;
        SpotComposition.Taken spoilt = taken(
                Line.parse("Mo 3d"),
                "narrow Mo 3d",
                false,
                mo.intensity().peakEv(),
                mo.intensity().window(),
                mo.intensity().area().plus(extra),
                true,
                new Transmission.Flat());
        SpotComposition composition = composition();
        List<Contribution> rows = composition.primary(List.of(sulfur, spoilt), List.of(), new TreeSet<>());
        assertThat(percent(rows, "Mo")).isCloseTo(40, within(0.4));
        assertThat(row(rows, "Mo").atomicPercent().orElseThrow().sources()).contains("overlap/Mo 3d by S");
        assertThat(rules(composition)).contains("overlap-taken-out");
    }

    /** Al 2p lies under Pt 4f; where Al 2s was measured too, it is used. */
    @Test
    void aClearLineOfTheElementIsUsedInstead() {
        List<SpotComposition.Taken> lines = new ArrayList<>();
        lines.add(narrow("Pt 4f", 50));
        Line al = Line.parse("Al 2p");
        double at = reference.bindingEnergy(al.high()).map(LevelEnergy::valueEv).orElseThrow();
        double both = 10 * factor(al, at) * 1000 + 50 * factor(Line.parse("Pt 4f"), at) * 1000;
        lines.add(taken(
                al,
                "narrow Al 2p",
                false,
                at,
                new Window(at - 4, at + 6),
                Estimate.of(both, "counting/al", 0.01 * both),
                true,
                new Transmission.Flat()));
        lines.add(narrow("Al 2s", 10));
        lines.add(narrow("O 1s", 40));
        SpotComposition composition = composition();
        List<Contribution> rows = composition.primary(lines, List.of(), new TreeSet<>());
        assertThat(row(rows, "Al").line()).isEqualTo("Al 2s");
        assertThat(percent(rows, "Al")).isCloseTo(10, within(0.5));
        assertThat(rules(composition)).contains("line-overlap");
    }

    /** Nothing can compute an Auger line: N 1s with gallium there, under Al K alpha. */
    @Test
    void anAugerLineUnderALineIsSaid() {
        SpotComposition composition = composition();
        composition.primary(List.of(narrow("N 1s", 50), narrow("Ga 2p3/2", 50)), List.of(), new TreeSet<>());
        assertThat(composition.findings())
                .anyMatch(f -> f.rule().equals("overlap-not-resolved") && f.severity() == Severity.CAUTION);
        // The principal Na KLL line lies 31 eV below O 1s: only a weaker branch comes near
        SpotComposition sodium = composition();
        sodium.primary(List.of(narrow("O 1s", 50), narrow("Na 1s", 50)), List.of(), new TreeSet<>());
        assertThat(sodium.findings())
                .anyMatch(f -> f.rule().equals("overlap-not-resolved") && f.severity() == Severity.NOTE);
    }

    @Test
    void linesOfDifferentPassEnergiesOrTimesAreNotCompared() {
        SpotComposition.Taken a = narrow("C 1s", 1);
        assertThat(SpotComposition.incomparable(List.of(a, narrow("O 1s", 1)))).isEmpty();
        SpotComposition.Taken slow = rescanned(a, OptionalDouble.of(1), OptionalDouble.of(80));
        assertThat(SpotComposition.incomparable(List.of(a, slow)).orElseThrow().rule())
                .isEqualTo("pass-energies-differ");
        SpotComposition.Taken untimed = rescanned(a, OptionalDouble.empty(), OptionalDouble.of(20));
        assertThat(SpotComposition.incomparable(List.of(a, untimed))
                        .orElseThrow()
                        .rule())
                .isEqualTo("collection-time-unknown");
    }

    private static SpotComposition.Taken rescanned(
            SpotComposition.Taken taken, OptionalDouble seconds, OptionalDouble passEnergyEv) {
        LinkedSpectrum s = taken.spectrum();
        BindingScan scan = new BindingScan(
                s.label(), PHOTONS, s.scan().energies(), s.scan().counts(), true, seconds, passEnergyEv);
        return new SpotComposition.Taken(
                new LinkedSpectrum(
                        s.label(), s.source(), s.region(), false, s.role(), scan, s.transmission(), s.time()),
                taken.intensity());
    }

    /** A declaration is a prior and no proof: what stands in the window of an element that the survey does not show is another's. */
    @Test
    void aDeclaredElementThatTheSurveyDoesNotShowHasALimitAndNoNumber() {
        List<SpotComposition.Taken> narrow = List.of(narrow("C 1s", 40), narrow("O 1s", 60));
        List<SpotComposition.Taken> survey =
                List.of(survey("C 1s", 40, true), survey("O 1s", 60, true), survey("Na 1s", 8, true));
        TreeSet<String> declared = new TreeSet<>(Set.of("C", "O", "Na"));
        assertThat(percent(composition().primary(narrow, survey, declared), "Na"))
                .isCloseTo(100 * 8 / 108.0, within(0.01));
        SpotComposition overruled = composition(Set.of("Na"));
        List<Contribution> rows = overruled.primary(narrow, survey, declared);
        assertThat(row(rows, "Na").belowDetection()).isTrue();
        assertThat(row(rows, "Na").detectionLimit().orElseThrow()).isGreaterThan(100 * 8 / 108.0);
        assertThat(percent(rows, "C")).isCloseTo(40, within(0.01));
        assertThat(rules(overruled)).doesNotContain("linked-from-survey");
    }

    @Test
    void aLineWithoutAFactorStopsItsSpotWhereTheLineIsThere() {
        Line oxygen = Line.parse("O 1s");
        SensitivityFactors oxygenAlone =
                new ListedFactors(factors.set(), Map.of(oxygen, Estimate.exact(factor(oxygen, 532))), reference);
        SpotComposition composition = new SpotComposition(
                reference, oxygenAlone, DefaultTreatment.treatment().quantify(), MAGIC, 0, new TreeSet<>());
        composition.primary(List.of(narrow("C 1s", 40), narrow("O 1s", 60)), List.of(), new TreeSet<>());
        assertThat(composition.findings())
                .anyMatch(f -> f.rule().equals("no-sensitivity-factor") && f.severity() == Severity.STOP);
    }
}
