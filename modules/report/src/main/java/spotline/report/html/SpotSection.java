package spotline.report.html;

import java.util.List;
import java.util.stream.Collectors;
import spotline.core.Finding;
import spotline.core.Severity;
import spotline.report.facts.OwnSettings;
import spotline.report.text.Shown;
import spotline.run.RunResult;
import spotline.run.SpotResult;

/** One spot: numbers first, then what they rest on. */
final class SpotSection {
    private SpotSection() {}

    static String anchor(RunResult result, SpotResult spot) {
        return "spot-" + (result.spots().indexOf(spot) + 1);
    }

    /** @param name begins every identifier in the spot's figures */
    static void write(Markup page, RunResult result, SpotResult spot, String name, Form form) {
        page.open("article", "class", "spot", "id", anchor(result, spot));
        page.open("h3").text("Spot " + spot.spot());
        String position = SampleSection.position(result.plan().spot(spot.spot()));
        if (!position.isEmpty()) page.element("span", " at " + position, "class", "where");
        page.end();
        AtAGlance.notes(page, OwnSettings.of(result), List.of(spot.spot()));
        CompositionBlock.write(page, spot);
        StatesBlock.write(page, spot);
        ChargeBlock.write(page, spot, name + "c", form);
        findings(page, result, spot);
        SpectraBlock.survey(page, spot, name + "s", form);
        if (form == Form.SHORT) {
            EvidenceBlock.intensities(page, spot);
            FitsBlock.brief(page, spot);
            page.end();
            return;
        }
        BudgetBlock.write(page, spot);
        SpectraBlock.narrow(page, spot, name + "n");
        EvidenceBlock.write(page, spot);
        FitsBlock.write(page, spot, name + "p");
        page.end();
    }

    /** Those of the run that name the spot: what the analyst silenced is said so there. */
    private static void findings(Markup page, RunResult result, SpotResult spot) {
        List<Finding> here = result.findings().stream()
                .filter(f -> f.spot().equals(spot.spot()))
                .toList();
        page.element("h4", "Findings");
        if (here.isEmpty()) {
            page.element("p", "None.", "class", "note").raw("\n");
            return;
        }
        page.open("ul", "class", "findings");
        for (Finding finding : here) {
            page.open("li");
            severity(page, finding.severity());
            page.text(" " + Shown.prose(finding.message()));
            String source = List.of(finding.spectrum(), finding.rule()).stream()
                    .filter(s -> !s.isEmpty())
                    .collect(Collectors.joining(" \u00b7 "));
            page.element("span", " " + source, "class", "source").close();
        }
        page.end();
    }

    static void severity(Markup page, Severity severity) {
        page.element("span", severity.word(), "class", "severity " + severity.word());
    }
}
