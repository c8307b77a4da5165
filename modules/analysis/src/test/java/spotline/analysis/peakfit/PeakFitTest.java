package spotline.analysis.peakfit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.random.RandomGenerator;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import spotline.analysis.background.Constant;
import spotline.analysis.background.DataCappedShirley;
import spotline.analysis.background.Linear;
import spotline.analysis.background.Shirley;
import spotline.analysis.peakfit.ParameterRule.EqualTo;
import spotline.analysis.peakfit.ParameterRule.Fixed;
import spotline.analysis.peakfit.ParameterRule.Free;
import spotline.analysis.peakfit.ParameterRule.OffsetFrom;
import spotline.analysis.peakfit.ParameterRule.RatioTo;
import spotline.core.Estimate;
import spotline.core.Finding;
import spotline.core.Outcome;
import spotline.core.Work;
import spotline.numerics.random.RandomStreams;
import spotline.numerics.shape.DoniachSunjic;
import spotline.numerics.shape.Gaussian;
import spotline.numerics.shape.GaussianLorentzianProduct;
import spotline.numerics.shape.GaussianLorentzianSum;
import spotline.numerics.shape.LineShape;
import spotline.numerics.shape.Lorentzian;
import spotline.numerics.shape.Template;
import spotline.numerics.shape.Voigt;
import spotline.numerics.shape.VoigtExponentialTail;
import spotline.reference.Line;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

class PeakFitTest {
    private static final Fixed NARROW = new Fixed(0.1);

    private static ComponentModel voigt(String name, double low, double high) {
        return ComponentModel.of(name, new Voigt())
                .with("position", Free.within(low, high))
                .with("gaussianFwhm", Free.within(0.4, 3))
                .with("lorentzianFwhm", NARROW);
    }

    private static BackgroundModel along() {
        return BackgroundModel.fittedAlong(Constant.of(5));
    }

    private static Window all(double[] x) {
        return new Window(x[0], x[x.length - 1]);
    }

    /** 10000 counts, FWHM 1.2 eV: u(position) = sigma / sqrt(N) = 0.0051 eV, u(area) = sqrt(N). Derived, closed form. */
    @Test
    void gaussianWithoutBackgroundReachesTheClosedForm() {
        double[] x = Made.grid(280, 290, 0.1);
        BindingScan scan = Made.scan(x, Made.peak(x, new Gaussian(), 285, 1000, 1.2));
        FitModel model =
                FitModel.of(all(x), BackgroundModel.takenFirst(Constant.of(5)), ComponentModel.of("a", new Gaussian()));
        FittedComponent a = Made.fit(scan, model).component("a");
        assertThat(a.position().value()).isCloseTo(285, within(1e-6));
        assertThat(Made.u(a.position())).isCloseTo(1.2 / Math.sqrt(8 * Math.log(2)) / 100, within(1e-5));
        assertThat(Made.u(a.area())).isCloseTo(10, within(0.01)); // counts eV at 0.1 eV a channel
        assertThat(Made.u(a.fwhm())).isCloseTo(1.2 / Math.sqrt(2 * 10000.0), within(1e-4));
    }

    /**
     * How well a weak line's position can be known at best: FWHM 1.4 eV, 0.1 eV a channel, against the counts of the peak and
     * the background's counts a channel. Cramer-Rao bound, derived, closed form of the sum of s'^2/(s + b).
     */
    @ParameterizedTest
    @CsvSource({
        "200, 0, 0.042, 0.0005", "200, 200, 0.28, 0.005", "200, 1000, 0.61, 0.005",
        "500, 0, 0.027, 0.0005", "500, 200, 0.11, 0.005", "500, 1000, 0.25, 0.005",
        "2000, 0, 0.013, 0.0005", "2000, 200, 0.032, 0.0005", "2000, 1000, 0.063, 0.0005",
        "10000, 0, 0.006, 0.0005", "10000, 200, 0.009, 0.0005", "10000, 1000, 0.014, 0.0005"
    })
    void aWeakLinesPositionIsAsUncertainAsItMustBe(double peak, double level, double u, double digits) {
        double[] x = Made.grid(278, 292, 0.1);
        BindingScan scan =
                Made.scan(x, Made.sum(Made.flat(x, level), Made.peak(x, new Gaussian(), 285, 0.1 * peak, 1.4)));
        BackgroundModel background = level > 0 ? along() : BackgroundModel.takenFirst(Constant.of(5));
        ComponentModel line = ComponentModel.of("a", new Gaussian())
                .with("position", Free.from(285, 284, 286))
                .with("fwhm", new Fixed(1.4));
        Estimate position = Made.fit(scan, FitModel.of(all(x), background, line))
                .component("a")
                .position();
        assertThat(position.value()).isCloseTo(285, within(1e-4));
        assertThat(Made.u(position)).isCloseTo(u, within(digits));
    }

    /** The shape of poly(ethylene terephthalate): 60 : 20 : 20; its distances are from memory. */
    @Test
    void polyesterComesOutAtSixToTwoToTwo() {
        double[] x = Made.grid(276, 300, 0.1);
        double[] net = Made.sum(
                Made.voigt(x, 284.7, 1800, 1.0, 0.1),
                Made.voigt(x, 286.3, 600, 1.0, 0.1),
                Made.voigt(x, 288.7, 600, 1.0, 0.1));
        double[] expected = Made.sum(net, Made.flat(x, 150), Made.times(Made.passed(x, net), 0.02));
        FitModel model = FitModel.of(
                all(x),
                BackgroundModel.fittedAlong(Shirley.of(5)),
                voigt("ring", 284, 285.5),
                voigt("C-O", 285.8, 287).with("gaussianFwhm", new EqualTo("ring")),
                voigt("O-C=O", 288, 289.5).with("gaussianFwhm", new EqualTo("ring")));
        int covered = 0;
        int checked = 0;
        for (int k = 0; k < 40; k++) {
            RandomGenerator random = RandomStreams.stream(3, "polyester", "" + k);
            PeakFitResult result = Made.fit(Made.noisy(x, expected, random), model);
            double[] truth = {0.6, 0.2, 0.2};
            for (int c = 0; c < 3; c++) {
                Estimate fraction = result.fraction(result.stateNames().get(c));
                checked++;
                if (Math.abs(fraction.value() - truth[c]) < 1.96 * Made.u(fraction)) covered++;
                assertThat(fraction.value()).isCloseTo(truth[c], within(4 * Made.u(fraction)));
                assertThat(Made.u(fraction)).isLessThan(0.02);
            }
        }
        assertThat(covered).isGreaterThan((int) (0.88 * checked));
    }

    @Test
    void fixedAndFreeSplittingsAreRecovered() {
        double[] x = Made.grid(95, 112, 0.05);
        double[] expected = Made.sum(
                Made.flat(x, 100), Made.voigt(x, 103, 800, 0.7, 0.1), Made.voigt(x, 103.6, 800 * 0.51, 0.7, 0.1));
        BindingScan scan = Made.noisy(x, expected, RandomStreams.stream(1, "splitting"));
        DoubletRule tabulated = DoubletRule.of(Line.parse("Si 2p")); // 0.60 eV and 0.510 in the reference data
        PeakFitResult fixed = Made.fit(
                scan, FitModel.of(all(x), along(), voigt("oxide", 101, 105).with(tabulated)));
        Estimate apart = fixed.positionDifference("oxide 2p1/2", "oxide");
        assertThat(apart.value()).isCloseTo(0.6, within(1e-9));
        assertThat(Made.u(apart)).as("shared parts cancel").isLessThan(1e-12);
        assertThat(fixed.component("oxide").position().value())
                .isCloseTo(103, within(4 * Made.u(fixed.component("oxide").position())));
        DoubletRule open = new DoubletRule(
                Line.parse("Si 2p"),
                Optional.of(Free.from(0.8, 0.2, 1.2)),
                Optional.empty(),
                new Fixed(1),
                Optional.empty());
        PeakFitResult free = Made.fit(
                scan, FitModel.of(all(x), along(), voigt("oxide", 101, 105).with(open)));
        Estimate splitting = free.positionDifference("oxide 2p1/2", "oxide");
        assertThat(splitting.value()).isCloseTo(0.6, within(4 * Made.u(splitting)));
        assertThat(Made.u(splitting)).isBetween(0.002, 0.03);
        assertThat(free.component("oxide 2p1/2").partnerOf()).contains("oxide");
    }

    @Test
    void aWiderPartnerIsRecovered() {
        double[] x = Made.grid(450, 476, 0.1);
        double[] expected = Made.sum(
                Made.flat(x, 100), Made.voigt(x, 458.7, 3000, 0.9, 0.25), Made.voigt(x, 464.75, 1500, 0.9, 1.2));
        BindingScan scan = Made.noisy(x, expected, RandomStreams.stream(1, "wider"));
        DoubletRule rule = new DoubletRule(
                Line.parse("Ti 2p"),
                Optional.of(new Fixed(6.05)),
                Optional.of(new Fixed(0.5)),
                new Fixed(1),
                Optional.of(Free.within(0.2, 3)));
        ComponentModel oxide =
                voigt("oxide", 457, 460).with("lorentzianFwhm", new Fixed(0.25)).with(rule);
        PeakFitResult result = Made.fit(scan, FitModel.of(all(x), along(), oxide));
        Estimate width =
                result.component("oxide 2p1/2").parameter("lorentzianFwhm").value();
        assertThat(width.value()).isCloseTo(1.2, within(4 * Made.u(width)));
        assertThat(result.component("oxide 2p1/2").fwhm().value())
                .isCloseTo(new Voigt().fwhm(0, 1, 0.9, 1.2), within(0.1));
    }

    private static final double[] PAIR_GRID = Made.grid(278, 296, 0.1);

    /** Two components half a width apart. */
    private static BindingScan pair(int seed) {
        double[] expected = Made.sum(
                Made.flat(PAIR_GRID, 100),
                Made.voigt(PAIR_GRID, 286, 500, 1.2, 0.1),
                Made.voigt(PAIR_GRID, 286.6, 400, 1.2, 0.1));
        return Made.noisy(PAIR_GRID, expected, RandomStreams.stream(11, "pair", "" + seed));
    }

    @Test
    void twoComponentsHalfAWidthApartWithEverythingFreeAreMeasuredAsTheirSumAlone() {
        FitModel model = FitModel.of(all(PAIR_GRID), along(), voigt("a", 285, 287.5), voigt("b", 285, 287.5));
        int told = 0;
        for (int k = 0; k < 50; k++) {
            PeakFitResult result = Made.fit(pair(k), model);
            if (result.inseparable().isEmpty()) continue;
            told++;
            Inseparable both = result.inseparable().get(0);
            assertThat(both.sum().value()).isCloseTo(900, within(4.5 * Made.u(both.sum())));
            assertThat(Made.u(both.sum())).isLessThan(40);
        }
        assertThat(told).as("of 50").isGreaterThanOrEqualTo(47);
    }

    @Test
    void withWidthsAndPositionsFixedTheSamePairGivesTwoHonestAreas() {
        ComponentModel a =
                voigt("a", 285, 287.5).with("position", new Fixed(286)).with("gaussianFwhm", new Fixed(1.2));
        ComponentModel b =
                voigt("b", 285, 287.5).with("position", new Fixed(286.6)).with("gaussianFwhm", new Fixed(1.2));
        FitModel model = FitModel.of(all(PAIR_GRID), along(), a, b);
        int covered = 0;
        for (int k = 0; k < 100; k++) {
            PeakFitResult result = Made.fit(pair(k), model);
            assertThat(result.inseparable()).isEmpty();
            Estimate area = result.component("a").area();
            if (Math.abs(area.value() - 500) < 1.96 * Made.u(area)) covered++;
            assertThat(Made.u(area)).isBetween(10.0, 40.0);
        }
        assertThat(covered).as("of 100").isBetween(89, 100);
    }

    @Test
    void onlyTheSumIsToldInASentence() {
        FitModel model = FitModel.of(all(PAIR_GRID), along(), voigt("a", 285, 287.5), voigt("b", 285, 287.5));
        Outcome<PeakFitResult> outcome = new PeakFit(Made.REFERENCE).fit(pair(0), model, Work.UNWATCHED);
        assertThat(outcome.allFindings())
                .filteredOn(f -> f.rule().equals("fit-only-sum"))
                .singleElement()
                .satisfies(f -> assertThat(f.message()).contains("a and b").contains("only their sum is measured"));
    }

    @Test
    void satellitesOfAnUnmonochromatedSourceAreCarriedByEveryComponent() {
        List<Satellite> satellites =
                Satellite.of(Made.REFERENCE.source("Mg Ka", false).orElseThrow(), Made.REFERENCE);
        assertThat(satellites).hasSizeGreaterThan(3);
        double[] x = Made.grid(268, 296, 0.1);
        double[] expected = Made.flat(x, 200);
        for (double at : new double[] {285, 289}) {
            expected = Made.sum(expected, Made.voigt(x, at, 2000, 1.2, 0.1));
            for (Satellite s : satellites) {
                expected =
                        Made.sum(expected, Made.voigt(x, at - s.displacementEv(), 2000 * s.relativeArea(), 1.2, 0.1));
            }
        }
        BindingScan scan = Made.noisy(x, expected, RandomStreams.stream(5, "satellites"));
        FitModel without = FitModel.of(all(x), along(), voigt("a", 283, 287), voigt("b", 287, 291));
        PeakFitResult with = Made.fit(scan, without.with(satellites));
        for (String name : List.of("a", "b")) {
            Estimate area = with.component(name).area();
            assertThat(area.value()).isCloseTo(2000, within(4 * Made.u(area)));
        }
        assertThat(with.statistics().reducedChiSquare().orElseThrow()).isBetween(0.7, 1.3);
        assertThat(Made.fit(scan, without).statistics().reducedChiSquare().orElseThrow())
                .isGreaterThan(2);
    }

    @Test
    void tiesHoldAndWhatTheyShareCancels() {
        double[] x = Made.grid(278, 298, 0.1);
        double[] expected =
                Made.sum(Made.flat(x, 100), Made.voigt(x, 285, 900, 1.1, 0.1), Made.voigt(x, 288, 450, 1.1, 0.1));
        BindingScan scan = Made.noisy(x, expected, RandomStreams.stream(2, "ties"));
        ComponentModel b = ComponentModel.of("b", new Voigt())
                .with("position", new OffsetFrom("a", Free.from(2.8, 2, 4)))
                .with("area", new RatioTo("a", Free.from(0.4, 0.1, 1)))
                .with("gaussianFwhm", new EqualTo("a"))
                .with("lorentzianFwhm", new RatioTo("a", new Fixed(1)));
        PeakFitResult result = Made.fit(scan, FitModel.of(all(x), along(), voigt("a", 284, 286), b));
        Estimate offset = result.positionDifference("b", "a");
        assertThat(offset.value()).isCloseTo(3, within(4 * Made.u(offset)));
        double apart = Math.hypot(
                Made.u(result.component("a").position()),
                Made.u(result.component("b").position()));
        assertThat(Made.u(offset)).isLessThan(1.01 * apart);
        Estimate ratio =
                result.component("b").area().dividedBy(result.component("a").area());
        assertThat(ratio.value()).isCloseTo(0.5, within(4 * Made.u(ratio)));
        assertThat(result.component("b").fwhm()).isEqualTo(result.component("a").fwhm());
        assertThat(result.component("b").parameter("area").hold()).isEqualTo(FittedParameter.Hold.TIED);
        Estimate sum = result.totalArea();
        Estimate parts = result.areaOf(List.of("a", "b"));
        assertThat(sum.value()).isEqualTo(parts.value());
        assertThat(Made.u(result.fraction("a").plus(result.fraction("b")))).isLessThan(1e-12);
    }

    /** A free ratio must come to the same as a free area. */
    @Test
    void aFreeRatioIsAnotherWayToWriteAFreeArea() {
        double[] x = Made.grid(278, 298, 0.1);
        double[] expected =
                Made.sum(Made.flat(x, 100), Made.voigt(x, 285, 900, 1.1, 0.1), Made.voigt(x, 288, 450, 1.1, 0.1));
        BindingScan scan = Made.noisy(x, expected, RandomStreams.stream(2, "ratio"));
        ComponentModel b = voigt("b", 287, 289);
        PeakFitResult plain = Made.fit(scan, FitModel.of(all(x), along(), voigt("a", 284, 286), b));
        PeakFitResult tied = Made.fit(
                scan,
                FitModel.of(all(x), along(), voigt("a", 284, 286), b.with("area", new RatioTo("a", Free.UNBOUNDED))));
        assertThat(tied.component("b").area().value())
                .isCloseTo(plain.component("b").area().value(), within(1e-2));
        assertThat(Made.u(tied.component("b").area()))
                .isCloseTo(Made.u(plain.component("b").area()), within(1e-2));
    }

    @Test
    void positionsAreFoundWithoutAnyStart() {
        double[] x = Made.grid(276, 300, 0.1);
        double[] expected = Made.sum(
                Made.flat(x, 60),
                Made.voigt(x, 284.8, 2000, 1.1, 0.1),
                Made.voigt(x, 286.6, 600, 1.1, 0.1),
                Made.voigt(x, 292, 1500, 1.1, 0.1));
        BindingScan scan = Made.noisy(x, expected, RandomStreams.stream(4, "no start"));
        ComponentModel plain = ComponentModel.of("1", new Voigt()).with("lorentzianFwhm", NARROW);
        FitModel model = FitModel.of(
                all(x),
                along(),
                plain,
                ComponentModel.of("2", new Voigt())
                        .with("gaussianFwhm", new EqualTo("1"))
                        .with("lorentzianFwhm", NARROW),
                ComponentModel.of("3", new Voigt())
                        .with("gaussianFwhm", new EqualTo("1"))
                        .with("lorentzianFwhm", NARROW));
        List<Double> found = Made.fit(scan, model).components().stream()
                .map(c -> c.position().value())
                .sorted()
                .toList();
        assertThat(found.get(0)).isCloseTo(284.8, within(0.05));
        assertThat(found.get(1)).isCloseTo(286.6, within(0.1));
        assertThat(found.get(2)).isCloseTo(292, within(0.05));
    }

    static Stream<Arguments> shapes() {
        double[] offsets = Made.grid(-4, 4, 0.1);
        double[] line = Made.peak(offsets, new Gaussian(), 0, 1, 0.9);
        return Stream.of(
                Arguments.of(new Gaussian(), Map.of("fwhm", 1.2)),
                Arguments.of(new Lorentzian(), Map.of("fwhm", 0.8)),
                Arguments.of(new GaussianLorentzianSum(), Map.of("fwhm", 1.2, "lorentzianFraction", 0.4)),
                Arguments.of(new GaussianLorentzianProduct(), Map.of("width", 1.2, "lorentzianFraction", 0.4)),
                Arguments.of(new Voigt(), Map.of("gaussianFwhm", 0.9, "lorentzianFwhm", 0.5)),
                Arguments.of(
                        new DoniachSunjic(), Map.of("gaussianFwhm", 0.7, "lorentzianFwhm", 0.4, "asymmetry", 0.12)),
                Arguments.of(
                        new VoigtExponentialTail(), Map.of("gaussianFwhm", 0.9, "lorentzianFwhm", 0.3, "decay", 0.8)),
                Arguments.of(new Template(offsets, line), Map.of("broadening", 0.6)));
    }

    @ParameterizedTest
    @MethodSource("shapes")
    void everyShapeIsRecoveredFromItsOwnData(LineShape shape, Map<String, Double> truth) {
        double[] x = Made.grid(275, 297, 0.1);
        double[] p = new double[shape.parameterCount()];
        p[0] = 285;
        p[1] = 20000;
        for (int k = 2; k < p.length; k++)
            p[k] = truth.get(shape.parameterNames().get(k));
        double[] expected = Made.sum(Made.flat(x, 50), Made.peak(x, shape, p));
        BindingScan scan = Made.noisy(x, expected, RandomStreams.stream(6, shape.name()));
        PeakFitResult result = Made.fit(scan, FitModel.of(all(x), along(), ComponentModel.of("a", shape)));
        FittedComponent a = result.component("a");
        for (int k = 0; k < p.length; k++) {
            Estimate value = a.parameter(shape.parameterNames().get(k)).value();
            assertThat(value.value()).as(shape.parameterNames().get(k)).isCloseTo(p[k], within(4.5 * Made.u(value)));
        }
        assertThat(a.fwhm().value()).isCloseTo(shape.fwhm(p), within(4.5 * Made.u(a.fwhm())));
        assertThat(a.maximumEv()).isCloseTo(shape.measure(p).maximumAt(), within(0.02));
        assertThat(result.statistics().reducedChiSquare().orElseThrow()).isBetween(0.7, 1.3);
    }

    /** Widths by the implicit derivative against central differences. */
    @ParameterizedTest
    @MethodSource("shapes")
    void theWidthsSlopesAreRight(LineShape shape, Map<String, Double> truth) {
        double[] p = new double[shape.parameterCount()];
        p[1] = 1;
        for (int k = 2; k < p.length; k++)
            p[k] = truth.get(shape.parameterNames().get(k));
        PeakWidth width = PeakWidth.of(shape, p);
        assertThat(width.fwhm).isCloseTo(shape.fwhm(p), within(1e-9));
        for (int k = 2; k < p.length; k++) {
            double[] up = p.clone();
            double[] down = p.clone();
            up[k] += 1e-4;
            down[k] -= 1e-4;
            assertThat(width.slope(k))
                    .as(shape.parameterNames().get(k))
                    .isCloseTo((shape.fwhm(up) - shape.fwhm(down)) / 2e-4, within(2e-4));
        }
    }

    @Test
    void anOrdinateOfUnknownStatisticsTakesItsUncertaintyFromTheResiduals() {
        double[] x = Made.grid(278, 294, 0.1);
        double[] expected = Made.sum(Made.flat(x, 1000), Made.voigt(x, 285, 400, 1.1, 0.1));
        BindingScan counts = Made.noisy(x, expected, RandomStreams.stream(8, "rate"));
        BindingScan rate = new BindingScan(
                "made",
                Made.PHOTON_EV,
                x,
                Made.times(counts.counts(), 0.01),
                false,
                OptionalDouble.empty(),
                OptionalDouble.empty());
        FitModel model = FitModel.of(all(x), BackgroundModel.takenFirst(Linear.of(5)), voigt("a", 284, 286));
        PeakFitResult counted = Made.fit(counts, model);
        PeakFitResult uncounted = Made.fit(rate, model);
        assertThat(uncounted.counted()).isFalse();
        assertThat(uncounted.statistics().reducedChiSquare()).isEmpty();
        assertThat(uncounted.component("a").area().value())
                .isCloseTo(0.01 * counted.component("a").area().value(), within(0.1));
        // one variance for all channels is not quite that of counts
        assertThat(Made.u(uncounted.component("a").area())
                        / (0.01 * Made.u(counted.component("a").area())))
                .isBetween(0.8, 1.2);
    }

    @Test
    void whatDoesNotSuitTheScanIsUntreatedWithEveryReason() {
        double[] x = Made.grid(284, 285, 0.1);
        BindingScan scan = Made.scan(x, Made.flat(x, 10));
        DoubletRule none = DoubletRule.of(Line.parse("He 2p"));
        FitModel model = FitModel.of(
                new Window(284, 284.3),
                BackgroundModel.fittedAlong(DataCappedShirley.of(1)),
                voigt("a", 284, 285).with(none),
                voigt("b", 284, 285));
        Outcome<PeakFitResult> outcome = new PeakFit(Made.REFERENCE).fit(scan, model, Work.UNWATCHED);
        assertThat(outcome.result()).isEmpty();
        assertThat(outcome.allFindings())
                .singleElement()
                .extracting(Finding::message)
                .asString()
                .contains("He 2p")
                .contains("4 channels")
                .contains("6 free parameters")
                .contains("data-capped Shirley");
    }

    @Test
    void emptySpectraAndPureNoiseDoNotBreakIt() {
        double[] x = Made.grid(280, 290, 0.1);
        FitModel model = FitModel.of(
                all(x), BackgroundModel.fittedAlong(Shirley.of(3)), voigt("a", 283, 286), voigt("b", 284, 288));
        PeakFit fit = new PeakFit(Made.REFERENCE);
        assertThat(fit.fit(Made.scan(x, Made.flat(x, 0)), model, Work.UNWATCHED).allFindings())
                .isNotEmpty();
        for (int k = 0; k < 20; k++) {
            RandomGenerator random = RandomStreams.stream(9, "noise", "" + k);
            double[] expected = Made.flat(x, k < 10 ? 0.3 : 40);
            PeakFitResult result = Made.fit(Made.noisy(x, expected, random), model);
            for (FittedComponent c : result.components()) {
                double u = c.area().standardUncertainty().orElse(Double.POSITIVE_INFINITY);
                assertThat(c.area().value()).isLessThan(8 * u + 1);
            }
        }
    }

    @Test
    void negativeCountsAreToldAndFittedByLeastSquares() {
        double[] x = Made.grid(280, 290, 0.1);
        double[] y = Made.sum(Made.flat(x, 5), Made.voigt(x, 285, 100, 1.1, 0.1));
        y[3] = -2;
        Outcome<PeakFitResult> outcome = new PeakFit(Made.REFERENCE)
                .fit(Made.scan(x, y), FitModel.of(all(x), along(), voigt("a", 284, 286)), Work.UNWATCHED);
        assertThat(outcome.allFindings()).anyMatch(f -> f.rule().equals("fit-negative-counts"));
        assertThat(outcome.result().orElseThrow().component("a").area().value()).isCloseTo(100, within(5.0));
    }
}
