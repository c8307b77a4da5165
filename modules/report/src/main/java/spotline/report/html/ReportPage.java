package spotline.report.html;

import java.util.List;
import java.util.Optional;
import spotline.run.RunResult;
import spotline.run.SampleComposition;
import spotline.run.SpotResult;

/**
 * The report of a holder run: one file that needs no other, no network and no script.
 *
 * <p>Its bytes depend on the result and on how it is asked to look alone.
 */
public final class ReportPage {
    public static final String FILE = "report.html";
    public static final String PDF_FILE = "report.pdf";

    private ReportPage() {}

    public static byte[] of(RunResult result) {
        return of(result, Form.FULL, Letterhead.NONE);
    }

    public static byte[] of(RunResult result, Form form, Letterhead letterhead) {
        String title = result.plan().file().title().orElse("Holder run");
        Markup page = PageShell.begin(title, letterhead);
        RunHeader.write(page, result, title);
        contents(page, result, form);
        page.open("main");
        AtAGlance.write(page, result);
        for (int i = 0; i < result.samples().size(); i++) SampleSection.write(page, result, i, form);
        FindingsSection.write(page, result.findings());
        if (checks(result, form)) ChecksSection.write(page, result);
        MethodSection.write(page, result);
        RecordSection.write(page, result, form);
        if (form == Form.FULL) {
            FactorsSection.write(page, result);
            SettingsSection.write(page, result.treatments());
        }
        ProvenanceSection.write(page, result, form);
        Cautions.write(page);
        page.end();
        Optional<String> date = result.plan().file().date().map(Object::toString);
        return PageShell.end(
                page,
                letterhead,
                "Spotline " + result.programVersion()
                        + date.map(d -> " \u00b7 holder run of " + d).orElse(""));
    }

    private static void contents(Markup page, RunResult result, Form form) {
        page.open("nav", "aria-label", "Contents").open("ul");
        link(page, "#glance", "At a glance");
        List<SampleComposition> samples = result.samples();
        for (int i = 0; i < samples.size(); i++) {
            page.open("li").element("a", SampleSection.name(samples.get(i)), "href", "#sample-" + (i + 1));
            for (SpotResult spot : AtAGlance.spots(result, samples.get(i))) {
                page.text(" ").element("a", "spot " + spot.spot(), "href", "#" + SpotSection.anchor(result, spot));
            }
            page.close();
        }
        link(page, "#findings", "Findings");
        if (checks(result, form)) link(page, "#checks", "Checks");
        link(page, "#method", "Method");
        link(page, "#record", "Record");
        if (form == Form.FULL) {
            link(page, "#factors", "Sensitivity factors");
            link(page, "#settings", "Settings");
        }
        link(page, "#provenance", "Provenance");
        link(page, "#cautions", "Cautions");
        page.close().end();
    }

    private static boolean checks(RunResult result, Form form) {
        return form == Form.FULL && !result.ruleStates().isEmpty();
    }

    private static void link(Markup page, String target, String text) {
        page.open("li").element("a", text, "href", target).close();
    }
}
