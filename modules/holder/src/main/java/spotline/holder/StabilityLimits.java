package spotline.holder;

import static java.util.Objects.requireNonNull;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Temperatures between which a sample is declared stable.
 *
 * @param minC lowest, degrees Celsius
 * @param maxC highest, degrees Celsius: decomposition, melting, a change of phase, or too high a vapour pressure
 * @param basis what happens beyond, and who says so
 */
public record StabilityLimits(OptionalDouble minC, OptionalDouble maxC, Optional<String> basis) {
    public static final StabilityLimits UNKNOWN =
            new StabilityLimits(OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty());

    public StabilityLimits {
        requireNonNull(basis, "basis");
        if (minC.isPresent() && maxC.isPresent() && !(minC.getAsDouble() <= maxC.getAsDouble())) {
            throw new IllegalArgumentException("the lowest temperature must not lie above the highest, were "
                    + minC.getAsDouble() + " and " + maxC.getAsDouble() + " C");
        }
    }
}
