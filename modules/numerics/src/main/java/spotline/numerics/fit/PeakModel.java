package spotline.numerics.fit;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import spotline.numerics.shape.LineShape;
import spotline.numerics.shape.ShapeParameter;
import spotline.numerics.shape.ShapeScratch;

/**
 * A sum of line shapes, a polynomial background, further curves of fitted amplitude and a curve that stays as it is.
 *
 * <p>Shape: parameters of the components in their order, named {@code component.parameter}; then
 * {@code background.0}, {@code background.1} ... for the powers of (x - origin); then {@code amplitude.NAME} for each
 * further curve. Units: x in eV, ordinate as the data, areas ordinate times eV, power k of the background ordinate per
 * eV^k.
 */
public final class PeakModel implements ModelFunction {
    /** One line shape under its name. */
    public record Component(String name, LineShape shape) {
        public Component {
            requireNonNull(shape, "shape");
            if (name.isBlank()) throw new IllegalArgumentException("a component needs a name");
        }

        public String parameter(String name) {
            return this.name + "." + name;
        }
    }

    private record Curve(String name, double[] values) {}

    private final double[] x;
    private final List<Component> components;
    private final int degree;
    private final double origin;
    private final List<Curve> curves;
    private final double[] additive;
    private final double[][] powers; // of (x - origin)
    private final List<String> names;

    private PeakModel(
            double[] x, List<Component> components, int degree, double origin, List<Curve> curves, double[] additive) {
        this.x = x;
        this.components = List.copyOf(components);
        this.degree = degree;
        this.origin = origin;
        this.curves = List.copyOf(curves);
        this.additive = additive;
        names = names(components, degree, curves);
        powers = new double[degree + 1][x.length];
        for (int k = 0; k <= degree; k++) {
            for (int i = 0; i < x.length; i++) powers[k][i] = k == 0 ? 1 : powers[k - 1][i] * (x[i] - origin);
        }
    }

    /** A model of nothing yet on these abscissae. */
    public static PeakModel on(double[] x) {
        if (x.length == 0) throw new IllegalArgumentException("a model needs points");
        for (double value : x) {
            if (!Double.isFinite(value)) throw new IllegalArgumentException("an abscissa is not finite");
        }
        return new PeakModel(x.clone(), List.of(), -1, 0, List.of(), new double[0]);
    }

    public PeakModel plus(String name, LineShape shape) {
        List<Component> more = new ArrayList<>(components);
        more.add(new Component(name, shape));
        return new PeakModel(x, more, degree, origin, curves, additive);
    }

    /**
     * @param newDegree of the polynomial, 0 for a constant, 1 for a line, -1 for none
     * @param newOrigin where its powers are reckoned from, eV; best the middle of the window
     */
    public PeakModel polynomialBackground(int newDegree, double newOrigin) {
        if (newDegree < -1 || newDegree > 8) {
            throw new IllegalArgumentException("degree must be -1 to 8, was " + newDegree);
        }
        return new PeakModel(x, components, newDegree, newOrigin, curves, additive);
    }

    /** A curve whose amplitude is a parameter. */
    public PeakModel plusFitted(String name, double[] curve) {
        List<Curve> more = new ArrayList<>(curves);
        more.add(new Curve(requireNonNull(name, "name"), sameLength(curve)));
        return new PeakModel(x, components, degree, origin, more, additive);
    }

    /** A curve added as it is; replaces one set before. */
    public PeakModel plusFixed(double[] curve) {
        return new PeakModel(x, components, degree, origin, curves, sameLength(curve));
    }

    private double[] sameLength(double[] curve) {
        if (curve.length != x.length) {
            throw new IllegalArgumentException("the model has " + x.length + " points, the curve " + curve.length);
        }
        return curve.clone();
    }

    private static List<String> names(List<Component> components, int degree, List<Curve> curves) {
        List<String> names = new ArrayList<>();
        for (Component component : components) {
            for (String name : component.shape().parameterNames()) names.add(component.parameter(name));
        }
        for (int k = 0; k <= degree; k++) names.add("background." + k);
        for (Curve curve : curves) names.add("amplitude." + curve.name());
        return List.copyOf(names);
    }

    public List<Component> components() {
        return components;
    }

    public List<String> parameterNames() {
        return names;
    }

    /** Parameters with these starts and the bounds that the shapes themselves have; areas and background are unbounded. */
    public List<Parameter> parameters(double... starts) {
        if (starts.length != names.size()) {
            throw new IllegalArgumentException(
                    "the model has " + names.size() + " parameters, given were " + starts.length);
        }
        List<Parameter> parameters = new ArrayList<>();
        for (Component component : components) {
            for (ShapeParameter p : component.shape().parameters()) {
                int k = parameters.size();
                parameters.add(Parameter.bounded(names.get(k), starts[k], p.lowest(), p.highest()));
            }
        }
        while (parameters.size() < starts.length) {
            int k = parameters.size();
            parameters.add(Parameter.free(names.get(k), starts[k]));
        }
        return parameters;
    }

    public double[] abscissae() {
        return x.clone();
    }

    @Override
    public int pointCount() {
        return x.length;
    }

    @Override
    public int parameterCount() {
        return names.size();
    }

    @Override
    public boolean linear(int parameter) {
        int k = parameter;
        for (Component component : components) {
            int count = component.shape().parameterCount();
            if (k < count) return k == LineShape.AREA;
            k -= count;
        }
        return true;
    }

    /** The curve of one component alone, for all model parameters {@code p}. */
    public double[] component(int number, double[] p) {
        double[] out = new double[x.length];
        int at = 0;
        for (int c = 0; c < number; c++) at += components.get(c).shape().parameterCount();
        LineShape shape = components.get(number).shape();
        shape.unitArea(x, p, at, out, new ShapeScratch());
        for (int i = 0; i < out.length; i++) out[i] *= p[at + LineShape.AREA];
        return out;
    }

    /** The polynomial, the fitted curves and the fixed curve together, for all model parameters {@code p}. */
    public double[] background(double[] p) {
        double[] out = new double[x.length];
        int at = 0;
        for (Component component : components) at += component.shape().parameterCount();
        addBackground(p, at, out);
        return out;
    }

    private void addBackground(double[] p, int at, double[] out) {
        for (int i = 0; i < additive.length; i++) out[i] += additive[i];
        for (int k = 0; k <= degree; k++) addProduct(out, p[at + k], powers[k]);
        int curve = at + degree + 1;
        for (Curve more : curves) addProduct(out, p[curve++], more.values());
    }

    private static void addProduct(double[] out, double factor, double[] curve) {
        for (int i = 0; i < out.length; i++) out[i] += factor * curve[i];
    }

    @Override
    public Evaluator evaluator() {
        return new PeakEvaluator();
    }

    private final class PeakEvaluator implements Evaluator {
        private final ShapeScratch scratch = new ShapeScratch();
        private final double[] unit = new double[x.length];

        @Override
        public void values(double[] p, double[] values) {
            Arrays.fill(values, 0);
            int at = 0;
            for (Component component : components) {
                component.shape().unitArea(x, p, at, unit, scratch);
                double area = p[at + LineShape.AREA];
                addProduct(values, area, unit);
                at += component.shape().parameterCount();
            }
            addBackground(p, at, values);
        }

        @Override
        public boolean derivatives(double[] p, double[] values, double[][] rows) {
            Arrays.fill(values, 0);
            int at = 0;
            for (Component component : components) {
                component.shape().derivatives(x, p, at, rows, at, scratch);
                double area = p[at + LineShape.AREA];
                double[] shape = rows[at + LineShape.AREA];
                addProduct(values, area, shape);
                at += component.shape().parameterCount();
            }
            addBackground(p, at, values);
            for (int k = 0; k <= degree; k++) System.arraycopy(powers[k], 0, rows[at + k], 0, x.length);
            int curve = at + degree + 1;
            for (Curve more : curves) System.arraycopy(more.values(), 0, rows[curve++], 0, x.length);
            return true;
        }
    }
}
