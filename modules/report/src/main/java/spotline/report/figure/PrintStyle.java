package spotline.report.figure;

import java.awt.Font;
import java.awt.FontFormatException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import spotline.core.Problem;
import spotline.core.Problems;
import spotline.report.print.Typeface;
import spotline.report.print.Weight;

/**
 * Sizes of a figure for print: the same type size and line widths in every figure of a paper.
 *
 * @param widthMm of the column it fills
 * @param typePt of axis labels and names; numbers at the axes are a point smaller
 * @param dpi of a PNG, dots per inch
 */
public record PrintStyle(double widthMm, double heightMm, double typePt, int dpi) {
    private static final double POINTS_PER_MM = 72 / 25.4;

    public PrintStyle {
        Problems.throwIfAny(check(widthMm, heightMm, typePt, dpi));
    }

    public static List<Problem> check(double widthMm, double heightMm, double typePt, int dpi) {
        List<Problem> problems = new ArrayList<>();
        between(problems, "width", widthMm, 30, 400, "mm");
        between(problems, "height", heightMm, 20, 400, "mm");
        between(problems, "type size", typePt, 4, 24, "pt");
        between(problems, "dpi", dpi, 50, 1200, "dots per inch");
        return problems;
    }

    private static void between(
            List<Problem> problems, String field, double value, double low, double high, String unit) {
        if (!(value >= low && value <= high)) {
            problems.add(new Problem(field, value + " " + unit, low + " to " + high + " " + unit));
        }
    }

    double widthPt() {
        return widthMm * POINTS_PER_MM;
    }

    double heightPt() {
        return heightMm * POINTS_PER_MM;
    }

    /** In the shipped typeface. */
    Font font() {
        try (InputStream in = Typeface.open(Weight.REGULAR)) {
            return Font.createFont(Font.TRUETYPE_FONT, in).deriveFont((float) typePt);
        } catch (FontFormatException e) {
            throw new IllegalStateException("a font that ships with the program is damaged", e);
        } catch (IOException e) {
            throw new UncheckedIOException("a font that ships with the program cannot be read", e);
        }
    }
}
