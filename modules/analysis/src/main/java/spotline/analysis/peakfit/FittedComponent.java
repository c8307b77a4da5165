package spotline.analysis.peakfit;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import spotline.core.Estimate;

/**
 * A component of a fit, or the partner one brought.
 *
 * <p>Shape: the curve has one value a channel of the window, satellites included, the background not. Units: measured
 * binding energy and widths in eV, area in counts eV before transmission, satellites and partner not included.
 */
public final class FittedComponent {
    private final String name;
    private final String shape;
    private final Optional<String> partnerOf;
    private final Estimate position;
    private final double maximumEv;
    private final Estimate fwhm;
    private final Estimate area;
    private final Map<String, FittedParameter> parameters;
    private final double[] curve;

    FittedComponent(
            String name,
            String shape,
            Optional<String> partnerOf,
            Estimate position,
            double maximumEv,
            Estimate fwhm,
            Estimate area,
            Map<String, FittedParameter> parameters,
            double[] curve) {
        this.name = name;
        this.shape = shape;
        this.partnerOf = partnerOf;
        this.position = position;
        this.maximumEv = maximumEv;
        this.fwhm = fwhm;
        this.area = area;
        this.parameters = Collections.unmodifiableMap(new LinkedHashMap<>(parameters));
        this.curve = curve.clone();
    }

    public String name() {
        return name;
    }

    /** Name of the line shape in full, as in a fit model. */
    public String shape() {
        return shape;
    }

    /** The component that brought this one as the partner of its doublet. */
    public Optional<String> partnerOf() {
        return partnerOf;
    }

    /** The position parameter; where the shape is asymmetric the maximum lies elsewhere. */
    public Estimate position() {
        return position;
    }

    public double maximumEv() {
        return maximumEv;
    }

    /** Full width at half maximum of the whole peak. */
    public Estimate fwhm() {
        return fwhm;
    }

    public Estimate area() {
        return area;
    }

    /** By the names of the shape's parameters, in its order. */
    public Map<String, FittedParameter> parameters() {
        return parameters;
    }

    /** Errors: {@link IllegalArgumentException} when the shape has no such parameter. */
    public FittedParameter parameter(String parameter) {
        FittedParameter found = parameters.get(parameter);
        if (found == null) throw new IllegalArgumentException(shape + " has no parameter " + parameter);
        return found;
    }

    public double[] curve() {
        return curve.clone();
    }

    @Override
    public String toString() {
        return name + " at " + position + " eV, area " + area;
    }
}
