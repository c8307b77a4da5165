package spotline.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestReporter;
import spotline.analysis.quantify.Quantified;
import spotline.core.Work;
import spotline.reference.ReferenceData;

/** Whether 95 % intervals hold the truth in 95 % of holders. Source: GUM (JCGM 100:2008) 6.2; limits derived. */
class CoverageTest {
    private static final SimulatedHolder.Spread EVERYTHING = new SimulatedHolder.Spread(1, true);
    private static final SimulatedHolder.Spread COUNTING = new SimulatedHolder.Spread(0, false);

    /** Holders of the sample in every build. */
    private static final int SAMPLE = 40;

    private final ReferenceData reference = ReferenceData.shipped();

    private record Coverage(Map<String, Double> share, double medianWidth) {}

    private Coverage coverage(int holders, SimulatedHolder.Spread spread, ToDoubleFunction<Quantified> u) {
        SpotTreatment treatment = new SpotTreatment(reference);
        Map<String, Double> covered = new LinkedHashMap<>();
        List<Double> widths = new ArrayList<>();
        for (int trial = 0; trial < holders; trial++) {
            SimulatedHolder holder = SimulatedHolder.draw(reference, trial, spread);
            SpotResult result = treatment.treat(holder.input(), Work.UNWATCHED);
            for (Quantified row : result.composition()) {
                double percent = row.atomicPercent().orElseThrow().value();
                double off = percent - Objects.requireNonNull(holder.truth().get(row.element()));
                double half = 1.96 * u.applyAsDouble(row);
                covered.merge(row.element(), Math.abs(off) <= half ? 1.0 / holders : 0, Double::sum);
                widths.add(2 * half / percent);
            }
        }
        widths.sort(Double::compare);
        Coverage coverage = new Coverage(covered, widths.get(widths.size() / 2));
        assertThat(coverage.share().keySet()).containsExactlyInAnyOrder("C", "O", "Si", "Na");
        return coverage;
    }

    private static double combined(Quantified row) {
        return row.atomicPercent().orElseThrow().standardUncertainty().orElseThrow();
    }

    private static double statistical(Quantified row) {
        return row.statisticalU().orElseThrow();
    }

    private static void assertCovers(Coverage coverage, double least, double most, TestReporter told) {
        String figures =
                String.format(Locale.ROOT, "%s, median relative width %.4f", coverage.share(), coverage.medianWidth());
        told.publishEntry("coverage", figures);
        assertThat(coverage.share().values())
                .as(figures)
                .allSatisfy(share -> assertThat(share).isBetween(least, most));
    }

    /** Three binomial deviations below the 95 % that is claimed. Derived: sqrt(0.95 0.05 / n). */
    private static double least(int holders) {
        return 0.95 - 3 * Math.sqrt(0.95 * 0.05 / holders);
    }

    @Test
    void aSampleOfCombinedIntervalsHoldsTheTruth(TestReporter told) {
        assertCovers(coverage(SAMPLE, EVERYTHING, CoverageTest::combined), least(SAMPLE), 1, told);
    }

    @Test
    void aSampleOfStatisticalIntervalsHoldsTheTruthOfCountingAlone(TestReporter told) {
        assertCovers(coverage(SAMPLE, COUNTING, CoverageTest::statistical), least(SAMPLE), 1, told);
    }

    @Tag("slow")
    @Test
    void combinedIntervalsCoverNinetyFivePercent(TestReporter told) {
        assertCovers(coverage(2000, EVERYTHING, CoverageTest::combined), 0.93, 0.97, told);
    }

    @Tag("slow")
    @Test
    void statisticalIntervalsCoverNinetyFivePercentOfCountingAlone(TestReporter told) {
        assertCovers(coverage(2000, COUNTING, CoverageTest::statistical), 0.93, 0.97, told);
    }
}
