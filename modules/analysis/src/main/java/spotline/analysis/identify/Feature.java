package spotline.analysis.identify;

import java.util.List;

/**
 * A feature of a survey that no element in the model explains.
 *
 * @param explanations the nearest ones, for a person: ghost, satellite, loss, shake-up, Auger group, mount; may be empty
 */
public record Feature(SurveyPeak peak, List<String> explanations) {
    public Feature {
        explanations = List.copyOf(explanations);
    }
}
