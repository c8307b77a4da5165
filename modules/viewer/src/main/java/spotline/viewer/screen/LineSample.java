package spotline.viewer.screen;

import javafx.scene.shape.Line;
import javafx.scene.shape.StrokeLineCap;
import spotline.report.figure.CurveStyle;

/** A short piece of a curve, as the plot draws it. */
final class LineSample extends Line {
    private static final double LENGTH = 20;

    private final CurveStyle style;

    LineSample(CurveStyle style, Palette palette) {
        super(0, 0, LENGTH, 0);
        this.style = style;
        getStyleClass().add("line-sample");
        setStrokeLineCap(StrokeLineCap.BUTT);
        setStrokeWidth(Math.max(1.5, style.stroke().getLineWidth()));
        float[] dashes = style.stroke().getDashArray();
        if (dashes != null) for (float dash : dashes) getStrokeDashArray().add((double) dash);
        room(palette);
    }

    void room(Palette palette) {
        setStroke(palette.of(style));
    }
}
