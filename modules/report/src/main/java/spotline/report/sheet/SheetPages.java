package spotline.report.sheet;

import java.util.List;

/**
 * The sheet before it goes to any kind of file.
 *
 * @param marks of each page
 */
record SheetPages(String title, boolean landscape, List<List<Mark>> marks) {
    SheetPages {
        marks = marks.stream().map(List::copyOf).toList();
    }
}
