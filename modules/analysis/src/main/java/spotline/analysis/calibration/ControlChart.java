package spotline.analysis.calibration;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import spotline.analysis.calibration.CalibrationHistory.Row;
import spotline.core.Decimal;

/**
 * Deviations of the reference lines over time, with the tolerance and the share of it at which a calibration is due, as
 * SVG text.
 */
public final class ControlChart {
    private static final int WIDTH = 760;
    private static final int HEIGHT = 320;
    private static final int LEFT = 70;
    private static final int RIGHT = 150;
    private static final int TOP = 40;
    private static final int BOTTOM = 50;
    private static final double USED_UP = 0.7;
    // Dark enough on white to tell by lightness too; each line has a mark of its own besides.
    private static final List<String> INKS = List.of("#1b4f72", "#7d3c00", "#4a235a", "#145a32", "#5b2c2c", "#333333");

    private final CalibrationHistory history;

    public ControlChart(CalibrationHistory history) {
        this.history = history;
    }

    public String svg() {
        List<Row> rows = history.rows();
        StringBuilder out = new StringBuilder();
        out.append(Texts.ev(
                "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" width=\"%d\" height=\"%d\" role=\"img\""
                        + " font-family=\"sans-serif\" font-size=\"12\">\n",
                WIDTH, HEIGHT, WIDTH, HEIGHT));
        out.append("<title>Control chart of the energy scale</title>\n");
        out.append("<rect width=\"100%\" height=\"100%\" fill=\"#ffffff\"/>\n");
        text(out, LEFT, 22, "start", "Reference lines: measured less reference energy, eV");
        if (rows.isEmpty()) {
            text(out, LEFT, TOP + 20, "start", "No calibration yet.");
            return out.append("</svg>\n").toString();
        }
        double tolerance = rows.get(rows.size() - 1).toleranceEv();
        double reach = 1.2 * tolerance;
        for (Row r : rows) reach = Math.max(reach, 1.1 * Math.abs(r.deviationEv()));
        LocalDate first = rows.get(0).date();
        long days = Math.max(
                1, ChronoUnit.DAYS.between(first, rows.get(rows.size() - 1).date()));
        Scale scale = new Scale(first, days, reach);
        for (double level : new double[] {-tolerance, -USED_UP * tolerance, 0, USED_UP * tolerance, tolerance}) {
            boolean limit = Math.abs(level) == tolerance;
            String dashes = level == 0 || limit ? "" : " stroke-dasharray=\"4 4\"";
            line(out, LEFT, scale.y(level), WIDTH - RIGHT, scale.y(level), limit ? "#a11" : "#999", dashes);
            text(
                    out,
                    LEFT - 8,
                    scale.y(level) + 4,
                    "end",
                    Decimal.fixed(level, 2).replace('-', '\u2212'));
        }
        text(out, WIDTH - RIGHT + 8, scale.y(tolerance) + 4, "start", "tolerance");
        List<String> lines = rows.stream().map(Row::line).distinct().sorted().toList();
        for (int k = 0; k < lines.size(); k++) series(out, lines.get(k), k, scale);
        text(out, LEFT, HEIGHT - 18, "start", first.toString());
        text(
                out,
                WIDTH - RIGHT,
                HEIGHT - 18,
                "end",
                rows.get(rows.size() - 1).date().toString());
        return out.append("</svg>\n").toString();
    }

    private void series(StringBuilder out, String name, int k, Scale scale) {
        String ink = INKS.get(k % INKS.size());
        StringBuilder points = new StringBuilder();
        for (Row r : history.rows()) {
            if (!r.line().equals(name)) continue;
            double x = scale.x(r.date());
            double y = scale.y(r.deviationEv());
            points.append(Texts.ev("%.1f,%.1f ", x, y));
            double u = r.measuredU().orElse(0);
            line(out, x, scale.y(r.deviationEv() - u), x, scale.y(r.deviationEv() + u), ink, "");
            mark(out, k, x, y, ink);
        }
        out.append(Texts.ev(
                "<polyline points=\"%s\" fill=\"none\" stroke=\"%s\"/>\n",
                points.toString().strip(), ink));
        double legend = TOP + 40 + 20.0 * k;
        mark(out, k, WIDTH - RIGHT + 16, legend - 4, ink);
        text(out, WIDTH - RIGHT + 28, legend, "start", name);
    }

    private static void mark(StringBuilder out, int k, double x, double y, String ink) {
        switch (k % 3) {
            case 0 -> out.append(Texts.ev("<circle cx=\"%.1f\" cy=\"%.1f\" r=\"4\" fill=\"%s\"/>\n", x, y, ink));
            case 1 ->
                out.append(Texts.ev(
                        "<rect x=\"%.1f\" y=\"%.1f\" width=\"8\" height=\"8\" fill=\"%s\"/>\n", x - 4, y - 4, ink));
            default -> out.append(Texts.ev("<path d=\"M%.1f,%.1f l5,9 h-10 z\" fill=\"%s\"/>\n", x, y - 5, ink));
        }
    }

    private record Scale(LocalDate first, long days, double reachEv) {
        double x(LocalDate date) {
            double share = (double) ChronoUnit.DAYS.between(first, date) / days;
            return LEFT + share * (WIDTH - LEFT - RIGHT);
        }

        double y(double deviationEv) {
            double middle = 0.5 * (TOP + HEIGHT - BOTTOM);
            return middle - deviationEv / reachEv * 0.5 * (HEIGHT - TOP - BOTTOM);
        }
    }

    private static void line(StringBuilder out, double x1, double y1, double x2, double y2, String ink, String more) {
        out.append(Texts.ev(
                "<line x1=\"%.1f\" y1=\"%.1f\" x2=\"%.1f\" y2=\"%.1f\" stroke=\"%s\"%s/>\n",
                x1, y1, x2, y2, ink, more));
    }

    private static void text(StringBuilder out, double x, double y, String anchor, String text) {
        String escaped = text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
        out.append(Texts.ev(
                "<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"%s\" fill=\"#222\">%s</text>\n", x, y, anchor, escaped));
    }
}
