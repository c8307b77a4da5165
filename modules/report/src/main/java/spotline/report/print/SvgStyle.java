package spotline.report.print;

import java.awt.geom.AffineTransform;
import java.util.Locale;
import java.util.Map;

/**
 * How an element of a drawing looks. Source: W3C, Scalable Vector Graphics 1.1, 11.
 *
 * @param fill {@code none}, {@code #rrggbb} or {@code rgb(r,g,b)}
 * @param stroke likewise
 */
record SvgStyle(
        String fill,
        double fillOpacity,
        String stroke,
        double strokeOpacity,
        double strokeWidth,
        String dashes,
        double fontSize,
        boolean bold) {
    static final SvgStyle DEFAULT = new SvgStyle("#000000", 1, "none", 1, 1, "none", 10, false);

    /** The style of an element inside this one. */
    SvgStyle of(Tags in) {
        SvgStyle style = this;
        for (Map.Entry<String, String> attribute : in.attributes().entrySet()) {
            if (!attribute.getKey().equals("style")) style = style.with(attribute.getKey(), attribute.getValue());
        }
        // A style of its own goes before attributes.
        String own = in.attribute("style");
        int at = 0;
        while (at < own.length()) {
            int end = own.indexOf(';', at);
            if (end < 0) end = own.length();
            int colon = own.indexOf(':', at);
            if (colon > 0 && colon < end) {
                style = style.with(
                        own.substring(at, colon).strip(),
                        own.substring(colon + 1, end).strip());
            }
            at = end + 1;
        }
        return style;
    }

    private SvgStyle with(String name, String value) {
        return switch (name) {
            case "fill" -> new SvgStyle(value, fillOpacity, stroke, strokeOpacity, strokeWidth, dashes, fontSize, bold);
            case "fill-opacity" ->
                new SvgStyle(fill, number(value), stroke, strokeOpacity, strokeWidth, dashes, fontSize, bold);
            case "stroke" -> new SvgStyle(fill, fillOpacity, value, strokeOpacity, strokeWidth, dashes, fontSize, bold);
            case "stroke-opacity" ->
                new SvgStyle(fill, fillOpacity, stroke, number(value), strokeWidth, dashes, fontSize, bold);
            case "stroke-width" ->
                new SvgStyle(fill, fillOpacity, stroke, strokeOpacity, number(value), dashes, fontSize, bold);
            case "stroke-dasharray" ->
                new SvgStyle(fill, fillOpacity, stroke, strokeOpacity, strokeWidth, value, fontSize, bold);
            case "font-size" ->
                new SvgStyle(fill, fillOpacity, stroke, strokeOpacity, strokeWidth, dashes, number(value), bold);
            case "font-weight" ->
                new SvgStyle(
                        fill, fillOpacity, stroke, strokeOpacity, strokeWidth, dashes, fontSize, value.equals("bold"));
            default -> this;
        };
    }

    boolean fills() {
        return !fill.equals("none") && fillOpacity > 0;
    }

    boolean strokes() {
        return !stroke.equals("none") && strokeOpacity > 0 && strokeWidth > 0;
    }

    void apply(PdfOperators out) {
        if (fills()) {
            double[] rgb = rgb(fill);
            out.fill(rgb[0], rgb[1], rgb[2]);
        }
        if (strokes()) {
            double[] rgb = rgb(stroke);
            out.stroke(rgb[0], rgb[1], rgb[2]);
            out.add(strokeWidth).end("w 1 j");
            if (!dashes.equals("none") && !dashes.isEmpty()) {
                out.add("[").add(dashes.replace(',', ' ')).add("] 0").end("d");
            }
        }
        if (fillOpacity < 1 || strokeOpacity < 1) out.opacity(fillOpacity, strokeOpacity);
    }

    private static double[] rgb(String colour) {
        if (colour.startsWith("#")) {
            int all = Integer.parseInt(colour.substring(1), 16);
            return new double[] {(all >> 16 & 255) / 255.0, (all >> 8 & 255) / 255.0, (all & 255) / 255.0};
        }
        if (!colour.startsWith("rgb(")) {
            return colour.toLowerCase(Locale.ROOT).equals("white") ? new double[] {1, 1, 1} : new double[] {0, 0, 0};
        }
        String[] parts = colour.substring(4, colour.length() - 1).split(",", -1);
        double[] rgb = new double[3];
        for (int i = 0; i < 3; i++) rgb[i] = Double.parseDouble(parts[i].strip()) / 255;
        return rgb;
    }

    private static double number(String text) {
        return Double.parseDouble(text.endsWith("px") ? text.substring(0, text.length() - 2) : text);
    }

    static double number(Tags in, String name, double otherwise) {
        String text = in.attribute(name);
        return text.isEmpty() ? otherwise : number(text);
    }

    /** {@code matrix}, {@code translate}, {@code rotate} and {@code scale}, one after another. */
    static AffineTransform transform(String text) {
        AffineTransform whole = new AffineTransform();
        int at = 0;
        while (at < text.length()) {
            int open = text.indexOf('(', at);
            if (open < 0) break;
            int close = text.indexOf(')', open);
            String[] parts = text.substring(open + 1, close).strip().split("[ ,]+");
            double[] v = new double[6];
            for (int i = 0; i < parts.length; i++) v[i] = Double.parseDouble(parts[i]);
            switch (text.substring(at, open).replace(",", "").strip()) {
                case "matrix" -> whole.concatenate(new AffineTransform(v));
                case "translate" -> whole.translate(v[0], v[1]);
                case "scale" -> whole.scale(v[0], parts.length > 1 ? v[1] : v[0]);
                case "rotate" -> {
                    if (parts.length > 1) whole.rotate(Math.toRadians(v[0]), v[1], v[2]);
                    else whole.rotate(Math.toRadians(v[0]));
                }
                default -> throw new IllegalStateException("a figure holds the transform " + text);
            }
            at = close + 1;
        }
        return whole;
    }
}
