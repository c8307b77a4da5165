package spotline.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import spotline.core.Estimate;

class ReplicateMeanTest {
    private static SampleComposition only(List<SpotResult> spots) throws Exception {
        List<SampleComposition> samples = ReplicateMean.of(Made.plan("a", "a", "a"), spots);
        assertThat(samples).hasSize(1);
        return samples.get(0);
    }

    private static Estimate counted(double value, String spot, double u) {
        return Estimate.of(value, "counting/" + spot, u);
    }

    @Test
    void scatterBetweenSpots() throws Exception {
        SampleComposition sample = only(List.of(
                Made.spot("1", "a", Made.row("C", counted(28.1, "1", 0.1))),
                Made.spot("2", "a", Made.row("C", counted(28.9, "2", 0.1))),
                Made.spot("3", "a", Made.row("C", counted(27.6, "3", 0.1)))));
        SampleComposition.Mean c = sample.elements().get(0);
        assertThat(sample.spots()).containsExactly("1", "2", "3");
        // mean of three and s/sqrt(3); derived
        assertThat(c.atomicPercent().orElseThrow()).isCloseTo(28.2, within(1e-9));
        assertThat(c.standardUncertainty().orElseThrow()).isCloseTo(0.3786, within(5e-5));
    }

    @Test
    void sharedFactorErrorsDoNotAverageDown() throws Exception {
        SampleComposition sample = only(List.of(
                Made.spot("1", "a", Made.row("C", counted(28, "1", 0.3).with("factor/cross section C 1s", 1.2))),
                Made.spot("2", "a", Made.row("C", counted(28, "2", 0.3).with("factor/cross section C 1s", 1.2))),
                Made.spot("3", "a", Made.row("C", counted(28, "3", 0.3).with("factor/cross section C 1s", 1.2)))));
        double u = sample.elements().get(0).standardUncertainty().orElseThrow();
        // counting averages, the factor does not; derived
        assertThat(u).isCloseTo(Math.hypot(0.3 / Math.sqrt(3), 1.2), within(1e-9));
    }

    @Test
    void belowDetectionAtOneSpotCountsAsHalfItsLimit() throws Exception {
        SampleComposition sample = only(List.of(
                Made.spot("1", "a", Made.row("N", counted(0.8, "1", 0.1))),
                Made.spot("2", "a", Made.below("N", 0.6)),
                Made.spot("3", "a", Made.below("N", 0.6))));
        SampleComposition.Mean n = sample.elements().get(0);
        assertThat(n.atomicPercent().orElseThrow()).isCloseTo(1.4 / 3, within(1e-9));
        assertThat(n.standardUncertainty().orElseThrow()).isGreaterThan(0.16);
    }

    @Test
    void belowDetectionEverywhereHasNoMean() throws Exception {
        SampleComposition sample =
                only(List.of(Made.spot("1", "a", Made.below("N", 0.6)), Made.spot("2", "a", Made.below("N", 0.5))));
        assertThat(sample.elements().get(0).atomicPercent()).isEmpty();
    }

    @Test
    void withheldAtOneSpotWithholdsTheMean() throws Exception {
        SampleComposition sample = only(List.of(
                Made.spot("1", "a", Made.row("C", counted(28, "1", 0.3))),
                Made.spot("2", "a", Made.row("C", counted(28, "2", 0.3)).withheld())));
        assertThat(sample.elements().get(0).atomicPercent()).isEmpty();
    }

    @Test
    void anUnknownUncertaintyStaysUnknown() throws Exception {
        SampleComposition sample = only(List.of(
                Made.spot("1", "a", Made.row("C", Estimate.unknown(20))),
                Made.spot("2", "a", Made.row("C", counted(30, "2", 1)))));
        SampleComposition.Mean c = sample.elements().get(0);
        assertThat(c.atomicPercent().orElseThrow()).isEqualTo(25);
        assertThat(c.standardUncertainty()).isEmpty();
    }

    @Test
    void samplesAreKeptApart() throws Exception {
        List<SampleComposition> samples = ReplicateMean.of(
                Made.plan("a", "b", "a"),
                List.of(
                        Made.spot("1", "a", Made.row("C", Estimate.exact(1))),
                        Made.spot("2", "b", Made.row("C", Estimate.exact(5))),
                        Made.spot("3", "a", Made.row("C", Estimate.exact(3)))));
        assertThat(samples).extracting(SampleComposition::sample).containsExactly("a", "b");
        assertThat(samples.get(0).elements().get(0).atomicPercent()).hasValue(2);
    }
}
