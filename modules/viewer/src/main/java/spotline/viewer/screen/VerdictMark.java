package spotline.viewer.screen;

import javafx.scene.Node;
import javafx.scene.paint.Color;
import javafx.scene.shape.Circle;
import javafx.scene.shape.Polygon;
import javafx.scene.shape.SVGPath;
import javafx.scene.shape.StrokeLineCap;
import spotline.analysis.charge.ChargeVerdict;

/** The mark of a charge verdict: shape and colour say the same. */
final class VerdictMark {
    private VerdictMark() {}

    /** @param size full height, pixels */
    static Node of(ChargeVerdict verdict, double size, Palette palette) {
        Color color = palette.ofVerdict(verdict);
        double r = size / 2;
        return switch (verdict) {
            case ACCEPTED -> new Circle(r, r, r, color);
            case NOT_NEEDED -> {
                Circle ring = new Circle(r, r, r - 1, Color.TRANSPARENT);
                ring.setStroke(color);
                ring.setStrokeWidth(2);
                yield ring;
            }
            case DOUBTFUL ->
                new Polygon(r, 0, size, size, 0, size) {
                    {
                        setFill(color);
                    }
                };
            case FAILED -> {
                SVGPath cross = new SVGPath();
                cross.setContent(
                        String.format(java.util.Locale.ROOT, "M1 1 L%1$.1f %1$.1f M%1$.1f 1 L1 %1$.1f", size - 1));
                cross.setStroke(color);
                cross.setStrokeWidth(2.6);
                cross.setStrokeLineCap(StrokeLineCap.ROUND);
                yield cross;
            }
        };
    }
}
