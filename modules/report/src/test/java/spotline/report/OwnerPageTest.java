package spotline.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import spotline.core.Finding;
import spotline.core.Severity;
import spotline.report.html.Letterhead;
import spotline.report.html.OwnerPage;
import spotline.report.plain.PlainFinding;
import spotline.report.plain.PlainState;
import spotline.run.RunResult;
import spotline.run.findings.Rule;
import spotline.run.findings.RuleBook;

/** The page of somebody who has never seen a spectrum. */
class OwnerPageTest {
    /** Words that need a training to be understood. */
    private static final List<String> JARGON = List.of(
            "at.%",
            "chi-square",
            "deviance",
            "narrow scan",
            "pass energ",
            "transmission",
            "fwhm",
            "shirley",
            "sensitivity factor",
            "referenced",
            "charge refer",
            "survey",
            "spot ",
            "potentials",
            "doublet",
            "residual",
            "cross-calibration",
            "critical level",
            "detection limit",
            "adventitious",
            "intensit",
            "declared",
            " ev ");

    private static Element body(RunResult result, int index) throws Exception {
        return DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new ByteArrayInputStream(OwnerPage.of(result, index, Letterhead.NONE)))
                .getDocumentElement();
    }

    /** All text but that inside drawings and the style. */
    private static String words(Element element) {
        StringBuilder text = new StringBuilder();
        NodeList children = element.getChildNodes();
        for (int i = 0; i < children.getLength(); i++) {
            if (children.item(i) instanceof Element child) {
                if (!List.of("svg", "style", "head").contains(child.getTagName()))
                    text.append(words(child)).append(' ');
            } else {
                text.append(children.item(i).getTextContent());
            }
        }
        return text.toString();
    }

    private static RunResult with(RunResult run, List<Finding> more) {
        List<Finding> findings = new ArrayList<>(run.findings());
        findings.addAll(more);
        return new RunResult(
                run.plan(),
                run.spots(),
                run.samples(),
                findings,
                run.treatments(),
                run.files(),
                run.programVersion(),
                run.seed());
    }

    @Test
    void everyRuleHasASentenceOfItsOwn() {
        List<String> without = new ArrayList<>();
        for (Rule rule : RuleBook.standard().rules()) {
            if (rule.severity() == Severity.NOTE) continue;
            List<String> rules = new ArrayList<>(rule.adopted());
            rules.add(rule.id());
            rules.stream().filter(r -> PlainFinding.ofRule(r).isEmpty()).forEach(without::add);
        }
        assertThat(without).isEmpty();
    }

    @Test
    void noSentenceHoldsAWordOfTheTrade() throws Exception {
        RunResult run = ExampleRun.judged(true);
        List<Finding> all = new ArrayList<>();
        for (Rule rule : RuleBook.standard().rules()) {
            all.add(Finding.caution(rule.id(), "C 1s: reduced chi-square 3.").at("1", "liner chip"));
        }
        all.add(Finding.caution("a-rule-of-tomorrow", "deviance 12").at("1", "liner chip"));
        for (int i = 0; i < 2; i++) {
            String words = words(body(with(run, all), i)).toLowerCase(Locale.ROOT);
            for (String jargon : JARGON) assertThat(words).doesNotContain(jargon);
        }
        assertThat(words(body(with(run, all), 0)))
                .contains("fingerprints")
                .contains("a doubt that only the analyst can judge");
    }

    @Test
    void theFormsOfAnElementStandThere() throws Exception {
        String words = words(body(ExampleRun.plain(), 0));
        assertThat(words).contains("How the atoms are bound", "CF2: with two fluorine atoms, as in PTFE");
        assertThat(PlainState.meaning("O-C=O or carbonate")).contains("acids", "chalk");
        assertThat(PlainState.meaning("an invented state")).isEmpty();
    }

    @Test
    void aCompositionThatIsHeldBackShowsNoRow() throws Exception {
        String words = words(body(ExampleRun.plain(), 1));
        assertThat(words)
                .contains("The composition is held back")
                .contains("instrument settings that cannot be compared")
                .doesNotContain("not found");
    }

    @Test
    void aStopIsSaidBeforeTheNumbers() throws Exception {
        Finding stop = Finding.stop("no-clearance", "x").at("1", "liner chip");
        String words = words(body(with(ExampleRun.plain(), List.of(stop)), 0));
        assertThat(words.indexOf("Do not use these numbers yet")).isBetween(0, words.indexOf("carbon (C)"));
        assertThat(words).contains("so near a clip or an edge");
    }
}
