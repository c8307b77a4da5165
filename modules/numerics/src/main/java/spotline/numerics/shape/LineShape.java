package spotline.numerics.shape;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A line shape by area.
 *
 * <p>Shape: parameters in the order of {@link #parameters()}, the position first, the area second; the abscissa is a
 * binding energy, so that an asymmetric tail goes towards larger values. Units: positions and widths in eV, the area in
 * ordinate times eV. Errors: none for parameters within their limits; widths of 0 are taken as the limit of narrow ones.
 */
public sealed interface LineShape
        permits Gaussian,
                Lorentzian,
                GaussianLorentzianSum,
                GaussianLorentzianProduct,
                Voigt,
                DoniachSunjic,
                VoigtExponentialTail,
                Template {
    int POSITION = 0;
    int AREA = 1;

    /**
     * The shape of this name, as in a fit model, with area limits of 20 eV to both sides where its integral diverges; empty for
     * an unknown name, and for {@code template}, which needs its samples.
     */
    static Optional<LineShape> named(String name) {
        List<LineShape> all = List.of(
                new Gaussian(),
                new Lorentzian(),
                new GaussianLorentzianSum(),
                new GaussianLorentzianProduct(),
                new Voigt(),
                new DoniachSunjic(),
                new VoigtExponentialTail());
        for (LineShape shape : all) {
            if (shape.name().equals(name)) return Optional.of(shape);
        }
        return Optional.empty();
    }

    /** As in a fit model: lower-case words joined by hyphens. */
    String name();

    List<ShapeParameter> parameters();

    /** Present where the integral diverges: the interval that the area parameter is taken over. */
    default Optional<AreaLimits> areaLimits() {
        return Optional.empty();
    }

    /**
     * Partial derivatives at all abscissae in one pass. The derivative with respect to the area is the shape of unit
     * area, so that the value is {@code p[at + AREA] * rows[row + AREA][i]}.
     *
     * @param p holds the parameters from index {@code at}
     * @param rows receives one row a parameter from index {@code row}, each as long as {@code x} at least
     */
    void derivatives(double[] x, double[] p, int at, double[][] rows, int row, ShapeScratch scratch);

    /** The shape of unit area at all abscissae. */
    void unitArea(double[] x, double[] p, int at, double[] out, ShapeScratch scratch);

    default int parameterCount() {
        return parameters().size();
    }

    default List<String> parameterNames() {
        List<String> names = new ArrayList<>();
        for (ShapeParameter parameter : parameters()) names.add(parameter.name());
        return List.copyOf(names);
    }

    /** Values at all abscissae. */
    default void evaluate(double[] x, double[] p, double[] out) {
        unitArea(x, p, 0, out, new ShapeScratch());
        for (int i = 0; i < x.length; i++) out[i] *= p[AREA];
    }

    /** Values and partial derivatives, {@code derivatives[k][i]} by parameter k at abscissa i. */
    default void evaluate(double[] x, double[] p, double[] out, double[][] derivatives) {
        derivatives(x, p, 0, derivatives, 0, new ShapeScratch());
        for (int i = 0; i < x.length; i++) out[i] = p[AREA] * derivatives[AREA][i];
    }

    default double value(double x, double... p) {
        double[] out = new double[1];
        evaluate(new double[] {x}, p, out);
        return out[0];
    }

    /** Maximum, height, full width at half maximum and area together. */
    default PeakMeasure measure(double... p) {
        return ShapeMeasure.of(this, p);
    }

    /** Ordinate of the maximum (of the minimum, where the area is negative). */
    default double height(double... p) {
        return measure(p).height();
    }

    default double fwhm(double... p) {
        return measure(p).fwhm();
    }

    /** The same parameters with the area that gives this height. */
    default double[] withHeight(double[] p, double height) {
        double[] changed = p.clone();
        changed[AREA] = 1;
        changed[AREA] = height / height(changed);
        return changed;
    }

    /**
     * The same parameters with all widths scaled by one factor, so that the whole shape has this full width at half
     * maximum. Errors: {@link IllegalArgumentException} when no such factor exists.
     */
    default double[] withFwhm(double[] p, double fwhm) {
        return ShapeMeasure.withFwhm(this, p, fwhm);
    }
}
