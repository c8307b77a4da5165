package spotline.holder;

/**
 * Widths of the analysis area at normal emission.
 *
 * @param x along the bar, mm
 * @param y across the bar, mm
 */
public record AreaMm(double x, double y) {
    public AreaMm {
        if (!(x > 0) || !(y > 0) || Double.isInfinite(x) || Double.isInfinite(y)) {
            throw new IllegalArgumentException("the analysis area must be above 0 mm, was " + x + " x " + y);
        }
    }
}
