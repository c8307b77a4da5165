package spotline.analysis.background;

import java.util.List;

/**
 * A background that is fitted along with the peaks: a curve of its own parameters and of the sum of the peaks above it.
 *
 * <p>Shape: n channels of rising binding energy. Units: those of the peaks (counts for counts). For given parameters the
 * curve is a fixed part plus a linear function of the peaks, so a fit needs two derivatives: {@link #slope} for the
 * background's own parameters, {@link #response} for every parameter of a peak.
 */
public interface FittedBackground {
    /** Names with units, in the order of the parameter array. */
    List<String> parameters();

    /** First guess from the data, n counts in. */
    double[] start(double[] counts);

    /** The background under these peaks. */
    double[] curve(double[] parameters, double[] peaks);

    /** Derivative of the curve with respect to one parameter. */
    double[] slope(int parameter, double[] parameters, double[] peaks);

    /** Change of the curve for a change of the peaks. */
    double[] response(double[] parameters, double[] peakChange);
}
