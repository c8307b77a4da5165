package spotline.report.print;

import java.util.List;
import java.util.Optional;
import spotline.holder.PointMm;

/** Something drawn on a page, in mm from the upper left corner of what is printed, x to the right and y down. */
public sealed interface Mark {
    /**
     * A line through corners, or the area they enclose.
     *
     * @param role what it stands for, for those who read the drawing rather than look at it; empty for decoration
     * @param widthMm of the line; 0 draws none
     * @param dashMm length of dashes and of the gaps between them; 0 for a whole line
     */
    record Path(
            String role,
            List<PointMm> corners,
            boolean closed,
            Optional<Ink> fill,
            Ink ink,
            double widthMm,
            double dashMm)
            implements Mark {
        public Path {
            corners = List.copyOf(corners);
            if (corners.size() < 2) throw new IllegalArgumentException("a path needs 2 corners or more");
        }
    }

    /**
     * One line of text.
     *
     * @param x where it begins
     * @param y of its baseline
     * @param sizeMm of an em
     * @param widthMm as the font has it
     */
    record Words(double x, double y, double sizeMm, double widthMm, Weight weight, Ink ink, String text)
            implements Mark {}

    /**
     * A drawing of our own making as SVG, scaled to a width.
     *
     * @param y of its top
     */
    record Vector(double x, double y, double widthMm, double heightMm, String svg) implements Mark {}

    /**
     * A picture of dots.
     *
     * @param y of its top
     */
    record Picture(double x, double y, double widthMm, double heightMm, MarkImage image) implements Mark {}
}
