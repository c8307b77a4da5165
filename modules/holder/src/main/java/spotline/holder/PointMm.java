package spotline.holder;

/**
 * A position on the holder, mm from the lower left corner of its outline as seen from the analyser.
 *
 * @param x along the bar, mm
 * @param y across the bar, mm
 */
public record PointMm(double x, double y) {
    public PointMm {
        if (!Double.isFinite(x) || !Double.isFinite(y)) {
            throw new IllegalArgumentException("a position must be finite, was " + x + ", " + y + " mm");
        }
    }
}
