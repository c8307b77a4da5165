package spotline.analysis.peakfit;

import static java.util.Objects.requireNonNull;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import spotline.numerics.shape.LineShape;

/**
 * One component peak of a fit model.
 *
 * @param parameters rules by the names of the shape's parameters; one that is not named is free within what the shape
 *     allows (an area from 0 up) and starts from the data
 * @param doublet the partner it brings
 */
public record ComponentModel(
        String name, LineShape shape, Map<String, ParameterRule> parameters, Optional<DoubletRule> doublet) {
    public ComponentModel {
        requireNonNull(name, "name");
        requireNonNull(shape, "shape");
        parameters = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(parameters));
        requireNonNull(doublet, "doublet");
    }

    public static ComponentModel of(String name, LineShape shape) {
        return new ComponentModel(name, shape, Map.of(), Optional.empty());
    }

    public ComponentModel with(String parameter, ParameterRule rule) {
        Map<String, ParameterRule> more = new LinkedHashMap<>(parameters);
        more.put(parameter, rule);
        return new ComponentModel(name, shape, more, doublet);
    }

    public ComponentModel with(DoubletRule partner) {
        return new ComponentModel(name, shape, parameters, Optional.of(partner));
    }
}
