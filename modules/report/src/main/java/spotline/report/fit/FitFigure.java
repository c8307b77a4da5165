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
    private static final int KEY_ROW = 16;
    private static final int MARGIN = 10;

    private FitFigure() {}

    /** A whole SVG document, UTF-8. */
    public static String svg(FitReport report) {
        PeakFitResult result = report.result();
        List<Figure.Key> drawn = new ArrayList<>();
        String plot = Plots.svg(PeakFitFigure.plot(result, drawn), "fit", WIDTH, PLOT_HEIGHT);
        List<FigureKey.Entry> keys = drawn.stream()
                .map(k -> new FigureKey.Entry(k.meaning(), k.style()))
                .toList();
        String file = report.source().file();
        String name = file.substring(1 + Math.max(file.lastIndexOf('/'), file.lastIndexOf('\\')));
        String title = Shown.label(report.region()) + ", " + Shown.label(name) + ", block "
                + report.source().block();
        List<FigureKey.Placed> placed = FigureKey.placed(keys, WIDTH - 2 * MARGIN);
        List<String> titleLines = FigureKey.lines(title + statistics(result), WIDTH - 2 * MARGIN);
        int keyTop = MARGIN + titleLines.size() * KEY_ROW;
        int top = keyTop + FigureKey.rows(placed) * KEY_ROW + 4;
        int height = top + PLOT_HEIGHT;
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
        for (int line = 0; line < titleLines.size(); line++) {
            out.append(text(MARGIN, MARGIN + line * KEY_ROW + 9, titleLines.get(line), "#222222"));
        }
        for (FigureKey.Placed p : placed) {
            int x = MARGIN + p.x();
            int y = keyTop + p.row() * KEY_ROW + 9;
            out.append(sample(x, y, p.style()));
            for (int line = 0; line < p.lines().size(); line++) {
                out.append(
                        text(x + FigureKey.SAMPLE, y + line * KEY_ROW, p.lines().get(line), "#222222"));
            }
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

    /** How a curve is drawn. */
    private static String sample(int x, int y, CurveStyle style) {
        if (style == CurveStyle.POINTS) {
            return String.format(
                    Locale.ROOT,
                    "<path d=\"M%d %d h2.2 m5 0 h2.2 m5 0 h2.2\" stroke=\"%s\" stroke-width=\"2.2\"/>",
                    x + 3,
                    y - 4,
                    style.hex());
        }
        return String.format(
                Locale.ROOT,
                "<path d=\"M%d %d h24\" fill=\"none\" stroke=\"%s\" stroke-width=\"%s\"%s/>",
                x,
                y - 4,
                style.hex(),
                style.strokeWidth(),
                style.dashArray().isEmpty() ? "" : " stroke-dasharray=\"" + style.dashArray() + "\"");
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
