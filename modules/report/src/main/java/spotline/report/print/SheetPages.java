package spotline.report.print;

import java.util.List;

/**
 * Pages before they go to any kind of file.
 *
 * @param marks of each page
 * @param bookmarks by which a reader finds the parts, in order; none for a short document
 * @param fullSize whether a viewer is asked to print without fitting to the paper
 */
public record SheetPages(
        String title, boolean landscape, List<List<Mark>> marks, List<Bookmark> bookmarks, boolean fullSize) {
    /**
     * A part of the document.
     *
     * @param level 1 for the largest parts
     * @param page counted from 0
     * @param y where it begins, mm from the top of what is printed
     */
    public record Bookmark(int level, String text, int page, double y) {}

    public SheetPages {
        marks = marks.stream().map(List::copyOf).toList();
        bookmarks = List.copyOf(bookmarks);
    }

    /** A sheet that is drawn to scale. */
    public SheetPages(String title, boolean landscape, List<List<Mark>> marks) {
        this(title, landscape, marks, List.of(), true);
    }
}
