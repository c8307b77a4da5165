package spotline.report.html;

import java.util.List;
import java.util.Locale;
import spotline.core.Finding;
import spotline.core.Severity;
import spotline.report.text.Shown;

/** Every finding of the run. */
final class FindingsSection {
    private FindingsSection() {}

    static void write(Markup page, List<Finding> findings) {
        page.open("section", "id", "findings").element("h2", "Findings");
        page.element(
                "p",
                String.format(
                        Locale.ROOT,
                        "%d stop, %d caution, %d note. A stop withholds the number it concerns.",
                        count(findings, Severity.STOP),
                        count(findings, Severity.CAUTION),
                        count(findings, Severity.NOTE)));
        if (!findings.isEmpty()) {
            Tables.begin(page, "findings", List.of("Severity", "Spot", "Sample", "Finding", "Spectrum", "Rule"));
            for (Finding finding : findings) {
                page.open("tr").open("td");
                SpotSection.severity(page, finding.severity());
                page.close();
                Tables.cell(page, finding.spot());
                Tables.cell(page, finding.sample());
                Tables.cell(page, Shown.prose(finding.message()));
                Tables.cell(page, finding.spectrum());
                page.element("td", finding.rule(), "class", "source").end();
            }
            Tables.end(page);
        }
        page.end();
    }

    private static long count(List<Finding> findings, Severity severity) {
        return findings.stream().filter(f -> f.severity() == severity).count();
    }
}
