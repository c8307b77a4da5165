package spotline.report.html;

import java.util.Optional;
import spotline.report.print.MarkImage;

/**
 * What a lab puts on its pages. Its texts are escaped like any other.
 *
 * @param name of the lab
 * @param mark its picture
 * @param footer at the end of every page
 * @param contact whom to ask
 * @param css added after the style of the pages
 */
public record Letterhead(
        Optional<String> name,
        Optional<MarkImage> mark,
        Optional<String> footer,
        Optional<String> contact,
        String css) {
    public static final Letterhead NONE =
            new Letterhead(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), "");

    void head(Markup page) {
        if (name.isEmpty() && mark.isEmpty() && contact.isEmpty()) return;
        page.open("div", "class", "letterhead");
        mark.ifPresent(image -> page.empty(
                "img",
                "src",
                image.dataUri(),
                "alt",
                "mark of the laboratory",
                "width",
                Integer.toString(image.width()),
                "height",
                Integer.toString(image.height())));
        name.ifPresent(text -> page.element("p", text, "class", "lab"));
        contact.ifPresent(text -> page.element("p", text, "class", "contact"));
        page.end();
    }

    /** The lab's own words, before the program's. */
    void foot(Markup page, String own) {
        page.open("footer").open("p");
        page.text(footer.map(text -> text + " \u00b7 " + own).orElse(own));
        page.close().end();
    }
}
