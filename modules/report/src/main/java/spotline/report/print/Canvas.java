package spotline.report.print;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spotline.holder.PointMm;

/** Gathers the marks of one page. */
public final class Canvas {
    public static final double HAIR_MM = 0.1;
    public static final double THIN_MM = 0.18;
    public static final double THICK_MM = 0.4;

    private final Typeface typeface;
    private final List<Mark> marks = new ArrayList<>();

    public Canvas(Typeface typeface) {
        this.typeface = typeface;
    }

    public List<Mark> marks() {
        return List.copyOf(marks);
    }

    public Typeface typeface() {
        return typeface;
    }

    public void line(String role, double x1, double y1, double x2, double y2, Ink ink, double widthMm) {
        path(role, List.of(new PointMm(x1, y1), new PointMm(x2, y2)), false, Optional.empty(), ink, widthMm, 0);
    }

    public void outline(String role, List<PointMm> corners, Ink ink, double widthMm, double dashMm) {
        path(role, corners, true, Optional.empty(), ink, widthMm, dashMm);
    }

    public void area(String role, List<PointMm> corners, Ink fill, Ink ink, double widthMm) {
        path(role, corners, true, Optional.of(fill), ink, widthMm, 0);
    }

    public static List<PointMm> box(double x, double y, double width, double height) {
        return List.of(
                new PointMm(x, y),
                new PointMm(x + width, y),
                new PointMm(x + width, y + height),
                new PointMm(x, y + height));
    }

    private void path(
            String role,
            List<PointMm> corners,
            boolean closed,
            Optional<Ink> fill,
            Ink ink,
            double widthMm,
            double dashMm) {
        marks.add(new Mark.Path(role, corners, closed, fill, ink, widthMm, dashMm));
    }

    /** Diagonal lines across an area, cut off at its edge. */
    public void hatch(List<PointMm> corners, double stepMm, Ink ink) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (PointMm corner : corners) {
            low = Math.min(low, corner.x() + corner.y());
            high = Math.max(high, corner.x() + corner.y());
        }
        // Rounded outwards to whole steps, so that the lines of neighbouring areas meet.
        for (double sum = Math.ceil(low / stepMm) * stepMm; sum < high; sum += stepMm) {
            List<PointMm> cuts = cuts(corners, sum);
            for (int i = 0; i + 1 < cuts.size(); i += 2) {
                line(
                        "",
                        cuts.get(i).x(),
                        cuts.get(i).y(),
                        cuts.get(i + 1).x(),
                        cuts.get(i + 1).y(),
                        ink,
                        HAIR_MM);
            }
        }
    }

    /** Where the line x + y = sum crosses the edges, from left to right. */
    private static List<PointMm> cuts(List<PointMm> corners, double sum) {
        List<PointMm> cuts = new ArrayList<>();
        for (int i = 0; i < corners.size(); i++) {
            PointMm a = corners.get(i);
            PointMm b = corners.get((i + 1) % corners.size());
            double before = a.x() + a.y() - sum;
            double after = b.x() + b.y() - sum;
            if ((before < 0) == (after < 0)) continue;
            double share = before / (before - after);
            cuts.add(new PointMm(a.x() + share * (b.x() - a.x()), a.y() + share * (b.y() - a.y())));
        }
        cuts.sort((p, q) -> Double.compare(p.x(), q.x()));
        return cuts;
    }

    public void add(Mark mark) {
        marks.add(mark);
    }

    /** Text that is known to be shown, blanks at its ends included. */
    public void wordsAt(double x, double y, double sizeMm, Weight weight, Ink ink, String shown) {
        if (shown.isBlank()) return;
        marks.add(new Mark.Words(x, y, sizeMm, typeface.widthMm(shown, sizeMm, weight), weight, ink, shown));
    }

    public void words(double x, double y, double sizeMm, Weight weight, Ink ink, String text) {
        String shown = typeface.shown(text, weight).strip();
        if (shown.isEmpty()) return;
        marks.add(new Mark.Words(x, y, sizeMm, typeface.widthMm(shown, sizeMm, weight), weight, ink, shown));
    }

    public void wordsRight(double right, double y, double sizeMm, Weight weight, Ink ink, String text) {
        String shown = typeface.shown(text, weight).strip();
        words(right - typeface.widthMm(shown, sizeMm, weight), y, sizeMm, weight, ink, shown);
    }

    public void wordsCentred(double middle, double y, double sizeMm, Weight weight, Ink ink, String text) {
        String shown = typeface.shown(text, weight).strip();
        words(middle - typeface.widthMm(shown, sizeMm, weight) / 2, y, sizeMm, weight, ink, shown);
    }

    /** A box to tick, with its mark when it is ticked already. */
    public void tickBox(double x, double y, double sizeMm, boolean ticked) {
        outline("tick box", box(x, y, sizeMm, sizeMm), Ink.BLACK, 0.25, 0);
        if (!ticked) return;
        line("", x + 0.2 * sizeMm, y + 0.55 * sizeMm, x + 0.42 * sizeMm, y + 0.8 * sizeMm, Ink.BLACK, THICK_MM);
        line("", x + 0.42 * sizeMm, y + 0.8 * sizeMm, x + 0.85 * sizeMm, y + 0.2 * sizeMm, Ink.BLACK, THICK_MM);
    }
}
