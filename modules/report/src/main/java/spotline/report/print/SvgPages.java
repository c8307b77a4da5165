package spotline.report.print;

import java.util.ArrayList;
import java.util.List;
import spotline.core.Decimal;
import spotline.holder.PointMm;

/** Writes pages as SVG 1.1 in mm. Source: W3C, Scalable Vector Graphics 1.1. */
public final class SvgPages {
    private SvgPages() {}

    public static List<String> write(SheetPages pages, Frame frame) {
        List<String> documents = new ArrayList<>();
        for (List<Mark> marks : pages.marks()) documents.add(page(pages.title(), marks, frame));
        return documents;
    }

    private static String page(String title, List<Mark> marks, Frame frame) {
        StringBuilder svg = new StringBuilder();
        String width = number(frame.paperWidthMm());
        String height = number(frame.paperHeightMm());
        svg.append("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"")
                .append(width)
                .append("mm\" height=\"")
                .append(height)
                .append("mm\" viewBox=\"0 0 ")
                .append(width)
                .append(' ')
                .append(height)
                .append("\">\n<title>")
                .append(escaped(title))
                .append("</title>\n<rect width=\"")
                .append(width)
                .append("\" height=\"")
                .append(height)
                .append("\" fill=\"#ffffff\"/>\n<g transform=\"translate(")
                .append(number(frame.leftMm()))
                .append(' ')
                .append(number(frame.topMm()))
                .append(")\" font-family=\"'DejaVu Sans', sans-serif\" stroke-linejoin=\"miter\">\n");
        for (Mark mark : marks) {
            if (mark instanceof Mark.Path path) path(svg, path);
            else if (mark instanceof Mark.Words words) words(svg, words);
            else if (mark instanceof Mark.Vector vector) vector(svg, vector);
            else if (mark instanceof Mark.Picture picture) picture(svg, picture);
        }
        return svg.append("</g>\n</svg>\n").toString();
    }

    private static void path(StringBuilder svg, Mark.Path path) {
        svg.append("<path d=\"");
        char command = 'M';
        for (PointMm corner : path.corners()) {
            svg.append(command).append(number(corner.x())).append(' ').append(number(corner.y()));
            command = 'L';
        }
        if (path.closed()) svg.append('Z');
        svg.append("\" fill=\"")
                .append(path.fill().map(SvgPages::colour).orElse("none"))
                .append('"');
        if (path.widthMm() > 0) {
            svg.append(" stroke=\"")
                    .append(colour(path.ink()))
                    .append("\" stroke-width=\"")
                    .append(number(path.widthMm()))
                    .append('"');
            if (path.dashMm() > 0) {
                svg.append(" stroke-dasharray=\"").append(number(path.dashMm())).append('"');
            }
        }
        svg.append("/>\n");
    }

    private static void vector(StringBuilder svg, Mark.Vector vector) {
        String place = "<svg x=\"" + number(vector.x()) + "\" y=\"" + number(vector.y()) + "\" width=\""
                + number(vector.widthMm()) + "\" height=\"" + number(vector.heightMm()) + "\" ";
        svg.append(vector.svg().replaceFirst("<svg ", place)).append('\n');
    }

    private static void picture(StringBuilder svg, Mark.Picture picture) {
        svg.append("<image x=\"")
                .append(number(picture.x()))
                .append("\" y=\"")
                .append(number(picture.y()))
                .append("\" width=\"")
                .append(number(picture.widthMm()))
                .append("\" height=\"")
                .append(number(picture.heightMm()))
                .append("\" href=\"")
                .append(picture.image().dataUri())
                .append("\"/>\n");
    }

    /** The length is given, so that the layout holds where the typeface is not there. */
    private static void words(StringBuilder svg, Mark.Words words) {
        svg.append("<text x=\"")
                .append(number(words.x()))
                .append("\" y=\"")
                .append(number(words.y()))
                .append("\" font-size=\"")
                .append(number(words.sizeMm()))
                .append("\" textLength=\"")
                .append(number(words.widthMm()))
                .append("\" lengthAdjust=\"spacingAndGlyphs\"")
                .append(words.weight() == Weight.BOLD ? " font-weight=\"bold\"" : "")
                .append(" fill=\"")
                .append(colour(words.ink()))
                .append("\">")
                .append(escaped(words.text()))
                .append("</text>\n");
    }

    private static String number(double value) {
        return Decimal.text(Math.rint(value * 1e4) / 1e4);
    }

    private static String colour(Ink ink) {
        StringBuilder hex = new StringBuilder("#");
        for (double part : new double[] {ink.red(), ink.green(), ink.blue()}) {
            String digits = Integer.toHexString((int) Math.round(255 * part));
            hex.append(digits.length() < 2 ? "0" : "").append(digits);
        }
        return hex.toString();
    }

    /** Characters that XML cannot hold are left out; the marks have none of them. */
    private static String escaped(String text) {
        StringBuilder escaped = new StringBuilder();
        text.codePoints().forEach(code -> {
            switch (code) {
                case '&' -> escaped.append("&amp;");
                case '<' -> escaped.append("&lt;");
                case '>' -> escaped.append("&gt;");
                case '"' -> escaped.append("&quot;");
                default -> {
                    boolean allowed = code >= 0x20 && !(code >= 0xD800 && code <= 0xDFFF) && (code & 0xFFFE) != 0xFFFE;
                    if (allowed) escaped.appendCodePoint(code);
                }
            }
        });
        return escaped.toString();
    }
}
