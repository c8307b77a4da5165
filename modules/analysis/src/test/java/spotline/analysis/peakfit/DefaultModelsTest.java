package spotline.analysis.peakfit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import spotline.analysis.background.Constant;
import spotline.core.Estimate;
import spotline.core.Outcome;
import spotline.core.Severity;
import spotline.core.Work;
import spotline.numerics.random.RandomStreams;
import spotline.numerics.shape.DoniachSunjic;
import spotline.numerics.shape.Voigt;
import spotline.reference.Doublet;
import spotline.reference.Element;
import spotline.reference.Elements;
import spotline.reference.Line;
import spotline.reference.LineData;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

class DefaultModelsTest {
    private final DefaultModels models = new DefaultModels(Made.REFERENCE);
    private final DefaultFit fit = new DefaultFit(new PeakFit(Made.REFERENCE));

    private static BindingScan flat(double low, double high) {
        double[] x = Made.grid(low, high, 0.1);
        return Made.scan(x, Made.flat(x, 50));
    }

    private PeakFitResult fitted(Line line, BindingScan scan, double shift, String... elements) {
        FitModel model = models.of(line, scan, shift, Set.of(elements)).orElseThrow();
        return fit.fit(scan, model, "k", Work.UNWATCHED).result().orElseThrow();
    }

    /** Every state that a default names is in the tables, and every default suits a scan wide enough for it. */
    @Test
    void everyDefaultSuitsItsLine() {
        List<String> served = new ArrayList<>();
        for (int z = 3; z <= 92; z++) {
            Element element = Elements.byNumber(z).orElseThrow();
            for (LineData data : Made.REFERENCE.lines(element, Made.PHOTON_EV)) {
                if (!models.has(data.line())) continue;
                double at = data.energy().valueEv();
                BindingScan scan = flat(at - 20, at + 45);
                Optional<FitModel> model = models.of(data.line(), scan, 0, Set.of(element.symbol()));
                assertThat(model).as(data.line().toString()).isPresent();
                assertThat(model.get().check(scan, Made.REFERENCE)).isEmpty();
                assertThat(model.get().components().get(0).doublet().isPresent())
                        .as(data.line() + " in full")
                        .isEqualTo(data.line().orbital().l() > 0 && splitting(data.line()) <= 10);
                served.add(data.line().toString());
            }
        }
        assertThat(served)
                .contains("C 1s", "Al 2p", "Si 2p", "Ti 2p", "Ag 3d", "Au 4f", "W 4f", "S 2p")
                .hasSizeGreaterThan(20);
    }

    private static double splitting(Line line) {
        return Made.REFERENCE
                .doublet(line, Made.PHOTON_EV)
                .map(Doublet::splittingEv)
                .orElse(0.0);
    }

    @Test
    void carbonGetsItsOxygenBoundComponentsAndNoOthers() {
        double[] x = Made.grid(276, 300, 0.1);
        double[] net = Made.sum(
                Made.voigt(x, 286.3, 3000, 1.1, 0.1),
                Made.voigt(x, 287.8, 600, 1.1, 0.1),
                Made.voigt(x, 290.4, 400, 1.1, 0.1));
        double[] expected = Made.sum(net, Made.flat(x, 100), Made.times(Made.passed(x, net), 0.02));
        BindingScan scan = Made.noisy(x, expected, RandomStreams.stream(1, "carbon"));
        PeakFitResult result = fitted(Line.parse("C 1s"), scan, -1.5, "C", "O");
        assertThat(result.stateNames()).containsExactly("C-C, C-H", "C-O", "O-C=O or carbonate");
        double[] truth = {0.75, 0.15, 0.1};
        for (int k = 0; k < truth.length; k++) {
            Estimate fraction = result.fraction(result.stateNames().get(k));
            assertThat(fraction.value()).isCloseTo(truth[k], within(4 * Made.u(fraction)));
        }
        assertThat(result.model().background().background().describe()).contains("Shirley");
    }

    @Test
    void fluorinatedCarbonIsLookedForOnlyWithFluorine() {
        BindingScan scan = flat(275, 305);
        Line c1s = Line.parse("C 1s");
        assertThat(models.of(c1s, scan, 0, Set.of("C", "F")).orElseThrow().components())
                .extracting(ComponentModel::name)
                .contains("CF2");
        assertThat(models.of(c1s, scan, 0, Set.of("C", "O")).orElseThrow().components())
                .extracting(ComponentModel::name)
                .doesNotContain("CF2");
    }

    @Test
    void aStateWhoseTypicalPositionWasNotScannedIsLeftOut() {
        assertThat(models.of(Line.parse("S 2p"), flat(164.7, 178), 0, Set.of("S"))
                        .orElseThrow()
                        .components())
                .extracting(ComponentModel::name)
                .containsExactly("sulfate or sulfonate");
    }

    /** Two components half a width apart, everything free: one goes, and it is said that the other stands for both. */
    @Test
    void whatStandsForTwoIsToldAsTheirSum() {
        double[] x = Made.grid(278, 296, 0.1);
        double[] expected =
                Made.sum(Made.flat(x, 100), Made.voigt(x, 286, 500, 1.2, 0.1), Made.voigt(x, 286.6, 400, 1.2, 0.1));
        BindingScan scan = Made.noisy(x, expected, RandomStreams.stream(11, "pair", "0"));
        List<ComponentModel> pair = new ArrayList<>();
        for (String name : List.of("a", "b")) {
            pair.add(ComponentModel.of(name, new Voigt())
                    .with("position", ParameterRule.Free.within(285, 287.5))
                    .with("gaussianFwhm", ParameterRule.Free.within(0.4, 3))
                    .with("lorentzianFwhm", new ParameterRule.Fixed(0.1)));
        }
        FitModel model =
                new FitModel(new Window(278, 296), BackgroundModel.fittedAlong(Constant.of(5)), pair, List.of());
        Outcome<PeakFitResult> outcome = fit.fit(scan, model, "k", Work.UNWATCHED);
        assertThat(outcome.result().orElseThrow().components()).hasSize(1);
        assertThat(outcome.allFindings())
                .filteredOn(f -> f.rule().equals("fit-only-sum"))
                .singleElement()
                .satisfies(f -> assertThat(f.message()).contains("only their sum is measured"))
                .satisfies(f -> assertThat(f.severity()).isEqualTo(Severity.NOTE));
    }

    /** Aluminium under its oxide. */
    @Test
    void oxideAndMetalAreTakenApart() {
        double[] x = Made.grid(62, 90, 0.1);
        double ratio = 0.5087; // levels/doublets.csv
        double[] net = Made.sum(
                Made.peak(x, new DoniachSunjic(), 72.7, 1500, 0.5, 0.04, 0.1),
                Made.peak(x, new DoniachSunjic(), 73.11, 1500 * ratio, 0.5, 0.04, 0.1),
                Made.voigt(x, 75.6, 2500, 1.3, 0.04),
                Made.voigt(x, 76.01, 2500 * ratio, 1.3, 0.04));
        double[] expected = Made.sum(net, Made.flat(x, 100), Made.times(Made.passed(x, net), 0.02));
        BindingScan scan = Made.noisy(x, expected, RandomStreams.stream(1, "aluminium"));
        // 75.6 eV is a common position on thin oxides; beyond the typical range it would be at its bound
        PeakFitResult result = fitted(Line.parse("Al 2p"), scan, -0.6, "Al", "O", "C");
        assertThat(result.stateNames()).containsExactly("Al metal", "Al oxide (Al2O3)");
        Estimate metal = result.fraction("Al metal");
        assertThat(metal.value()).isCloseTo(1500.0 / 4000, within(5 * Made.u(metal)));
        assertThat(result.component("Al metal").shape()).isEqualTo("doniach-sunjic");
    }

    @Test
    void aMetalThatIsNotThereIsLeftOut() {
        double[] x = Made.grid(448, 476, 0.1);
        double[] net = Made.sum(Made.voigt(x, 458.7, 3000, 1.0, 0.25), Made.voigt(x, 464.75, 1550, 1.0, 1.0));
        double[] expected = Made.sum(net, Made.flat(x, 100), Made.times(Made.passed(x, net), 0.02));
        BindingScan scan = Made.noisy(x, expected, RandomStreams.stream(1, "titania"));
        PeakFitResult result = fitted(Line.parse("Ti 2p"), scan, 0, "Ti", "O", "C");
        assertThat(result.stateNames()).containsExactly("TiO2");
        Estimate width =
                result.component("TiO2 2p1/2").parameter("lorentzianFwhm").value();
        assertThat(width.value()).isCloseTo(1, within(5 * Made.u(width)));
    }

    /** Losses that begin tens of eV behind the line are no Shirley step. */
    @Test
    void aTougaardBackgroundIsTakenWhereItDescribesTheDataBetter() {
        double[] x = Made.grid(448, 476, 0.1);
        double[] net = Made.sum(Made.voigt(x, 458.7, 30000, 1.0, 0.25), Made.voigt(x, 464.75, 15500, 1.0, 1.0));
        double[] expected =
                Made.sum(Made.flat(x, 100), spotline.analysis.background.TougaardTwo.spectrumOf(x, net, 2866, 1643));
        BindingScan scan = Made.noisy(x, expected, RandomStreams.stream(1, "losses"));
        PeakFitResult result = fitted(Line.parse("Ti 2p"), scan, 0, "Ti", "O", "C");
        assertThat(result.model().background().describe()).contains("Tougaard");
        assertThat(result.statistics().reducedChiSquare().orElseThrow()).isLessThan(1.4);
    }

    @ParameterizedTest
    @ValueSource(strings = {"Fe 2p", "Cu 2p", "O 1s", "Zn 3p"})
    void linesWithoutADefaultSaySo(String line) {
        assertThat(models.has(Line.parse(line))).isFalse();
        assertThat(models.of(Line.parse(line), flat(500, 1000), 0, Set.of("O"))).isEmpty();
    }

    @Test
    void anotherElementsLineAmongItLeavesItToTheAnalyst() {
        // Ru 3d5/2 at 280, Ru 3d3/2 at 284 eV lie under C 1s
        assertThat(models.of(Line.parse("C 1s"), flat(270, 305), 0, Set.of("C", "Ru")))
                .isEmpty();
        assertThat(models.of(Line.parse("C 1s"), flat(283.5, 305), 0, Set.of("C")))
                .isEmpty();
        assertThat(models.of(Line.parse("C 1s"), flat(270, 305), 40, Set.of("C")))
                .isEmpty();
    }

    @Test
    void aWideDoubletIsFittedByItsFirstMember() {
        FitModel model = models.of(Line.parse("Zn 2p"), flat(1005, 1065), 0, Set.of("Zn", "O", "C"))
                .orElseThrow();
        assertThat(model.components()).singleElement().matches(c -> c.doublet().isEmpty());
        assertThat(model.window().highEv()).isLessThan(1043);
    }
}
