package spotline.run;

import java.util.OptionalDouble;

/**
 * What is done to counts before anything else; nothing by default.
 *
 * @param sumScans whether repeated scans of one line are summed
 * @param deadTimeSeconds of the pulse counting, s; empty for no correction
 * @param removeSpikes whether single channels far above their neighbours are replaced
 * @param spikeSignificance how far above, in standard deviations
 */
public record PreparationSettings(
        boolean sumScans, OptionalDouble deadTimeSeconds, boolean removeSpikes, double spikeSignificance) {
    public PreparationSettings {
        if (deadTimeSeconds.isPresent()
                && !(deadTimeSeconds.getAsDouble() > 0 && deadTimeSeconds.getAsDouble() < 1e-3)) {
            throw new IllegalArgumentException(
                    "deadTimeSeconds: " + deadTimeSeconds.getAsDouble() + " s, expected above 0 and below 0.001 s");
        }
        if (!(spikeSignificance >= 5)) {
            throw new IllegalArgumentException("spikeSignificance: " + spikeSignificance + ", expected 5 or more");
        }
    }
}
