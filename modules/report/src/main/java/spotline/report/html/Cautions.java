package spotline.report.html;

/** What work on such samples and instruments calls for, in general words. */
final class Cautions {
    private Cautions() {}

    static void write(Markup page) {
        page.open("section", "id", "cautions").element("h2", "Cautions");
        page.open("ul");
        item(
                page,
                "Follow your laboratory's own risk assessment and the safety data of the samples; this report replaces"
                        + " neither.");
        item(
                page,
                "X-rays, high voltage, vacuum, cryogens, hot stages and powders can injure. Work on them is for trained"
                        + " people, under local rules and, where the law asks for it, under licence.");
        item(
                page,
                "Do not defeat interlocks or shielding. Unknown, volatile, reactive, radioactive or biological samples"
                        + " need the consent of those responsible before they are loaded.");
        item(
                page,
                "Spotline certifies no safety and no compliance with any rule or standard. Whether a number is fit for"
                        + " its use is judged by the person who uses it.");
        page.close().end();
    }

    private static void item(Markup page, String text) {
        page.element("li", text).raw("\n");
    }
}
