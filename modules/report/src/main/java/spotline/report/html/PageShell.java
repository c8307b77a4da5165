package spotline.report.html;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Objects;

/** What every page begins and ends with: one file that needs no other, no network and no script. */
final class PageShell {
    private static final String STYLE = "/spotline/report/report.css";

    private PageShell() {}

    static Markup begin(String title, Letterhead letterhead) {
        Markup page = new Markup();
        page.raw("<!DOCTYPE html>\n").open("html", "lang", "en").open("head");
        page.empty("meta", "charset", "utf-8");
        page.empty("meta", "name", "viewport", "content", "width=device-width, initial-scale=1");
        page.element("title", title.isBlank() ? "Surface composition" : title + " \u2013 surface composition");
        page.open("style").raw(style()).raw(letterhead.css()).close().end();
        page.open("body");
        letterhead.head(page);
        return page;
    }

    static byte[] end(Markup page, Letterhead letterhead, String own) {
        letterhead.foot(page, own);
        page.close().end();
        return page.finish().getBytes(StandardCharsets.UTF_8);
    }

    private static String style() {
        try (InputStream in = PageShell.class.getResourceAsStream(STYLE)) {
            return new String(Objects.requireNonNull(in, STYLE).readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
