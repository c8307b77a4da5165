package spotline.report.paper;

import java.util.List;
import java.util.Optional;
import spotline.report.print.Canvas;

/**
 * Something that is never cut: a line of text, a row, a figure.
 *
 * @param heightMm with the room beneath it
 * @param withNext whether it must not be the last on a page
 * @param head what is repeated above it when it begins a page
 * @param mark the heading it is
 */
record Piece(
        double heightMm, boolean withNext, List<Piece> head, Optional<Heading> mark, boolean newPage, Drawer drawer) {
    /** Draws with the upper edge at y. */
    interface Drawer {
        void draw(Canvas page, double x, double y);
    }

    record Heading(int level, String text) {}

    static Piece of(double heightMm, Drawer drawer) {
        return new Piece(heightMm, false, List.of(), Optional.empty(), false, drawer);
    }

    static Piece space(double heightMm) {
        return of(heightMm, (page, x, y) -> {});
    }

    Piece keptWithNext() {
        return new Piece(heightMm, true, head, mark, newPage, drawer);
    }

    Piece under(List<Piece> newHead) {
        return new Piece(heightMm, withNext, newHead, mark, newPage, drawer);
    }

    Piece marked(Heading heading) {
        return new Piece(heightMm, withNext, head, Optional.of(heading), newPage, drawer);
    }

    Piece onNewPage() {
        return new Piece(heightMm, withNext, head, mark, true, drawer);
    }

    /** One below the other, as a whole. */
    static Piece stacked(List<Piece> pieces) {
        double height = pieces.stream().mapToDouble(Piece::heightMm).sum();
        return of(height, (page, x, y) -> {
            double at = y;
            for (Piece piece : pieces) {
                piece.drawer().draw(page, x, at);
                at += piece.heightMm();
            }
        });
    }

    /** Side by side. */
    static Piece beside(Piece left, Piece right, double rightMm) {
        return of(Math.max(left.heightMm(), right.heightMm()), (page, x, y) -> {
            left.drawer().draw(page, x, y);
            right.drawer().draw(page, x + rightMm, y);
        });
    }
}
