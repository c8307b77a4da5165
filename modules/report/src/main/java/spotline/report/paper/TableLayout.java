package spotline.report.paper;

import java.util.ArrayList;
import java.util.List;
import spotline.report.print.Ink;
import spotline.report.print.Typeface;
import spotline.report.print.Weight;

/** A table as rows of pieces: columns as wide as their content wants, smaller type where that is too wide. */
final class TableLayout {
    private static final double[] SIZES_MM = {2.5, 2.25, 2.0, 1.8, 1.65};
    private static final double GAP_MM = 3;
    private static final double PAD_MM = 0.8;
    /** A column of text never asks for more before it breaks, as a share of the table. */
    private static final double WIDEST_SHARE = 0.45;

    private record Cell(Inline text, boolean right) {}

    private final Typeface typeface;
    private final double widthMm;
    private final List<List<Cell>> head = new ArrayList<>();
    private final List<List<Cell>> rows = new ArrayList<>();
    private int columns;

    private TableLayout(Typeface typeface, double widthMm) {
        this.typeface = typeface;
        this.widthMm = widthMm;
    }

    static List<Piece> of(Typeface typeface, PageNode.Element table, double widthMm, double pageMm) {
        TableLayout layout = new TableLayout(typeface, widthMm);
        layout.gather(table, false);
        if (layout.columns == 0) return List.of();
        return layout.pieces(pageMm);
    }

    private void gather(PageNode.Element element, boolean inHead) {
        for (PageNode.Element child : element.elements().toList()) {
            if (!child.tag().equals("tr")) {
                gather(child, inHead || child.tag().equals("thead"));
                continue;
            }
            List<Cell> cells = new ArrayList<>();
            for (PageNode.Element cell : child.elements().toList()) {
                boolean bold = cell.tag().equals("th");
                Inline text = Inline.of(
                        typeface, cell, bold ? Weight.BOLD : Weight.REGULAR, cell.is("below") ? Ink.DARK : Ink.BLACK);
                cells.add(new Cell(text, cell.is("n")));
            }
            columns = Math.max(columns, cells.size());
            (inHead ? head : rows).add(cells);
        }
    }

    private List<Piece> pieces(double pageMm) {
        double size = SIZES_MM[0];
        double[] widths = widths(size);
        for (int i = 1; i < SIZES_MM.length && tooWide(size); i++) {
            size = SIZES_MM[i];
            widths = widths(size);
        }
        List<Piece> top = new ArrayList<>();
        for (List<Cell> row : head) top.addAll(row(row, widths, size, 0.25, pageMm));
        List<Piece> pieces = new ArrayList<>();
        top.forEach(piece -> pieces.add(piece.keptWithNext()));
        for (List<Cell> row : rows) row(row, widths, size, 0.1, pageMm).forEach(p -> pieces.add(p.under(top)));
        pieces.add(Piece.space(2));
        return pieces;
    }

    private boolean tooWide(double size) {
        double least = -GAP_MM;
        for (int c = 0; c < columns; c++) least += least(c, size) + GAP_MM;
        return least > widthMm;
    }

    private double least(int column, double size) {
        double least = 0;
        for (List<Cell> row : all()) {
            if (column >= row.size()) continue;
            Cell cell = row.get(column);
            boolean whole = cell.right() && !head.contains(row);
            double wanted = whole ? cell.text().naturalMm(size) : cell.text().longestWordMm(size);
            least = Math.max(least, Math.min(wanted, WIDEST_SHARE * widthMm));
        }
        return least;
    }

    private double natural(int column, double size) {
        double natural = 0;
        for (List<Cell> row : all()) {
            if (column < row.size())
                natural = Math.max(natural, row.get(column).text().naturalMm(size));
        }
        return natural + 0.2;
    }

    private List<List<Cell>> all() {
        List<List<Cell>> all = new ArrayList<>(head);
        all.addAll(rows);
        return all;
    }

    private double[] widths(double size) {
        double[] least = new double[columns];
        double[] more = new double[columns];
        double leastSum = 0;
        double moreSum = 0;
        double room = widthMm - GAP_MM * (columns - 1);
        for (int c = 0; c < columns; c++) {
            least[c] = least(c, size);
            more[c] = Math.max(0, natural(c, size) - least[c]);
            leastSum += least[c];
            moreSum += more[c];
        }
        double share = moreSum > 0 ? Math.min(1, Math.max(0, room - leastSum) / moreSum) : 0;
        double shrink = leastSum > room ? room / leastSum : 1;
        for (int c = 0; c < columns; c++) least[c] = (least[c] + share * more[c]) * shrink;
        return least;
    }

    /** More than one only where a row is higher than a page. */
    private List<Piece> row(List<Cell> cells, double[] widths, double size, double ruleMm, double pageMm) {
        double lineMm = 1.36 * size;
        List<List<Inline.Line>> lines = new ArrayList<>();
        int most = 1;
        for (int c = 0; c < cells.size(); c++) {
            List<Inline.Line> wrapped = cells.get(c).text().lines(widths[c] + 0.01, size);
            lines.add(wrapped);
            most = Math.max(most, wrapped.size());
        }
        int fitting = (int) Math.max(1, 0.8 * pageMm / lineMm);
        double whole = 0;
        for (double width : widths) whole += width + GAP_MM;
        double right = whole - GAP_MM;
        List<Piece> pieces = new ArrayList<>();
        for (int from = 0; from < most; from += fitting) {
            int first = from;
            int last = Math.min(most, from + fitting);
            double height = (last - first) * lineMm + 2 * PAD_MM;
            pieces.add(Piece.of(height, (page, x, y) -> {
                double at = x;
                for (int c = 0; c < cells.size(); c++) {
                    List<Inline.Line> own = lines.get(c);
                    double baseline = y + PAD_MM + size;
                    for (int i = first; i < Math.min(last, own.size()); i++) {
                        Inline.Line line = own.get(i);
                        double shift = cells.get(c).right() ? widths[c] - line.widthMm(typeface, size) : 0;
                        line.draw(page, at + shift, baseline, size);
                        baseline += lineMm;
                    }
                    at += widths[c] + GAP_MM;
                }
                page.line("", x, y + height, x + right, y + height, ruleMm > 0.2 ? Ink.BLACK : Ink.PALE, ruleMm);
            }));
        }
        return pieces;
    }
}
