package spotline.analysis.charge;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.random.RandomGenerator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import spotline.analysis.charge.HolderEvidence.SpotCharge;
import spotline.numerics.random.PoissonSampler;
import spotline.numerics.random.RandomStreams;
import spotline.spectra.BindingScan;

/** How often a spot with nothing wrong ends doubtful: carbon first and last, oxygen between, two spots a sample. */
class CleanSpotsTest {
    private static BindingScan oxygen(RandomGenerator random, String label, double atEv, double area) {
        double[] energy = Made.grid(atEv - 9, atEv + 11);
        double[] means = Made.means(energy, List.of(new Made.Peak(atEv, area, 1.35)), 0.05 * area, 0.2);
        return Made.scan(label, energy, PoissonSampler.sample(random, means));
    }

    private static ChargeReference spot(RandomGenerator random, String name, double area, double width) {
        CarbonTruth truth = CarbonTruth.drawn(random, area, width);
        double shift = 284.8 - truth.positionEv();
        return Made.reference(
                Made.byRecord(),
                Made.input(
                        Made.ISOLATED,
                        shift + 0.5 * (random.nextDouble() - 0.5),
                        Made.line("C 1s", truth.scan(random, name + " C 1s")),
                        Made.line("O 1s", oxygen(random, name + " O 1s", 532.4 - shift, 2 * area)),
                        Made.line("C 1s", truth.scan(random, name + " C 1s again"))));
    }

    /** Share of the spots of so many samples that end doubtful; 3 to 300 kcounts under hydrocarbon. */
    private static double doubtful(int samples, long seed) {
        RandomGenerator random = RandomStreams.stream(seed, "clean spots");
        int doubtful = 0;
        for (int k = 0; k < samples; k++) {
            double width = 1.05 + 0.25 * random.nextDouble();
            double area = 300 * Math.pow(100, random.nextDouble());
            List<SpotCharge> holder = new ArrayList<>();
            for (String name : List.of("1", "2")) {
                ChargeReference charge = spot(random, name, area, width);
                holder.add(new SpotCharge(name, "sample", charge, Made.byRecord(), OptionalDouble.of(20)));
            }
            for (var outcome : HolderEvidence.compare(holder)) {
                ChargeVerdict verdict = outcome.result().orElseThrow().verdict();
                assertThat(verdict).isNotEqualTo(ChargeVerdict.FAILED);
                if (verdict == ChargeVerdict.DOUBTFUL) doubtful++;
            }
        }
        return doubtful / (2.0 * samples);
    }

    @Test
    void aSampleOfCleanSpotsIsHardlyDoubted() {
        assertThat(doubtful(20, 51)).isLessThanOrEqualTo(0.1);
    }

    @Tag("slow")
    @Test
    void atMostATenthOfCleanSpotsIsDoubted() {
        assertThat(doubtful(500, 52)).isLessThanOrEqualTo(0.1);
    }
}
