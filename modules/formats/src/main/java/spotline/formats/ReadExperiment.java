package spotline.formats;

import static java.util.Objects.requireNonNull;

import java.util.List;
import spotline.core.Finding;
import spotline.formats.iso14976.Experiment;

/**
 * A file as an experiment of ISO 14976.
 *
 * @param warnings what could be lived with, each with its line in the message
 */
public record ReadExperiment(Experiment experiment, List<Finding> warnings) {
    public ReadExperiment {
        requireNonNull(experiment, "experiment");
        warnings = List.copyOf(warnings);
    }
}
