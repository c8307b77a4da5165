package spotline.report.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import spotline.analysis.peakfit.PeakFitResult;
import spotline.report.figure.CurveStyle;
import spotline.report.figure.Figure;
import spotline.report.figure.PeakFitFigure;
import spotline.report.figure.Plots;
import spotline.report.text.DisplayNumber;
import spotline.report.text.Shown;

/** The drawing of one fit: data, background, components, fitted sum, and the residuals beneath on the same energy axis. */
public final class FitFigure {
    private static final int WIDTH = 640;
    private static final int PLOT_HEIGHT = 440;
    private static final int KEY_COLUMNS = 2;
    private static final int KEY_ROW = 16;
    private static final int MARGIN = 10;

    private FitFigure() {}

    /** A whole SVG document, UTF-8. */
    public static String svg(FitReport report) {
        PeakFitResult result = report.result();
        List<Figure.Key> keys = new ArrayList<>();
        String plot = Plots.svg(PeakFitFigure.plot(result, keys), "fit", WIDTH, PLOT_HEIGHT);
        int rows = (keys.size() + KEY_COLUMNS - 1) / KEY_COLUMNS;
        int top = MARGIN + KEY_ROW + rows * KEY_ROW + 4;
        int height = top + PLOT_HEIGHT;
        String file = report.source().file();
        String name = file.substring(1 + Math.max(file.lastIndexOf('/'), file.lastIndexOf('\\')));
        String title = Shown.label(report.region()) + ", " + Shown.label(name) + ", block "
                + report.source().block();
        StringBuilder out = new StringBuilder("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
        out.append(String.format(
                Locale.ROOT,
                "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%d\" height=\"%d\" viewBox=\"0 0 %d %d\""
                        + " font-family=\"sans-serif\" font-size=\"11\">%n",
                WIDTH,
                height,
                WIDTH,
                height));
        out.append("<title>").append(escaped("Peak fit of " + title)).append("</title>\n");
        out.append("<desc>").append(escaped(PeakFitFigure.description(result))).append("</desc>\n");
        out.append("<rect width=\"100%\" height=\"100%\" fill=\"#ffffff\"/>\n");
        out.append(text(MARGIN, MARGIN + 9, title + statistics(result), "#222222"));
        for (int k = 0; k < keys.size(); k++) {
            int x = MARGIN + k % KEY_COLUMNS * (WIDTH - 2 * MARGIN) / KEY_COLUMNS;
            int y = MARGIN + KEY_ROW + k / KEY_COLUMNS * KEY_ROW + 9;
            out.append(key(x, y, keys.get(k)));
        }
        // An inner drawing without a size of its own would be stretched over the whole.
        out.append(plot.replaceFirst(
                "<svg ",
                String.format(
                        Locale.ROOT, "<svg x=\"0\" y=\"%d\" width=\"%d\" height=\"%d\" ", top, WIDTH, PLOT_HEIGHT)));
        return out.append("\n</svg>\n").toString();
    }

    private static String statistics(PeakFitResult result) {
        OptionalDouble chi = result.statistics().reducedChiSquare();
        return chi.isPresent() ? ", reduced chi-square " + DisplayNumber.fixed(chi.getAsDouble(), 2) : "";
    }

    private static String key(int x, int y, Figure.Key key) {
        CurveStyle style = key.style();
        String sample = style == CurveStyle.POINTS
                ? String.format(
                        Locale.ROOT,
                        "<path d=\"M%d %d h2.2 m5 0 h2.2 m5 0 h2.2\" stroke=\"%s\" stroke-width=\"2.2\"/>",
                        x + 3,
                        y - 4,
                        style.hex())
                : String.format(
                        Locale.ROOT,
                        "<path d=\"M%d %d h24\" fill=\"none\" stroke=\"%s\" stroke-width=\"%s\"%s/>",
                        x,
                        y - 4,
                        style.hex(),
                        style.strokeWidth(),
                        style.dashArray().isEmpty() ? "" : " stroke-dasharray=\"" + style.dashArray() + "\"");
        return sample + text(x + 30, y, key.meaning(), "#222222");
    }

    private static String text(int x, int y, String text, String fill) {
        return String.format(Locale.ROOT, "<text x=\"%d\" y=\"%d\" fill=\"%s\">%s</text>%n", x, y, fill, escaped(text));
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }
}
