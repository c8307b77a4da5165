package spotline.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import spotline.report.html.Form;
import spotline.report.html.Letterhead;
import spotline.report.html.OwnerPage;
import spotline.report.html.ReportPage;
import spotline.report.paper.PagePdf;
import spotline.report.print.Typeface;
import spotline.run.RunResult;

class PaperTest {
    private static final Typeface TYPE = new Typeface();

    @Test
    void theReportOnPaperHoldsTheCompositionAsTextAndItsFontsAreEmbedded() throws IOException {
        byte[] pdf = PagePdf.of(ReportPage.of(ExampleRun.plain()), TYPE, Optional.empty());
        try (PDDocument document = Loader.loadPDF(pdf)) {
            String text = new PDFTextStripper().getText(document).replace("\r", "");
            assertThat(text).contains("33.5", "66.5", "< 0.62", "withheld", "C 1s", "\u03c7\u00b2");
            assertThat(text).contains("page 1 of " + document.getNumberOfPages());
            assertThat(document.getDocumentCatalog().getDocumentOutline().getFirstChild())
                    .isNotNull();
            for (PDPage page : document.getPages()) {
                for (COSName name : page.getResources().getFontNames()) {
                    assertThat(page.getResources().getFont(name).isEmbedded()).isTrue();
                }
                assertThat(page.getResources().getXObjectNames())
                        .as("figures are vectors")
                        .isEmpty();
            }
        }
    }

    @Test
    void theSamePageGivesTheSameBytesAndATimeOnlyWhenToldOne() throws IOException {
        byte[] html = OwnerPage.of(ExampleRun.plain(), 0, Letterhead.NONE);
        byte[] pdf = PagePdf.of(html, TYPE, Optional.empty());
        assertThat(PagePdf.of(html, new Typeface(), Optional.empty())).isEqualTo(pdf);
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertThat(document.getDocumentInformation().getCreationDate()).isNull();
        }
        Instant made = Instant.parse("2026-05-12T00:00:00Z");
        try (PDDocument document = Loader.loadPDF(PagePdf.of(html, TYPE, Optional.of(made)))) {
            assertThat(document.getDocumentInformation().getCreationDate().toInstant())
                    .isEqualTo(made);
        }
    }

    @Test
    void theOpeningSentenceIsPrintedOnlyWhenItWasAccepted() {
        String sentence =
                "Of a hundred atoms in the outermost few nanometres, most are fluorine (66.5 \u00b1 0.9) and carbon";
        assertThat(owner(ExampleRun.plain())).doesNotContain(sentence);
        assertThat(owner(ExampleRun.judged(false))).doesNotContain(sentence);
        assertThat(owner(ExampleRun.judged(true))).contains(sentence);
        String report = new String(ReportPage.of(ExampleRun.plain()), StandardCharsets.UTF_8);
        assertThat(report).contains(sentence, "not judged by the analyst");
    }

    private static String owner(RunResult run) {
        return new String(OwnerPage.of(run, 0, Letterhead.NONE), StandardCharsets.UTF_8);
    }

    @Test
    void theShortFormLeavesOutWhatTheFullOneShows() {
        String full = new String(ReportPage.of(ExampleRun.plain()), StandardCharsets.UTF_8);
        String brief =
                new String(ReportPage.of(ExampleRun.plain(), Form.SHORT, Letterhead.NONE), StandardCharsets.UTF_8);
        assertThat(full).contains("Uncertainty budget", "Narrow scans", "id=\"settings\"", "not recorded");
        assertThat(brief)
                .contains("For a methods paragraph", "not recorded", "SHA-256", "id=\"glance\"")
                .doesNotContain("Narrow scans", "id=\"settings\"");
        assertThat(brief.length()).isLessThan(full.length());
    }

    /** None of them may end an attribute, start an element, become a formula, a command or a path. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "<script>alert(1)</script>",
                "\"><img src=x onerror=alert(1)>",
                "=cmd()|'/c calc'!A1",
                "\u202egnp.evil\u202c",
                "../../../etc/passwd",
                "C:\\\\temp\\\\x",
                "\u05d0\u05d1\u05d2 \u0645\u0631\u062d\u0628\u0627",
                "}\\input{x}$ & % # ~ |",
                "LONG"
            })
    void hostileNamesDoNoHarmInAnyFormat(String given) throws IOException {
        String name = given.equals("LONG") ? "W".repeat(300) : given;
        RunResult run = ExampleRun.named(name, name, "f.txt");
        Map<String, byte[]> files = ResultFiles.contents(run);
        assertThat(files.keySet()).allMatch(path -> path.matches("(samples/)?[a-z0-9][a-z0-9.-]{0,80}"));
        files.forEach((path, bytes) -> {
            String text = new String(bytes, StandardCharsets.UTF_8);
            if (path.endsWith(".html")) {
                assertThat(text).doesNotContain("<script", "<img src=x", "\u202e");
            } else if (path.endsWith(".csv")) {
                assertThat(List.of(text.split("[\n,]", -1)))
                        .noneMatch(cell -> cell.startsWith("=") || cell.startsWith("@"));
            } else if (path.endsWith(".md")) {
                assertThat(text).doesNotContain("<script", "<img");
            } else if (path.endsWith(".tex")) {
                assertThat(text).doesNotContain("\\input");
            }
        });
        try (PDDocument document = Loader.loadPDF(files.get("report.pdf"))) {
            assertThat(document.getNumberOfPages()).isPositive();
        }
    }
}
