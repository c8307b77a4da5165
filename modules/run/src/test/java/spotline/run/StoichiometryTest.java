package spotline.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestReporter;
import spotline.analysis.quantify.Quantified;
import spotline.core.Work;
import spotline.reference.ReferenceData;

/**
 * Compounds simulated with tails that no background here subtracts, against what a perfect reading of their zero-loss
 * areas gives. Common practice, no source: 95 % of isolated lines within 5 % relative.
 */
class StoichiometryTest {
    private final ReferenceData reference = ReferenceData.shipped();

    /** Loss functions from memory: S. Tougaard, Surf. Interface Anal. 25 (1997) 137; the gap is that of an insulator. */
    private static final SimulatedSolid.Losses SILICA = SimulatedSolid.Losses.threeParameter(325, 542, 275);

    private static final SimulatedSolid.Losses GAPPED =
            SimulatedSolid.Losses.gapped(SimulatedSolid.Losses.threeParameter(434, 551, 436), 5);

    private static final SimulatedSolid.Losses UNIVERSAL = t -> 2866 * t / ((1643 + t * t) * (1643 + t * t));

    private List<String> outside(
            SimulatedCompound compound,
            SimulatedSolid.Losses losses,
            double layer,
            double tolerance,
            List<String> all) {
        SimulatedSolid solid = new SimulatedSolid(reference, compound.material(), compound.atoms(), losses, layer, 0);
        Map<String, Double> truth = solid.apparentPercent(compound.quantified(layer), 0.75);
        SpotInput spot = compound.spot(reference, solid, layer, DefaultTreatment.treatment(), 20260518);
        SpotResult result = new SpotTreatment(reference).treat(spot, Work.UNWATCHED);
        List<String> outside = new ArrayList<>();
        for (Map.Entry<String, Double> e : truth.entrySet()) {
            double found = result.composition().stream()
                    .filter(r -> r.element().equals(e.getKey()))
                    .findFirst()
                    .flatMap(Quantified::atomicPercent)
                    .orElseThrow(() -> new AssertionError(e.getKey() + " of " + compound.name() + " was not found"))
                    .value();
            String line = compound.name() + " " + e.getKey() + " " + found + " for " + e.getValue();
            all.add(line);
            if (Math.abs(found / e.getValue() - 1) > tolerance) outside.add(line);
        }
        return outside;
    }

    @Test
    void aSampleOfCompoundsReadsAsItShould() {
        List<String> all = new ArrayList<>();
        List<String> outside = new ArrayList<>();
        for (int i = 0; i < SimulatedCompound.isolated().size(); i += 3) {
            outside.addAll(outside(SimulatedCompound.isolated().get(i), SILICA, 0.8, 0.05, all));
        }
        assertThat(outside).as("of %d lines", all.size()).hasSizeLessThanOrEqualTo(all.size() / 20);
    }

    @Tag("slow")
    @Test
    void ninetyFiveInAHundredLinesAreWithinFivePercent() {
        List<String> all = new ArrayList<>();
        List<String> outside = new ArrayList<>();
        for (SimulatedSolid.Losses losses : List.of(SILICA, GAPPED)) {
            for (double layer : new double[] {0, 0.4, 0.8, 1.5}) {
                for (SimulatedCompound c : SimulatedCompound.isolated()) {
                    outside.addAll(outside(c, losses, layer, 0.05, all));
                }
            }
        }
        assertThat(outside).as("of %d lines", all.size()).hasSizeLessThanOrEqualTo(all.size() / 20);
    }

    /**
     * What is found in scans of lines that are not there. A critical level lets 5 % of empty scans pass (Currie 1968); three
     * binomial deviations above that are allowed.
     */
    private void nothingIsInvented(int every, double[] layers, TestReporter told) {
        int scans = 0;
        List<String> found = new ArrayList<>();
        for (double layer : layers) {
            for (int i = 0; i < SimulatedCompound.isolated().size(); i += every) {
                SimulatedCompound c = SimulatedCompound.isolated().get(i);
                SimulatedSolid solid = new SimulatedSolid(reference, c.material(), c.atoms(), SILICA, layer, 0);
                SpotInput spot = c.withAbsentLines(reference, solid, layer, DefaultTreatment.treatment(), 20260521 + i);
                for (Quantified row :
                        new SpotTreatment(reference).treat(spot, Work.UNWATCHED).composition()) {
                    if (c.quantified(layer).containsKey(row.element())) continue;
                    scans++;
                    if (row.belowDetection()) continue;
                    found.add(c.name() + " " + row.line() + " "
                            + row.atomicPercent().orElseThrow().value());
                }
            }
        }
        double allowed = 0.05 * scans + 3 * Math.sqrt(0.05 * 0.95 * scans);
        told.publishEntry("found in " + scans + " empty scans", found.toString());
        assertThat(scans).isGreaterThan(40);
        assertThat((double) found.size()).as("%s of %d scans", found, scans).isLessThanOrEqualTo(allowed);
    }

    @Test
    void aSampleOfEmptyScansShowsNothing(TestReporter told) {
        nothingIsInvented(2, new double[] {0.8}, told);
    }

    @Tag("slow")
    @Test
    void emptyScansShowNothing(TestReporter told) {
        nothingIsInvented(1, new double[] {0, 0.8}, told);
    }

    @Test
    void aSampleOfOverlappedLinesReadsAsItShould() {
        List<String> all = new ArrayList<>();
        List<String> outside = new ArrayList<>();
        for (int i = 0; i < SimulatedCompound.overlapped().size(); i += 4) {
            outside.addAll(outside(SimulatedCompound.overlapped().get(i), SILICA, 0, 0.1, all));
        }
        assertThat(outside).as("of %d lines", all.size()).isEmpty();
    }

    @Tag("slow")
    @Test
    void ninetyFiveInAHundredLinesOfOverlappedCompoundsAreWithinTenPercent() {
        List<String> all = new ArrayList<>();
        List<String> outside = new ArrayList<>();
        for (SimulatedSolid.Losses losses : List.of(SILICA, GAPPED, UNIVERSAL)) {
            for (double layer : new double[] {0, 0.8}) {
                for (SimulatedCompound c : SimulatedCompound.overlapped()) {
                    outside.addAll(outside(c, losses, layer, 0.1, all));
                }
            }
        }
        assertThat(outside).as("of %d lines", all.size()).hasSizeLessThanOrEqualTo(all.size() / 20);
    }
}
