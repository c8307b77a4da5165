package spotline.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import spotline.formats.iso14976.Experiment;
import spotline.formats.iso14976.ExperimentBlock;

class SpectrumMakerTest {
    private static final double PHOTON_EV = 1486.69;
    private static final DemoModel MODEL =
            new DemoModel(Footbridge.INSTRUMENT, new ReferenceAtoms(PHOTON_EV), LossFunction.UNIVERSAL);
    private static final SpectrumMaker FILES = new SpectrumMaker(MODEL, Footbridge.SEED);

    static List<SpotPlan> spots() {
        return Footbridge.spots();
    }

    private static double max(double[] values) {
        double max = 0;
        for (double value : values) max = Math.max(max, value);
        return max;
    }

    @ParameterizedTest
    @MethodSource("spots")
    void countsAreWholeNumbersOfARealisticSize(SpotPlan spot) {
        List<ExperimentBlock> blocks = FILES.experiment(spot).blocks();
        assertThat(blocks).hasSameSizeAs(spot.scans());
        for (int i = 0; i < blocks.size(); i++) {
            double[] counts = blocks.get(i).ordinates().variable(0);
            assertThat(counts).hasSize(spot.scans().get(i).channels());
            for (double count : counts) assertThat(count).isEqualTo(Math.rint(count));
            boolean survey = spot.scans().get(i).species().equals("survey");
            assertThat(max(counts)).isBetween(survey ? 20_000.0 : 5_000.0, survey ? 150_000.0 : 60_000.0);
        }
    }

    /** Noise is Poisson about the expectation: the reduced chi-square of every block is 1. */
    @ParameterizedTest
    @MethodSource("spots")
    void countsScatterAboutTheirExpectation(SpotPlan spot) {
        List<ExperimentBlock> blocks = FILES.experiment(spot).blocks();
        for (int i = 0; i < blocks.size(); i++) {
            Scan scan = spot.scans().get(i);
            double[] counts = blocks.get(i).ordinates().variable(0);
            double[] expected =
                    MODEL.expectedCounts(MODEL.spectrum(spot.surface(), scan.mode()), scan, spot.driftEv(i));
            double chiSquare = 0;
            for (int c = 0; c < counts.length; c++) {
                chiSquare += (counts[c] - expected[c]) * (counts[c] - expected[c]) / expected[c];
            }
            double n = counts.length;
            assertThat(chiSquare / n).isCloseTo(1, within(4 * Math.sqrt(2 / n))); // chi-square distribution
        }
    }

    @ParameterizedTest
    @MethodSource("spots")
    void theTransmissionOfTheModeStandsBesideTheCounts(SpotPlan spot) {
        List<ExperimentBlock> blocks = FILES.experiment(spot).blocks();
        for (int i = 0; i < blocks.size(); i++) {
            Scan scan = spot.scans().get(i);
            assertThat(blocks.get(i).variables().get(1).label()).isEqualTo("Transmission");
            double[] transmission = blocks.get(i).ordinates().variable(1);
            for (int c = 0; c < transmission.length; c += 50) {
                double kinetic = PHOTON_EV - scan.bindingEv(c);
                double expected = scan.mode() == Footbridge.INSTRUMENT.survey()
                        ? Math.pow(kinetic / 1000, -0.55)
                        : 0.2 * Math.pow(kinetic / 1000, -0.35);
                assertThat(transmission[c]).isCloseTo(expected, within(1e-5 * expected));
            }
        }
    }

    /** The narrow scans hold their line with room: 5.5 eV and more below its lowest state, 11 above the highest. */
    @ParameterizedTest
    @MethodSource("spots")
    void narrowScansLeaveRoomForABackground(SpotPlan spot) {
        for (Scan scan : spot.scans()) {
            List<Double> positions = MODEL.lines(spot.surface(), scan.mode()).stream()
                    .filter(line ->
                            line.element().equals(scan.species()) && line.line().equals(scan.transition()))
                    .flatMap(line -> line.peaks().stream())
                    .map(ZeroLoss::bindingEv)
                    .toList();
            for (double position : positions) {
                assertThat(position - scan.lowEv()).as(scan.toString()).isGreaterThan(5.5);
                assertThat(scan.highEv() - position).as(scan.toString()).isGreaterThan(11);
            }
        }
    }

    /** Foreign lines and Auger features in a narrow scan stay below 2 % of its own height. */
    @ParameterizedTest
    @MethodSource("spots")
    void noNarrowScanIsSpoiltByAForeignFeature(SpotPlan spot) {
        for (Scan scan : spot.scans()) {
            if (scan.species().equals("survey") || scan.species().equals("valence")) continue;
            boolean auger = scan.transition().length() > 2;
            double own = 0;
            double foreign = 0;
            for (Emission line : MODEL.emissions(spot.surface(), scan.mode())) {
                boolean wanted = line.element().equals(scan.species())
                        && (auger || line.line().equals(scan.transition()));
                for (ZeroLoss peak : line.peaks()) {
                    if (peak.bindingEv() < scan.lowEv() - 1 || peak.bindingEv() > scan.highEv() + 1) continue;
                    double height = peak.area() / (1.0645 * peak.gaussianFwhmEv()); // Gaussian, closed form
                    if (wanted) own = Math.max(own, height);
                    else foreign = Math.max(foreign, height);
                }
            }
            assertThat(foreign).as(spot.sampleName() + ", " + scan).isLessThan(0.02 * own);
        }
    }

    /** Carbon first and last, times rising through the whole holder, the offset in the header. */
    @Test
    void theScansFollowEachOtherInTime() {
        long before = Long.MIN_VALUE;
        for (SpotPlan spot : Footbridge.spots()) {
            Experiment experiment = FILES.experiment(spot);
            List<ExperimentBlock> blocks = experiment.blocks();
            assertThat(blocks.get(0).species()).isEqualTo("survey");
            assertThat(blocks.get(1).species() + blocks.get(1).transition()).isEqualTo("C1s");
            ExperimentBlock last = blocks.get(blocks.size() - 1);
            assertThat(last.species() + last.transition()).isEqualTo("C1s");
            for (int i = 0; i < blocks.size(); i++) {
                long start = spot.startOf(i).toEpochSecond();
                assertThat(start).isGreaterThan(before);
                before = start + (long) spot.scans().get(i).seconds();
                assertThat(blocks.get(i).time().hoursInAdvanceOfGmt().value()).hasValue(1);
            }
        }
    }

    @Test
    void theDriftStaysBelowThreeHundredthsOfAVolt() {
        for (SpotPlan spot : Footbridge.spots()) {
            int last = spot.scans().size() - 1;
            assertThat(Math.abs(spot.driftEv(last) - spot.driftEv(1))).isLessThan(0.03);
        }
    }

    @Test
    void sulfurOfTheCouponIsInTheSurveyOnlyAndClear() {
        SpotPlan coupon = Footbridge.spots().get(2);
        assertThat(coupon.scans()).noneMatch(scan -> scan.species().equals("S"));
        Map<String, Double> percent = MODEL.apparentPercent(coupon.surface(), coupon.quantified());
        assertThat(percent.get("S")).isGreaterThan(3);
    }
}
