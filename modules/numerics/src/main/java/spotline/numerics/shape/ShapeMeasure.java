package spotline.numerics.shape;

/** Maximum and width of any shape, found numerically; every shape here has one maximum and falls off to both sides. */
final class ShapeMeasure {
    private static final double GOLDEN = 0.5 * (Math.sqrt(5) - 1);

    private ShapeMeasure() {}

    static PeakMeasure of(LineShape shape, double[] p) {
        double[] unit = p.clone();
        unit[LineShape.AREA] = 1;
        double at = maximum(shape, unit);
        double height = shape.value(at, unit);
        double low = half(shape, unit, at, 0.5 * height, -1);
        double high = half(shape, unit, at, 0.5 * height, 1);
        double area = p[LineShape.AREA];
        return new PeakMeasure(at, area * height, high - low, area, shape.areaLimits());
    }

    /** Of a shape that falls off alike to both sides of its position, where its maximum is: a fraction of the search. */
    static PeakMeasure ofSymmetric(LineShape shape, double[] p) {
        double[] unit = p.clone();
        unit[LineShape.AREA] = 1;
        unit[LineShape.POSITION] = 0;
        double height = shape.value(0, unit);
        double half = half(shape, unit, 0, 0.5 * height, 1);
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

    private static double maximum(LineShape shape, double[] p) {
        double scale = scale(shape, p);
        double start = p[LineShape.POSITION];
        double low = start - 2 * scale;
        double high = start + 2 * scale;
        if (shape instanceof Template template) {
            low = start + template.lowest();
            high = start + template.highest();
        }
        int steps = 256;
        double best = start;
        double most = shape.value(start, p);
        for (int i = 0; i <= steps; i++) {
            double x = low + (high - low) * i / steps;
            double y = shape.value(x, p);
            if (y > most) {
                most = y;
                best = x;
            }
        }
        double step = (high - low) / steps;
        return golden(shape, p, best - step, best + step);
    }

    private static double golden(LineShape shape, double[] p, double from, double to) {
        double a = from;
        double b = to;
        double c = b - GOLDEN * (b - a);
        double d = a + GOLDEN * (b - a);
        double atC = shape.value(c, p);
        double atD = shape.value(d, p);
        for (int i = 0; i < 60; i++) {
            if (atC > atD) {
                b = d;
                d = c;
                atD = atC;
                c = b - GOLDEN * (b - a);
                atC = shape.value(c, p);
            } else {
                a = c;
                c = d;
                atC = atD;
                d = a + GOLDEN * (b - a);
                atD = shape.value(d, p);
            }
        }
        double middle = 0.5 * (a + b);
        double centre = p[LineShape.POSITION];
        // a flat top hides the maximum from comparisons below 1e-8; the centre of a symmetric shape is exact
        return shape.value(centre, p) >= shape.value(middle, p) ? centre : middle;
    }

    private static double half(LineShape shape, double[] p, double at, double level, int side) {
        double step = 0.25 * scale(shape, p);
        double near = at;
        double far = at + side * step;
        for (int i = 0; i < 200 && shape.value(far, p) > level; i++) {
            near = far;
            step *= 1.3;
            far += side * step;
        }
        for (int i = 0; i < 200; i++) {
            double middle = 0.5 * (near + far);
            if (middle == near || middle == far) break;
            if (shape.value(middle, p) > level) near = middle;
            else far = middle;
        }
        return 0.5 * (near + far);
    }
}
