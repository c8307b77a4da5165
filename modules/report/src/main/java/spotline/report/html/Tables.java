package spotline.report.html;

import java.util.List;

/** Tables on the page. */
final class Tables {
    /** Columns that hold numbers begin with this in a header, and are set to the right. */
    private static final char NUMBER = '#';
    /** A fact of more characters gets two columns. */
    private static final int LONG_FACT = 42;

    private Tables() {}

    /** Opens a table up to its body; a heading that begins with {@code #} heads a column of numbers. */
    static void begin(Markup page, String cssClass, List<String> headings) {
        page.open("table", "class", cssClass).open("thead").open("tr");
        for (String heading : headings) {
            if (heading.charAt(0) == NUMBER) page.element("th", heading.substring(1), "scope", "col", "class", "n");
            else page.element("th", heading, "scope", "col");
        }
        page.close().close().open("tbody").raw("\n");
    }

    static void end(Markup page) {
        page.close().end();
    }

    static Markup cell(Markup page, String text) {
        return page.element("td", text);
    }

    static Markup number(Markup page, String text) {
        return page.element("td", text, "class", "n");
    }

    /** Terms and what is known of each; what is empty was not recorded. */
    static void facts(Markup page, List<Fact> facts) {
        page.open("dl", "class", "facts");
        for (Fact fact : facts) {
            boolean wide = fact.value().length() > LONG_FACT;
            page.open("div", "class", wide ? "wide" : "fact").element("dt", fact.name());
            if (fact.value().isEmpty()) page.element("dd", "not recorded", "class", "missing");
            else page.element("dd", fact.value());
            page.close();
        }
        page.end();
    }

    record Fact(String name, String value) {}
}
