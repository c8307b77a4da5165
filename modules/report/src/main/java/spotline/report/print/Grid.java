package spotline.report.print;

import java.util.ArrayList;
import java.util.List;

/** A table that goes on over pages, its head on each. */
public final class Grid {
    private static final double PAD_MM = 0.9;

    /**
     * @param share of the table's width
     * @param tick whether its cells are boxes to tick
     */
    public record Column(String title, double share, boolean tick) {
        public Column(String title, double share) {
            this(title, share, false);
        }
    }

    private final Flow flow;
    private final List<Column> columns;
    private final double[] left;

    public Grid(Flow flow, List<Column> columns) {
        this.flow = flow;
        this.columns = columns;
        double shares = columns.stream().mapToDouble(Column::share).sum();
        left = new double[columns.size() + 1];
        for (int i = 0; i < columns.size(); i++) {
            left[i + 1] = left[i] + columns.get(i).share() / shares * flow.widthMm();
        }
    }

    public void head() {
        for (int i = 0; i < columns.size(); i++) {
            flow.page()
                    .words(
                            left[i] + PAD_MM,
                            flow.y() + Flow.TEXT_MM,
                            Flow.TEXT_MM,
                            Weight.BOLD,
                            Ink.BLACK,
                            columns.get(i).title());
        }
        flow.skip(Flow.LINE_MM);
        rule(Canvas.THICK_MM);
    }

    /** Each cell is a list of paragraphs; the first cell stands in bold. */
    public void row(List<List<String>> cells) {
        List<List<String>> lines = new ArrayList<>();
        int most = 1;
        for (int i = 0; i < cells.size(); i++) {
            List<String> wrapped = new ArrayList<>();
            for (String paragraph : cells.get(i)) {
                double width = left[i + 1] - left[i] - 2 * PAD_MM;
                wrapped.addAll(flow.typeface().lines(paragraph, width, Flow.TEXT_MM, weight(i)));
            }
            lines.add(wrapped);
            most = Math.max(most, wrapped.size());
        }
        double height = most * Flow.LINE_MM + 2 * PAD_MM;
        if (flow.need(height)) head();
        for (int i = 0; i < columns.size(); i++) {
            if (columns.get(i).tick()) {
                flow.page().tickBox(left[i] + PAD_MM, flow.y() + PAD_MM, 3.2, false);
                continue;
            }
            double y = flow.y() + PAD_MM + Flow.TEXT_MM;
            for (String line : lines.get(i)) {
                flow.page().words(left[i] + PAD_MM, y, Flow.TEXT_MM, weight(i), Ink.BLACK, line);
                y += Flow.LINE_MM;
            }
        }
        flow.skip(height);
        rule(Canvas.HAIR_MM);
    }

    private static Weight weight(int column) {
        return column == 0 ? Weight.BOLD : Weight.REGULAR;
    }

    private void rule(double widthMm) {
        flow.page().line("", 0, flow.y(), flow.widthMm(), flow.y(), Ink.DARK, widthMm);
    }
}
