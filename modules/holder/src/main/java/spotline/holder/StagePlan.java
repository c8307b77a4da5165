package spotline.holder;

import static java.util.Objects.requireNonNull;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the stage will be set to while the holder is in.
 *
 * @param biasV potential put on the samples, V
 * @param turnsPerMinute rotation of the stage
 */
public record StagePlan(List<SetPoint> setPoints, OptionalDouble biasV, OptionalDouble turnsPerMinute) {
    public static final StagePlan NONE = new StagePlan(List.of(), OptionalDouble.empty(), OptionalDouble.empty());

    public StagePlan {
        setPoints = List.copyOf(setPoints);
    }

    /**
     * One temperature of the stage.
     *
     * @param name of the step
     * @param temperatureC degrees Celsius
     * @param rampCPerMinute on the way there, degrees Celsius a minute
     * @param holdMinutes minutes
     */
    public record SetPoint(
            Optional<String> name, double temperatureC, OptionalDouble rampCPerMinute, OptionalDouble holdMinutes) {
        public SetPoint {
            requireNonNull(name, "name");
            if (!Double.isFinite(temperatureC)) {
                throw new IllegalArgumentException("a set-point must be finite, was " + temperatureC + " C");
            }
        }
    }
}
