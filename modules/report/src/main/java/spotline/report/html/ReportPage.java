package spotline.report.html;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import spotline.run.RunResult;
import spotline.run.SampleComposition;

/**
 * The report of a holder run: one file that needs no other, no network and no script.
 *
 * <p>Its bytes depend on the result alone.
 */
public final class ReportPage {
    public static final String FILE = "report.html";

    private static final String STYLE = "/spotline/report/report.css";

    private ReportPage() {}

    public static byte[] of(RunResult result) {
        Markup page = new Markup();
        String title = result.plan().file().title().orElse("Holder run");
        page.raw("<!DOCTYPE html>\n").open("html", "lang", "en").open("head");
        page.empty("meta", "charset", "utf-8");
        page.empty("meta", "name", "viewport", "content", "width=device-width, initial-scale=1");
        page.element("title", title + " \u2013 surface composition");
        page.open("style").raw(style()).close().end();
        page.open("body");
        RunHeader.write(page, result, title);
        contents(page, result);
        page.open("main");
        AtAGlance.write(page, result);
        for (int i = 0; i < result.samples().size(); i++) SampleSection.write(page, result, i);
        FindingsSection.write(page, result.findings());
        if (!result.ruleStates().isEmpty()) ChecksSection.write(page, result);
        MethodSection.write(page, result);
        SettingsSection.write(page, result.treatments());
        ProvenanceSection.write(page, result);
        Cautions.write(page);
        page.end();
        page.open("footer").open("p").text("Spotline " + result.programVersion());
        Optional<String> date = result.plan().file().date().map(Object::toString);
        page.text(date.map(d -> " \u00b7 holder run of " + d).orElse(""))
                .close()
                .end();
        page.close().end();
        return page.finish().getBytes(StandardCharsets.UTF_8);
    }

    private static void contents(Markup page, RunResult result) {
        page.open("nav", "aria-label", "Contents").open("ul");
        link(page, "#glance", "At a glance");
        List<SampleComposition> samples = result.samples();
        for (int i = 0; i < samples.size(); i++) link(page, "#sample-" + (i + 1), SampleSection.name(samples.get(i)));
        link(page, "#findings", "Findings");
        if (!result.ruleStates().isEmpty()) link(page, "#checks", "Checks");
        link(page, "#method", "Method");
        link(page, "#settings", "Settings");
        link(page, "#provenance", "Provenance");
        link(page, "#cautions", "Cautions");
        page.close().end();
    }

    private static void link(Markup page, String target, String text) {
        page.open("li").element("a", text, "href", target).close();
    }

    private static String style() {
        try (InputStream in = ReportPage.class.getResourceAsStream(STYLE)) {
            return new String(Objects.requireNonNull(in, STYLE).readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
