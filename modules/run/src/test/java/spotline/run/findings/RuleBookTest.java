package spotline.run.findings;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import spotline.analysis.charge.ChargeEvidence;
import spotline.analysis.identify.ElementSeen;
import spotline.analysis.identify.Evidence;
import spotline.analysis.identify.Feature;
import spotline.analysis.identify.HeaderDoubt;
import spotline.analysis.identify.LineSeen;
import spotline.analysis.identify.SurveyPeak;
import spotline.analysis.identify.Verdict;
import spotline.core.Estimate;
import spotline.core.Finding;
import spotline.core.Severity;
import spotline.holder.SpectrumRole;
import spotline.numerics.shape.DoniachSunjic;
import spotline.numerics.shape.Gaussian;
import spotline.reference.Line;
import spotline.run.FittedPeak;
import spotline.run.LinkedSpectrum;
import spotline.run.RuleOutcome;
import spotline.run.RuleOutcome.State;
import spotline.run.RunRules;
import spotline.spectra.BindingScan;
import spotline.spectra.HeaderField;
import spotline.spectra.Window;

/** Each rule fires when one thing of a clean holder is wrong, and passes on the clean one. */
class RuleBookTest {
    /** What makes a rule fire, and what its message has to say. */
    private record Case(int number, String says, Consumer<CleanHolder> wrong) {
        @Override
        public String toString() {
            return "check " + number + ": " + says;
        }
    }

    /** Rules whose computation lives in other steps: a finding of theirs is what makes them fire. */
    private static final Map<Integer, String> ADOPTED = new TreeMap<>(Map.ofEntries(
            Map.entry(1, "spot-record"),
            Map.entry(2, "holder-overhang"),
            Map.entry(3, "small-clearance"),
            Map.entry(4, "powder-sputter"),
            Map.entry(5, "partly-grounded"),
            Map.entry(6, "stage-margin"),
            Map.entry(7, "transfer-broken"),
            Map.entry(9, "energy-scale-outside"),
            Map.entry(14, "scan-too-narrow"),
            Map.entry(25, "grounded-conductor-off"),
            Map.entry(26, "reference-line-weak"),
            Map.entry(27, "reference-line-broad"),
            Map.entry(28, "differential-charging"),
            Map.entry(29, "surface-potential-drifted"),
            Map.entry(30, "siblings-differ"),
            Map.entry(31, "two-carbon-reference-values"),
            Map.entry(32, "charge-reference-failed"),
            Map.entry(33, "metal-line-unmoved"),
            Map.entry(35, "fermi-edge-off"),
            Map.entry(37, "references-disagree"),
            Map.entry(38, "fit-residual-structure"),
            Map.entry(39, "fit-at-bound"),
            Map.entry(41, "fit-only-sum"),
            Map.entry(46, "factors-for-another-angle"),
            Map.entry(47, "pass-energies-differ"),
            Map.entry(48, "survey-narrow-differ"),
            Map.entry(49, "below-critical-level"),
            Map.entry(53, "one-spot-only"),
            Map.entry(54, "no-anisotropy-factor")));

    static Stream<Case> cases() {
        List<Case> cases = new ArrayList<>();
        ADOPTED.forEach((number, rule) -> cases.add(new Case(
                number,
                "made",
                h -> h.found.add(Finding.caution(rule, "made by another step").at("1", "alumina")))));
        Stream.of(data(), lines(), fits(), amounts(), contamination()).forEach(cases::addAll);
        return cases.stream();
    }

    private static List<Case> data() {
        return List.of(
                new Case(8, "declared for spot 4 (Zn) and none of its own (Ag)", h -> {
                    h.spot("3").percent.remove("Ag");
                    h.spot("3").survey.remove("Ag");
                    h.spot("3").survey.add("Zn");
                }),
                new Case(10, "already applied", h -> header(h, "1", new HeaderField("", "Transmission applied."))),
                new Case(11, "smoothed", h -> replace(h, "1", "O 1s", RuleBookTest::smoothed)),
                new Case(11, "scaled up", h -> replace(h, "1", "O 1s", s -> times(s, 3))),
                new Case(12, "above the linear limit of 100", h -> h.limit("highestCountRatePerSecond", 100)),
                new Case(
                        13,
                        "1253.6",
                        h -> h.spot("1")
                                .doubts
                                .add(new HeaderDoubt(
                                        HeaderDoubt.Kind.PHOTON_ENERGY,
                                        OptionalDouble.of(1253.6),
                                        0.4,
                                        0.9,
                                        List.of("C"),
                                        "Auger lines fit 1253.6 eV."))),
                new Case(15, "lies on Ag 3d", h -> {
                    h.spot("3").measure("K 2p", 371.2, 30);
                }),
                new Case(16, "C 1s fell by", h -> again(h, "1", 17)),
                new Case(16, "C 1s rose by", h -> again(h, "1", 23)),
                new Case(17, "factor of 4.0", h -> {
                    List<LinkedSpectrum> spectra = h.spot("1").spectra;
                    LinkedSpectrum last = spectra.remove(spectra.size() - 1);
                    spectra.add(h.spot("1")
                            .spectrum(
                                    last.region(), last.role(), last.scan(), new HeaderField("pressure", "4e-9 mbar")));
                }),
                new Case(
                        18,
                        "stray Mg",
                        h -> h.spot("1")
                                .features
                                .add(new Feature(
                                        new SurveyPeak(763, 30, 1000),
                                        List.of("O 1s excited by stray Mg (the other anode)")))));
    }

    private static List<Case> lines() {
        return List.of(
                new Case(19, "N KLL should stand out by 12.0 sigma", h -> {
                    h.spot("1").percent.put("N", 3.0);
                    h.spot("1")
                            .possible
                            .add(new ElementSeen(
                                    "N",
                                    Verdict.POSSIBLE,
                                    List.of(new LineSeen("N 1s", 402, 6, 1)),
                                    6,
                                    new Evidence(
                                            9,
                                            List.of(new Evidence.LineMissing("N KLL", 1107, 12, 0.4)),
                                            List.of(),
                                            List.of(new Evidence.Alternative("Mo", 8)),
                                            List.of())));
                }),
                new Case(20, "Al 2s gives", h -> h.spot("1").measureAgain("Al 2s", 119.5, 20)),
                new Case(21, "expected 0.6", h -> refit(h, 6.0, 0.5)),
                new Case(22, "splitting of Ag 3d is 5.6", h -> refit(h, 5.6, 0.69)),
                new Case(
                        23,
                        "hydrocarbon C-C/C-H is assigned at 286.30",
                        h -> h.spot("1")
                                .peaks
                                .add(new FittedPeak(
                                        "made",
                                        "C 1s",
                                        "hydrocarbon C-C/C-H",
                                        "gaussian",
                                        Estimate.exact(289.3),
                                        OptionalDouble.of(286.3),
                                        Estimate.exact(1.2),
                                        Estimate.exact(1000),
                                        1))),
                new Case(
                        24,
                        "not an element",
                        h -> h.spot("1")
                                .features
                                .add(new Feature(
                                        new SurveyPeak(520, 30, 1000), List.of("X-ray satellite K-alpha3 of O 1s")))),
                new Case(34, "differs by -0.60 eV", h -> {
                    h.spot("2").parameters.clear();
                    h.spot("2").parameters.add(CleanHolder.parameter(1462.1));
                }),
                new Case(36, "0.80 eV wide", h -> h.spot("3").edge = Optional.of(CleanHolder.edge(0.80))));
    }

    private static List<Case> fits() {
        return List.of(
                new Case(40, "below the resolution of 1.50 eV", h -> h.limit("instrumentFwhmEv", 1.5)),
                new Case(42, "without the partner of only", h -> {
                    Draft d = h.spot("3");
                    d.fits.clear();
                    BindingScan scan = Draft.pair("3 Ag 3d pair", 368.2, 6.0, 0.69);
                    d.fit("Ag 3d", scan, Map.of("only", 368.2), new Gaussian());
                }),
                new Case(43, "declared an insulator", h -> {
                    h.spot("1").fits.clear();
                    h.spot("1").fit("Al 2p", Map.of("oxide", 74.5), new DoniachSunjic());
                }),
                new Case(43, "Metallic Ni", h -> {
                    BindingScan scan = Draft.scan("3 Ni 2p", 852.6, 50000, 2000);
                    h.spot("3").fit("Ni 2p", scan, Map.of("Ni metal", 852.6), new Gaussian());
                }),
                new Case(44, "runs above the data", RuleBookTest::dented),
                new Case(45, "ask for", h -> {
                    h.spot("1").percent.put("O", 4.0);
                    h.states(h.spot("1"), 60, 0.3);
                }));
    }

    private static List<Case> amounts() {
        return List.of(
                new Case(50, "S is seen", h -> h.spot("1").survey.add("S")),
                new Case(51, "Carbon is 70", h -> h.spot("1").percent.put("C", 70.0)),
                new Case(52, "284.8123", h -> h.charge("referenceEv", 284.8123)),
                new Case(65, "Carbon is 62", h -> h.spot("3").percent.put("C", 62.0)));
    }

    private static List<Case> contamination() {
        return List.of(
                new Case(55, "glass showing, about 8 %", h -> h.spot("4").measure("Si 2p", 103.2, 2)),
                new Case(
                        55,
                        "Si 2p at 103.2 eV is not declared",
                        h -> h.spot("2").measure("Si 2p", 103.2, 2)),
                new Case(56, "silicone film", h -> h.spot("3").measure("Si 2p", 102.3, 8)),
                new Case(57, "like PTFE", h -> h.spot("1").measure("F 1s", 689.2, 3)),
                new Case(57, "a fluoride", h -> h.spot("1").measure("F 1s", 685.0, 3)),
                new Case(58, "Na:Cl is 1.1", h -> {
                    h.spot("1").percent.put("Na", 2.2);
                    h.spot("1").percent.put("Cl", 2.0);
                }),
                new Case(59, "tape shows between the grains", h -> {
                    h.spot("1").percent.put("C", 50.0);
                    h.states(h.spot("1"), 50, 0.15);
                }),
                new Case(60, "a copper or brass clip", RuleBookTest::brass),
                new Case(61, "Ag is found (2.0 at.%)", h -> h.spot("2").percent.put("Ag", 2.0)),
                new Case(62, "F is undeclared and found on 3 of 4 spots", h -> {
                    for (String id : List.of("1", "2", "3")) h.spot(id).percent.put("F", 2.0);
                }),
                new Case(
                        63,
                        "declared for spot 3 alone, 20 mm away",
                        h -> h.spot("2").percent.put("Ag", 2.0)),
                new Case(64, "without a sputter step", h -> h.spot("1").percent.put("Ar", 1.0)),
                new Case(66, "of Al 2p moved to lower binding energies", h -> etched(h, 72.8)));
    }

    static void brass(CleanHolder h) {
        Draft d = h.spot("1");
        d.survey.add("Cu");
        d.survey.add("Zn");
        d.unmoved.add(new ChargeEvidence.UnmovedLine(Line.parse("Cu 2p3/2"), "survey", 932.6, 932.6));
        h.found.add(Finding.caution("metal-line-unmoved", "Cu 2p3/2 at 932.60 eV as measured.")
                .at("1", "alumina"));
        h.found.add(Finding.caution("undeclared-element", "Cu is seen and not declared.")
                .at("1", "alumina"));
        h.found.add(Finding.caution("undeclared-element", "Zn is seen and not declared.")
                .at("1", "alumina"));
        h.found.add(Finding.caution("undeclared-element", "P is seen and not declared.")
                .at("1", "alumina"));
    }

    private static void header(CleanHolder h, String spot, HeaderField field) {
        LinkedSpectrum s = h.spot(spot).spectra.get(0);
        h.spot(spot).spectra.set(0, h.spot(spot).spectrum(s.region(), s.role(), s.scan(), field));
    }

    private static void replace(
            CleanHolder h, String spot, String region, java.util.function.UnaryOperator<BindingScan> change) {
        List<LinkedSpectrum> spectra = h.spot(spot).spectra;
        for (int i = 0; i < spectra.size(); i++) {
            LinkedSpectrum s = spectra.get(i);
            if (!s.region().equals(region) || s.role() != SpectrumRole.MAIN) continue;
            spectra.set(i, h.spot(spot).spectrum(region, s.role(), change.apply(s.scan())));
        }
    }

    private static BindingScan smoothed(BindingScan s) {
        double[] counts = s.counts();
        double[] smooth = counts.clone();
        for (int i = 1; i + 1 < counts.length; i++) {
            smooth[i] = 0.25 * counts[i - 1] + 0.5 * counts[i] + 0.25 * counts[i + 1];
        }
        return Draft.counted(s.label(), s.energies(), smooth);
    }

    private static BindingScan times(BindingScan s, double factor) {
        double[] counts = s.counts();
        java.util.Arrays.setAll(counts, i -> factor * counts[i]);
        return Draft.counted(s.label(), s.energies(), counts);
    }

    private static void again(CleanHolder h, String spot, double percent) {
        h.spot(spot).spectra.removeIf(s -> s.role() == SpectrumRole.LAST);
        h.spot(spot).add("C 1s", 284.8, percent, SpectrumRole.LAST);
    }

    private static void etched(CleanHolder h, double energyEv) {
        h.spot("1")
                .spectra
                .removeIf(s -> s.role() == SpectrumRole.ETCH && s.region().equals("Al 2p"));
        h.spot("1").add("Al 2p", energyEv, 32, SpectrumRole.ETCH);
    }

    private static void refit(CleanHolder h, double apart, double ratio) {
        Draft d = h.spot("3");
        d.fits.clear();
        d.fit(
                "Ag 3d",
                Draft.pair("3 Ag 3d pair", 368.2, apart, ratio),
                Map.of("first", 368.2, "second", 368.2 + apart),
                new Gaussian());
    }

    /** A dip of five channels in the data, under the straight background. */
    private static void dented(CleanHolder h) {
        Draft d = h.spot("1");
        LinkedSpectrum s = d.spectra.get(0);
        double[] counts = s.scan().counts();
        int at = s.scan().firstAtOrAbove(287.8 - 2);
        for (int i = at; i < at + 5; i++) counts[i] *= 0.5;
        BindingScan dented = Draft.counted(s.label(), s.scan().energies(), counts);
        d.intensities.set(0, Draft.intensity(dented, "C 1s", 287.8, new Window(284.8, 290.8)));
    }

    @ParameterizedTest
    @MethodSource("cases")
    void firesWhenOneThingIsWrong(Case wrong) {
        CleanHolder holder = new CleanHolder();
        wrong.wrong().accept(holder);
        RunRules.Judged judged = holder.judged();
        assertThat(outcome(judged, wrong.number()).state()).isEqualTo(State.FIRED);
        Rule rule = RuleBook.standard().rules().get(wrong.number() - 1);
        assertThat(judged.findings().stream().filter(rule::raises).map(Finding::message))
                .anySatisfy(message -> assertThat(message).contains(wrong.says()));
    }

    @Test
    void everyRulePassesOnACleanHolder() {
        RunRules.Judged judged = new CleanHolder().judged();
        assertThat(judged.findings()).isEmpty();
        assertThat(judged.outcomes())
                .hasSize(66)
                .allSatisfy(outcome -> assertThat(outcome.state())
                        .as("%d %s %s", outcome.number(), outcome.id(), outcome.notChecked())
                        .isEqualTo(State.PASSED));
    }

    @Test
    void everyRuleHasACaseThatFiresIt() {
        assertThat(cases().map(Case::number).distinct().sorted())
                .containsExactlyElementsOf(
                        RuleBook.standard().rules().stream().map(Rule::number).toList());
    }

    @Test
    void theRulesAreNumberedThroughAndNoFindingBelongsToTwo() {
        List<Rule> rules = RuleBook.standard().rules();
        Map<String, Integer> owner = new TreeMap<>();
        for (int i = 0; i < rules.size(); i++) {
            assertThat(rules.get(i).number()).isEqualTo(i + 1);
            List<String> ids = new ArrayList<>(rules.get(i).adopted());
            ids.add(rules.get(i).id());
            for (String id : ids) assertThat(owner.put(id, i + 1)).as(id).isNull();
        }
    }

    @Test
    void aCauseLeadsWhatFollowsFromItAndNothingElse() {
        CleanHolder holder = new CleanHolder();
        brass(holder);
        RunRules.Judged judged = holder.judged();
        assertThat(judged.led()).singleElement().satisfies(led -> {
            assertThat(led.leader().rule()).isEqualTo("clip-metal");
            assertThat(led.followers())
                    .extracting(f -> f.rule() + " " + f.message().substring(0, 2))
                    .contains("metal-line-unmoved Cu", "undeclared-element Cu", "undeclared-element Zn")
                    .doesNotContain("undeclared-element P ");
        });
    }

    @Test
    void aSilencedCautionIsANoteWithItsReasonAndItsRuleSaysSo() {
        CleanHolder holder = new CleanHolder();
        holder.spot("1").percent.put("C", 70.0);
        holder.silence = "{\"rule\": \"carbon-dominates\", \"spot\": \"1\", \"reason\": \"a thick layer is wanted\"}";
        RunRules.Judged judged = holder.judged();
        assertThat(judged.findings()).singleElement().satisfies(f -> {
            assertThat(f.severity()).isEqualTo(Severity.NOTE);
            assertThat(f.message()).startsWith("Silenced (a thick layer is wanted): Carbon is 70");
        });
        assertThat(outcome(judged, 51).state()).isEqualTo(State.SILENCED);
    }

    @Test
    void aStopIsNeverSilencedAndWithholdsItsSpot() {
        CleanHolder holder = new CleanHolder();
        header(holder, "2", new HeaderField("transmission", "corrected"));
        holder.silence = "{\"rule\": \"transmission-applied-twice\", \"reason\": \"we know\"}";
        RunRules.Judged judged = holder.judged();
        assertThat(judged.findings()).singleElement().satisfies(f -> {
            assertThat(f.severity()).isEqualTo(Severity.STOP);
            assertThat(f.message()).startsWith("Silenced (we know)");
        });
        assertThat(judged.withheld()).containsExactly("2");
    }

    @Test
    void aRuleWithoutItsInputsSaysThatItDidNotLook() {
        CleanHolder holder = new CleanHolder();
        holder.settings.withObject("/findings/limits").remove("highestCountRatePerSecond");
        RuleOutcome rate = outcome(holder.judged(), 12);
        assertThat(rate.state()).isEqualTo(State.NOT_CHECKED);
        assertThat(rate.notChecked()).containsEntry("1", "no linear range of the detector is stated");
    }

    @Test
    void aLimitThatIsSetIsTheOneInForce() {
        CleanHolder holder = new CleanHolder();
        holder.limit("mostCarbonAtPercent", 15);
        RuleOutcome carbon = outcome(holder.judged(), 51);
        assertThat(carbon.state()).isEqualTo(State.FIRED);
        assertThat(carbon.limits())
                .singleElement()
                .satisfies(l -> assertThat(l.value()).isEqualTo(15));
    }

    private static RuleOutcome outcome(RunRules.Judged judged, int number) {
        return judged.outcomes().get(number - 1);
    }
}
