package spotline.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import spotline.report.html.ReportPage;
import spotline.run.RunResult;

class ReportPageTest {
    private static final String HOSTILE =
            "</title><script>alert(1)</script><img src=x onerror=alert(2)>\u202E\u0007'\"&" + "x".repeat(300);

    private static String page(RunResult result) {
        return new String(ReportPage.of(result), StandardCharsets.UTF_8);
    }

    private static Document parse(String html) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
        factory.setAttribute(XMLConstants.ACCESS_EXTERNAL_DTD, "");
        return factory.newDocumentBuilder().parse(new ByteArrayInputStream(html.getBytes(StandardCharsets.UTF_8)));
    }

    private static List<Element> elements(Document document, String tag) {
        NodeList nodes = document.getElementsByTagName(tag);
        List<Element> found = new ArrayList<>();
        for (int i = 0; i < nodes.getLength(); i++) found.add((Element) nodes.item(i));
        return found;
    }

    @Test
    void isWellFormedAndNeedsNothingElse() throws Exception {
        String html = page(ExampleRun.plain());
        Document document = parse(html);
        assertThat(elements(document, "script")).isEmpty();
        assertThat(elements(document, "link")).isEmpty();
        assertThat(elements(document, "img")).isEmpty();
        assertThat(html).doesNotContain("url(http").doesNotContain("@import").doesNotContain("src=");
        for (Element anchor : elements(document, "a"))
            assertThat(anchor.getAttribute("href")).startsWith("#");
    }

    @Test
    void identifiersAreUniqueAndEveryReferenceHasItsTarget() throws Exception {
        String html = page(ExampleRun.plain());
        List<String> ids = new ArrayList<>();
        for (Element element : elements(parse(html), "*")) {
            if (element.hasAttribute("id")) ids.add(element.getAttribute("id"));
        }
        assertThat(ids).doesNotHaveDuplicates().hasSizeGreaterThan(20);
        Matcher references = Pattern.compile("(?:href=\"#|url\\(#)([^\"')]+)").matcher(html);
        int found = 0;
        while (references.find()) {
            assertThat(ids).contains(references.group(1));
            found++;
        }
        assertThat(found).isPositive();
    }

    @Test
    void hostileTextStaysText() throws Exception {
        String html = page(ExampleRun.named(HOSTILE, HOSTILE, HOSTILE));
        Document document = parse(html);
        assertThat(elements(document, "script")).isEmpty();
        assertThat(elements(document, "img")).isEmpty();
        assertThat(html).doesNotContain("\u202E").doesNotContain("\u0007");
        assertThat(elements(document, "h1").get(0).getTextContent()).contains("<script>alert(1)</script>");
    }

    @Test
    void saysWhatIsBelowDetectionAndWhatIsWithheldAndWhy() throws Exception {
        String text = parse(page(ExampleRun.plain())).getDocumentElement().getTextContent();
        assertThat(text)
                .contains("33.5", "< 0.62", "withheld")
                .contains("Withheld: No line of C was measured.")
                .contains("Withheld: Quantified lines were measured at two pass energies")
                .contains("hydrogen and helium")
                .contains("not recorded")
                .contains("There is no energy reference for this spot")
                .contains("certifies no safety")
                .contains("ab".repeat(32));
    }

    @Test
    void drawsASurveyEveryNarrowScanAndTheReferenceFit() throws Exception {
        Document document = parse(page(ExampleRun.plain()));
        List<String> described = elements(document, "div").stream()
                .filter(div -> div.getAttribute("role").equals("img"))
                .map(div -> div.getAttribute("aria-label"))
                .toList();
        assertThat(described).hasSize(7);
        assertThat(described)
                .filteredOn(d -> d.startsWith("Chemical-state plot"))
                .hasSize(1);
        assertThat(described).filteredOn(d -> d.startsWith("Survey spectrum")).hasSize(1);
        assertThat(described).filteredOn(d -> d.startsWith("Narrow scan")).hasSize(4);
        assertThat(described).filteredOn(d -> d.startsWith("Fit of C 1s")).hasSize(1);
    }

    /** A browser never cuts a drawing that fits a sheet, and moves its figure to the next sheet as a whole. */
    @Test
    void everyDrawingFitsASheetSoThatPrintingCutsNone() {
        String html = page(ExampleRun.plain());
        assertThat(html).contains("figure { margin: 8px 0 12px; break-inside: avoid; }");
        Matcher box =
                Pattern.compile("viewBox=['\"]0 0 ([0-9.]+) ([0-9.]+)['\"]").matcher(html);
        int drawings = 0;
        while (box.find()) {
            double share = Double.parseDouble(box.group(2)) / Double.parseDouble(box.group(1));
            // A4 less the margins of the style sheet is 184 mm by 269 mm; 30 mm of them for words.
            assertThat(184 * share).isLessThan(239);
            drawings++;
        }
        assertThat(drawings).isGreaterThan(6);
    }

    @Test
    void theWholeReportOfAFewSpotsIsSmall() {
        assertThat(ReportPage.of(ExampleRun.plain()).length).isLessThan(400_000);
    }
}
