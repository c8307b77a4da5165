package spotline.report.table;

import java.util.List;
import spotline.report.facts.RuleFacts;
import spotline.run.RuleOutcome;

/** A row a rule: what it came to and the limits in force. */
public final class ChecksCsv {
    public static final String FILE = "checks.csv";

    private static final List<String> COLUMNS =
            List.of("number", "rule", "title", "severity", "state", "spots", "not_checked", "limits");

    private ChecksCsv() {}

    public static byte[] of(List<RuleOutcome> outcomes) {
        CsvTable table = new CsvTable(COLUMNS);
        for (RuleOutcome outcome : outcomes) {
            table.add(new CsvTable.Row()
                    .number(outcome.number())
                    .text(outcome.id())
                    .text(outcome.title())
                    .text(outcome.severity().word())
                    .text(outcome.state().word())
                    .text(String.join(" ", outcome.where()))
                    .text(RuleFacts.notChecked(outcome))
                    .text(RuleFacts.limits(outcome)));
        }
        return table.bytes();
    }
}
