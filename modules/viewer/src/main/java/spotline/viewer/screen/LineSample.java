package spotline.viewer.screen;

import javafx.scene.shape.Line;
import javafx.scene.shape.StrokeLineCap;
import spotline.report.figure.CurveStyle;

/** A short piece of a curve, as the plot draws it. */
final class LineSample {
    private static final double LENGTH = 20;

    private LineSample() {}

    static Line of(CurveStyle style) {
        Line line = new Line(0, 0, LENGTH, 0);
        line.setStrokeLineCap(StrokeLineCap.BUTT);
        line.setStrokeWidth(Math.max(1.5, style.stroke().getLineWidth()));
        // The measured curve has the colour of the text, in a light and in a dark room.
        line.setStyle("-fx-stroke: " + (style == CurveStyle.MEASURED ? "-ink" : style.hex()) + ";");
        float[] dashes = style.stroke().getDashArray();
        if (dashes != null) for (float dash : dashes) line.getStrokeDashArray().add((double) dash);
        return line;
    }
}
