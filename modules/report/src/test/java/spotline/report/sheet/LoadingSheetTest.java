package spotline.report.sheet;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.TimeZone;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Document;
import spotline.core.Finding;
import spotline.holder.HolderPlan;
import spotline.holder.HolderTemplates;
import spotline.holder.PointMm;
import spotline.holder.check.Cautions;
import spotline.report.print.Frame;
import spotline.report.print.Mark;
import spotline.report.print.Paper;
import spotline.report.print.SheetPages;

class LoadingSheetTest {
    private static final String REVIEWED =
            ", \"localRiskReview\": { \"by\": \"R. Viewer\", \"date\": \"2026-05-11\", \"reference\": \"folder 12\" }";

    private static String text(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
        }
    }

    @Test
    void saysWhatLiesWhereWhoseItIsAndHowItIsMounted() throws IOException {
        String text = text(Sheets.sheet("flat-bar", Sheets.body(40, 10)).pdf(Paper.A4, Optional.empty()));
        assertThat(text)
                .contains(
                        "Load 7, <b>&amp; α½",
                        "2026-05-12",
                        "Holder: flat-bar",
                        "1 40.0, 10.0 A: liner chip (L-113) bearing team metal clip, grounded",
                        "2 49.0, 10.0 B: flake not known carbon tape, grounded tilt 60°",
                        "blank 49.0, 6.0 the mount alone not known carbon tape, grounded blank",
                        "hatched: keep free (grip hole)",
                        "triangle: cut corner of the holder, here",
                        "Invented for Spotline",
                        "page 1 of 2");
    }

    @Test
    void endsWithTheListToTickAndSign() throws IOException {
        String text = text(Sheets.sheet("flat-bar", Sheets.body(40, 10)).pdf(Paper.A4, Optional.empty()));
        assertThat(text)
                .contains(
                        "Before loading",
                        "Risks reviewed under the local rules, by (name): ____",
                        "Protection worn as the local risk review says",
                        "Clean gloves on",
                        "Holder cleaned",
                        "Contacts of the holder not touched",
                        "Tools cleaned between samples",
                        "Every label checked against this sheet",
                        "No loose grains",
                        "Nothing reaches over the edge",
                        "Prepared by",
                        "Checked by",
                        "Date and time",
                        Cautions.NOTICE);
        String busy = text(Sheets.sheet("temperature-stage", """
                "stage": { "setPoints": [ { "temperatureC": 180, "holdMinutes": 30 } ], "biasV": -20 },
                "spots": [ { "id": "1", "etchSteps": [ {} ], "sample": { "name": "dust", "form": "powder", "sensitivities": [ "air" ] } } ]""").pdf(Paper.A4, Optional.empty()));
        assertThat(busy)
                .contains(
                        "Loose powder removed, away from the other samples",
                        "Set-points entered as planned: 180 °C for 30 min",
                        "Bias agreed with those allowed to connect it: -20 V",
                        "vessel closed and tight",
                        "Ion gun: steps agreed",
                        "keep from air");
    }

    @Test
    void isNotReadyWithoutTheReviewOrWithAStop() throws IOException {
        String none = text(Sheets.sheet("flat-bar", Sheets.body(40, 10)).pdf(Paper.A4, Optional.empty()));
        assertThat(none).contains("NOT READY TO LOAD", "No local risk review is on record");
        String stop =
                text(Sheets.sheet("flat-bar", Sheets.body(40, 1) + REVIEWED).pdf(Paper.A4, Optional.empty()));
        assertThat(stop)
                .contains("NOT READY TO LOAD", "put right before loading", "STOP Specimen A (liner chip) overhangs");
        assertThat(stop).doesNotContain("No local risk review");
        String ready =
                text(Sheets.sheet("flat-bar", Sheets.body(40, 10) + REVIEWED).pdf(Paper.A4, Optional.empty()));
        assertThat(ready)
                .contains("CHECKED, NOT YET SIGNED", "R. Viewer, 2026-05-11 (folder 12), as the record says")
                .doesNotContain("NOT READY");
    }

    @Test
    void whatThePlanSilencesIsToldAsSilencedWithItsReason() throws IOException {
        HolderPlan plan = Sheets.plan(Sheets.body(40, 10)
                + ", \"silence\": [ { \"rule\": \"own-rule\", \"reason\": \"measured and found harmless\" } ]");
        LoadingSheet sheet = LoadingSheet.of(
                plan,
                Optional.of(HolderTemplates.shipped("flat-bar")),
                List.of(Finding.stop("own-rule", "Something stands out."), Finding.note("other", "Seen in passing.")));
        String text = text(sheet.pdf(Paper.LETTER, Optional.empty()));
        assertThat(text)
                .contains("silenced own-rule: Something stands out. Silenced: measured and found harmless")
                .contains("note Seen in passing.")
                .doesNotContain("put right before loading");
    }

    @ParameterizedTest
    @EnumSource(Paper.class)
    void theSameInputGivesTheSameBytesWithoutATime(Paper paper) throws IOException {
        byte[] first = Sheets.sheet("flat-bar", Sheets.body(40, 10)).pdf(paper, Optional.empty());
        TimeZone zone = TimeZone.getDefault();
        byte[] second;
        try {
            TimeZone.setDefault(TimeZone.getTimeZone("America/Caracas"));
            second = Sheets.sheet("flat-bar", Sheets.body(40, 10)).pdf(paper, Optional.empty());
        } finally {
            TimeZone.setDefault(zone);
        }
        assertThat(second).isEqualTo(first);
        try (PDDocument document = Loader.loadPDF(first)) {
            assertThat(document.getDocumentInformation().getCreationDate()).isNull();
            assertThat(document.getDocumentInformation().getModificationDate()).isNull();
            assertThat(document.getDocumentCatalog().getMetadata()).isNull();
            assertThat(document.getDocumentInformation().getTitle()).startsWith("Loading sheet: Load 7");
        }
    }

    @Test
    void aTimeThatIsGivenIsWrittenAndNothingElseChanges() throws IOException {
        Instant made = LoadingSheet.sourceDate("1700000000").orElseThrow();
        byte[] pdf = Sheets.sheet("flat-bar", Sheets.body(40, 10)).pdf(Paper.A4, Optional.of(made));
        assertThat(pdf).isEqualTo(Sheets.sheet("flat-bar", Sheets.body(40, 10)).pdf(Paper.A4, Optional.of(made)));
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertThat(document.getDocumentInformation().getCreationDate().toInstant())
                    .isEqualTo(made);
        }
        assertThat(text(pdf))
                .isEqualTo(text(Sheets.sheet("flat-bar", Sheets.body(40, 10)).pdf(Paper.A4, Optional.empty())));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "now", "-1", "1e9", "99999999999999999", "9999999999999999999999"})
    void aSourceDateThatIsNoneIsNone(String text) {
        assertThat(LoadingSheet.sourceDate(text)).isEmpty();
    }

    /** Vectors only, and no font of the machine's own. */
    @Test
    void embedsItsTypefaceAndHoldsNoPicture() throws IOException {
        byte[] pdf = Sheets.sheet("flat-bar", Sheets.body(40, 10)).pdf(Paper.A4, Optional.empty());
        assertThat(pdf.length).isLessThan(150_000);
        try (PDDocument document = Loader.loadPDF(pdf)) {
            for (PDPage page : document.getPages()) {
                PDResources resources = page.getResources();
                assertThat(resources.getXObjectNames()).isEmpty();
                for (COSName name : resources.getFontNames()) {
                    PDFont font = resources.getFont(name);
                    assertThat(font).isInstanceOf(PDType0Font.class);
                    assertThat(font.isEmbedded()).isTrue();
                }
            }
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 20, 60, 400})
    void nothingIsPrintedBesideWhatBothPapersHave(int count) {
        String body = "\"title\": \"" + "Tirelessly-unbroken".repeat(30) + "\", " + Sheets.spots(count, 112, 20);
        for (SheetPages pages : List.of(
                Sheets.pages(Sheets.plan(body), Optional.of(HolderTemplates.shipped("flat-bar"))),
                Sheets.pages(Sheets.plan(body), Optional.empty()),
                Sheets.pages(Sheets.plan(Sheets.spots(count, 900, 30)), Optional.of(SheetScaleTest.plate(900, 30))))) {
            Frame frame = Frame.of(Paper.A4, pages.landscape());
            for (List<Mark> marks : pages.marks()) {
                for (Mark mark : marks) inside(mark, frame);
            }
        }
    }

    private static void inside(Mark mark, Frame frame) {
        if (mark instanceof Mark.Words words) {
            inside(words.x(), words.y(), frame, mark);
            inside(words.x() + words.widthMm(), words.y() - words.sizeMm(), frame, mark);
        } else if (mark instanceof Mark.Path path) {
            for (PointMm corner : path.corners()) inside(corner.x(), corner.y(), frame, mark);
        }
    }

    private static void inside(double x, double y, Frame frame, Mark mark) {
        assertThat(x).as("%s", mark).isBetween(-0.01, frame.widthMm() + 0.01);
        assertThat(y).as("%s", mark).isBetween(-0.51, frame.heightMm() + 0.01);
    }

    /** ISO 216 and Letter: what is printed stands in the middle with 12 mm or more around it on either paper. */
    @ParameterizedTest
    @EnumSource(Paper.class)
    void theFrameStandsInTheMiddleOfEitherPaper(Paper paper) {
        for (boolean landscape : new boolean[] {false, true}) {
            Frame frame = Frame.of(paper, landscape);
            assertThat(frame.leftMm()).isGreaterThanOrEqualTo(12);
            assertThat(frame.topMm()).isGreaterThanOrEqualTo(12);
            assertThat(2 * frame.leftMm() + frame.widthMm()).isCloseTo(frame.paperWidthMm(), within(1e-9));
        }
    }

    @Test
    void theSvgIsWellFormedAndInMillimetres() throws Exception {
        List<String> pages = Sheets.sheet("flat-bar", Sheets.body(40, 10)).svg(Paper.A4);
        assertThat(pages).hasSize(2);
        for (String page : pages) {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
            factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
            Document document = factory.newDocumentBuilder().parse(new ByteArrayInputStream(page.getBytes(UTF_8)));
            assertThat(document.getDocumentElement().getAttribute("width")).isEqualTo("210mm");
            assertThat(document.getDocumentElement().getAttribute("viewBox")).isEqualTo("0 0 210 297");
        }
        // derived: the frame is 186 mm wide, the bar 112 mm, so that it reaches from 37 to 149 mm
        assertThat(pages.get(0)).contains("<path d=\"M37 ", "L149 ").contains("Load 7, &lt;b&gt;&amp;amp; α½");
        assertThat(pages)
                .isEqualTo(Sheets.sheet("flat-bar", Sheets.body(40, 10)).svg(Paper.A4));
    }

    @Test
    void textThatNoTypefaceCanShowIsReplacedAndNotDropped() throws IOException {
        String body = "\"title\": \"a\\u0007b\\uD83E\\uDDEA \\u6F22 \\uD800 c\\u2028d\", \"spots\": []";
        assertThat(text(Sheets.sheet("flat-bar", body).pdf(Paper.A4, Optional.empty())))
                .contains("a b\uFFFD \uFFFD \uFFFD c d");
        assertThat(Sheets.sheet("flat-bar", body).svg(Paper.A4).get(0)).contains("a b\uFFFD \uFFFD");
    }

    @Test
    void isReadFromAFileWithTheHolderItNames(@TempDir Path folder) throws Exception {
        Files.writeString(
                folder.resolve("h.json"),
                "{ \"format\": \"spotline-holder-run/1\", \"holder\": { \"template\": \"rotating-stage\" }, "
                        + Sheets.body(10, 15) + " }");
        LoadingSheet sheet = LoadingSheet.read(folder.resolve("h.json"));
        assertThat(text(sheet.pdf(Paper.A4, Optional.empty()))).contains("Holder: rotating-stage");
    }
}
