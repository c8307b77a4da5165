package spotline.report.print;

import java.awt.geom.AffineTransform;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;

/**
 * Draws an SVG of our own figures into a PDF: paths stay paths and text stays text.
 *
 * <p>It knows what our figures are made of (nested drawings, groups, paths, lines, rectangles, text, clips), not all of SVG;
 * an element it does not know is an error, so that no part of a figure is lost in silence.
 *
 * <p>Source: W3C, Scalable Vector Graphics 1.1; ISO 32000-1, 8.
 */
final class SvgDrawing {
    private final PdfOperators out;
    private final Typeface typeface;
    private final Map<String, String> clips = new HashMap<>();
    /** Figures draw thousands of parts in a dozen styles. */
    private final Map<String, SvgStyle> styles = new HashMap<>();

    private String clipId = "";

    SvgDrawing(PdfOperators out, Typeface typeface) {
        this.out = out;
        this.typeface = typeface;
    }

    /** Draws with the upper left corner at the origin; the drawing reaches {@code height} downwards. Units: points. */
    void draw(String svg, double width, double height) throws IOException {
        Tags in = new Tags(svg);
        boolean outermost = true;
        SvgStyle inherited = SvgStyle.DEFAULT;
        Deque<SvgStyle> outer = new ArrayDeque<>();
        for (Tags.Kind kind = in.next(); kind != Tags.Kind.DONE; kind = in.next()) {
            if (kind == Tags.Kind.TEXT) continue;
            boolean group = in.name().equals("svg") || in.name().equals("g");
            if (kind == Tags.Kind.END) {
                if (!group) continue;
                out.end("Q");
                inherited = outer.pop();
            } else if (group) {
                outer.push(inherited);
                inherited = inherited.of(in);
                out.end("q");
                place(in, outermost, width, height);
                outermost = false;
            } else {
                element(in, inherited);
            }
        }
    }

    private void place(Tags in, boolean outermost, double width, double height) throws IOException {
        AffineTransform place = SvgStyle.transform(in.attribute("transform"));
        if (in.name().equals("svg")) {
            String[] box = in.attribute("viewBox").split("[ ,]+");
            double boxWidth = Double.parseDouble(box[2]);
            double boxHeight = Double.parseDouble(box[3]);
            if (outermost) {
                // From here on y runs down, as in the drawing.
                place.scale(width / boxWidth, -height / boxHeight);
            } else {
                place.translate(SvgStyle.number(in, "x", 0), SvgStyle.number(in, "y", 0));
                place.scale(
                        SvgStyle.number(in, "width", boxWidth) / boxWidth,
                        SvgStyle.number(in, "height", boxHeight) / boxHeight);
            }
            place.translate(-Double.parseDouble(box[0]), -Double.parseDouble(box[1]));
        }
        transform(place);
    }

    private void element(Tags in, SvgStyle inherited) throws IOException {
        switch (in.name()) {
            case "defs" -> {}
            case "title", "desc" -> in.next();
            case "clipPath" -> clipId = in.attribute("id");
            case "path" -> {
                String data = in.attribute("d");
                if (clipId.isEmpty()) shape(in, inherited, data);
                else clips.put(clipId, data);
                clipId = "";
            }
            case "line" ->
                shape(
                        in,
                        inherited,
                        "M" + in.attribute("x1") + "," + in.attribute("y1") + "L" + in.attribute("x2") + ","
                                + in.attribute("y2"));
            case "rect" -> shape(in, inherited, rectangle(in));
            case "ellipse" ->
                shape(in, inherited, ellipse(number(in, "cx"), number(in, "cy"), number(in, "rx"), number(in, "ry")));
            case "circle" ->
                shape(in, inherited, ellipse(number(in, "cx"), number(in, "cy"), number(in, "r"), number(in, "r")));
            case "text" -> text(in, inherited);
            default -> throw new IllegalStateException("a figure holds <" + in.name() + ">");
        }
    }

    private void transform(AffineTransform by) {
        if (by.isIdentity()) return;
        double[] parts = new double[6];
        by.getMatrix(parts);
        for (double part : parts) out.add(part);
        out.end("cm");
    }

    private static String rectangle(Tags in) {
        double x = SvgStyle.number(in, "x", 0);
        double y = SvgStyle.number(in, "y", 0);
        String width = in.attribute("width");
        // A rectangle over the whole is the paper.
        if (width.endsWith("%")) return "";
        double right = x + Double.parseDouble(width);
        double bottom = y + SvgStyle.number(in, "height", 0);
        return "M" + x + "," + y + "L" + right + "," + y + "L" + right + "," + bottom + "L" + x + "," + bottom + "Z";
    }

    private static double number(Tags in, String name) {
        return SvgStyle.number(in, name, 0);
    }

    /** Four cubic curves, off by less than three in ten thousand of the radius. Source: common practice, no source. */
    private static String ellipse(double cx, double cy, double rx, double ry) {
        double kx = 0.5523 * rx;
        double ky = 0.5523 * ry;
        return "M" + n(cx + rx) + "," + n(cy)
                + curve(cx + rx, cy + ky, cx + kx, cy + ry, cx, cy + ry)
                + curve(cx - kx, cy + ry, cx - rx, cy + ky, cx - rx, cy)
                + curve(cx - rx, cy - ky, cx - kx, cy - ry, cx, cy - ry)
                + curve(cx + kx, cy - ry, cx + rx, cy - ky, cx + rx, cy) + "Z";
    }

    private static String curve(double ax, double ay, double bx, double by, double x, double y) {
        return "C" + n(ax) + "," + n(ay) + "," + n(bx) + "," + n(by) + "," + n(x) + "," + n(y);
    }

    private static String n(double value) {
        return spotline.core.Decimal.fixed(value, 4);
    }

    private void shape(Tags in, SvgStyle inherited, String data) throws IOException {
        SvgStyle style = style(in, inherited);
        if (data.isEmpty() || !(style.fills() || style.strokes())) return;
        out.end("q");
        enter(in);
        style.apply(out);
        SvgPath.add(out, data);
        out.end(style.fills() && style.strokes() ? "B" : style.fills() ? "f" : "S");
        out.end("Q");
    }

    /** The element's own transform, then its clip: a clip is in the coordinates of what it cuts. */
    private void enter(Tags in) throws IOException {
        AffineTransform own = SvgStyle.transform(in.attribute("transform"));
        transform(own);
        String clip = in.attribute("clip-path");
        if (clip.startsWith("url(#")) {
            SvgPath.add(out, Objects.requireNonNull(clips.get(clip.substring(5, clip.length() - 1)), clip));
            out.end("W n");
        }
    }

    private SvgStyle style(Tags in, SvgStyle inherited) {
        String own = in.attribute("style");
        if (own.isEmpty() || !inherited.equals(SvgStyle.DEFAULT)) return inherited.of(in);
        return styles.computeIfAbsent(own, key -> inherited.of(in));
    }

    private void text(Tags in, SvgStyle inherited) throws IOException {
        SvgStyle style = style(in, inherited);
        double x = SvgStyle.number(in, "x", 0);
        double y = SvgStyle.number(in, "y", 0);
        out.end("q");
        enter(in);
        Weight weight = style.bold() ? Weight.BOLD : Weight.REGULAR;
        String shown = in.next() == Tags.Kind.TEXT ? typeface.shown(in.text(), weight) : "";
        style.apply(out);
        if (!shown.isBlank()) out.text(weight, style.fontSize(), new double[] {1, 0, 0, -1, x, y}, shown);
        out.end("Q");
    }
}
