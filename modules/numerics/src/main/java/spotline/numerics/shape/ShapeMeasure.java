package spotline.numerics.shape;

/** Maximum and width of any shape, found numerically; every shape here has one maximum and falls off to both sides. */
final class ShapeMeasure {
    private static final double GOLDEN = 0.5 * (Math.sqrt(5) - 1);

    private ShapeMeasure() {}

    /** One shape asked at one abscissa after another: a search asks often, so its arrays are kept. */
    private static final class Curve {
        final LineShape shape;
        final double[] p;
        private final double[] x = new double[1];
        private final double[] y = new double[1];
        private final ShapeScratch scratch = new ShapeScratch();

        Curve(LineShape shape, double[] p) {
            this.shape = shape;
            this.p = p;
        }

        double at(double abscissa) {
            x[0] = abscissa;
            shape.unitArea(x, p, 0, y, scratch);
            return p[LineShape.AREA] * y[0];
        }
    }

    static PeakMeasure of(LineShape shape, double[] p) {
        double[] unit = p.clone();
        unit[LineShape.AREA] = 1;
        Curve curve = new Curve(shape, unit);
        double at = maximum(curve);
        double height = curve.at(at);
        double low = half(curve, at, 0.5 * height, -1);
        double high = half(curve, at, 0.5 * height, 1);
        double area = p[LineShape.AREA];
        return new PeakMeasure(at, area * height, high - low, area, shape.areaLimits());
    }

    /** Of a shape that falls off alike to both sides of its position, where its maximum is: a fraction of the search. */
    static PeakMeasure ofSymmetric(LineShape shape, double[] p) {
        double[] unit = p.clone();
        unit[LineShape.AREA] = 1;
        unit[LineShape.POSITION] = 0;
        Curve curve = new Curve(shape, unit);
        double height = curve.at(0);
        double half = half(curve, 0, 0.5 * height, 1);
        double area = p[LineShape.AREA];
        return new PeakMeasure(p[LineShape.POSITION], area * height, 2 * half, area, shape.areaLimits());
    }

    static double[] withFwhm(LineShape shape, double[] p, double fwhm) {
        if (!(fwhm > 0) || !Double.isFinite(fwhm)) {
            throw new IllegalArgumentException("fwhm must be finite and above 0 eV, was " + fwhm);
        }
        double[] changed = p.clone();
        if (shape instanceof Template template) {
            changed[Template.BROADENING] = template.broadeningFor(p, fwhm);
            return changed;
        }
        double factor = fwhm / shape.fwhm(p);
        for (int k = 0; k < changed.length; k++) {
            if (k > LineShape.AREA && "eV".equals(shape.parameters().get(k).unit())) changed[k] *= factor;
        }
        return changed;
    }

    /** The scale on which the shape changes, to start a search with. */
    private static double scale(LineShape shape, double[] p) {
        double sum = 0;
        for (int k = 0; k < p.length; k++) {
            if (k > LineShape.AREA && "eV".equals(shape.parameters().get(k).unit())) sum += Math.abs(p[k]);
        }
        if (shape instanceof Template template) sum += template.span() / 16;
        return Math.max(sum, 1e-6);
    }

    private static double maximum(Curve curve) {
        double scale = scale(curve.shape, curve.p);
        double start = curve.p[LineShape.POSITION];
        double low = start - 2 * scale;
        double high = start + 2 * scale;
        if (curve.shape instanceof Template template) {
            low = start + template.lowest();
            high = start + template.highest();
        }
        int steps = 256;
        double best = start;
        double most = curve.at(start);
        for (int i = 0; i <= steps; i++) {
            double x = low + (high - low) * i / steps;
            double y = curve.at(x);
            if (y > most) {
                most = y;
                best = x;
            }
        }
        double step = (high - low) / steps;
        return golden(curve, best - step, best + step);
    }

    private static double golden(Curve curve, double from, double to) {
        double a = from;
        double b = to;
        double c = b - GOLDEN * (b - a);
        double d = a + GOLDEN * (b - a);
        double atC = curve.at(c);
        double atD = curve.at(d);
        for (int i = 0; i < 60; i++) {
            if (atC > atD) {
                b = d;
                d = c;
                atD = atC;
                c = b - GOLDEN * (b - a);
                atC = curve.at(c);
            } else {
                a = c;
                c = d;
                atC = atD;
                d = a + GOLDEN * (b - a);
                atD = curve.at(d);
            }
        }
        double middle = 0.5 * (a + b);
        double centre = curve.p[LineShape.POSITION];
        // a flat top hides the maximum from comparisons below 1e-8; the centre of a symmetric shape is exact
        return curve.at(centre) >= curve.at(middle) ? centre : middle;
    }

    private static double half(Curve curve, double at, double level, int side) {
        double step = 0.25 * scale(curve.shape, curve.p);
        double near = at;
        double far = at + side * step;
        for (int i = 0; i < 200 && curve.at(far) > level; i++) {
            near = far;
            step *= 1.3;
            far += side * step;
        }
        for (int i = 0; i < 200; i++) {
            double middle = 0.5 * (near + far);
            if (middle == near || middle == far) break;
            if (curve.at(middle) > level) near = middle;
            else far = middle;
        }
        return 0.5 * (near + far);
    }
}
