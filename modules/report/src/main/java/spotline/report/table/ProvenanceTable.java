package spotline.report.table;

import java.util.List;
import java.util.Map;
import spotline.report.facts.MethodFacts;
import spotline.run.RunResult;

/** What the numbers rest on, a row a fact: program, settings' origin, sums of the files. No CSV of its own. */
public final class ProvenanceTable {
    private ProvenanceTable() {}

    public static CsvTable table(RunResult result) {
        CsvTable table = new CsvTable(List.of("what", "name", "value"));
        row(table, "program", "Spotline", result.programVersion());
        row(table, "program", "seed of random streams", Long.toString(result.seed()));
        for (String step : MethodFacts.steps(result)) row(table, "step", step, "");
        row(table, "holder run", "title", result.plan().file().title().orElse(""));
        row(
                table,
                "holder run",
                "date",
                result.plan().file().date().map(Object::toString).orElse(""));
        row(table, "holder run", "operator", result.plan().file().operator().orElse(""));
        for (Map.Entry<String, String> file : result.files().entrySet()) {
            row(table, "SHA-256 of file", file.getKey(), file.getValue());
        }
        return table;
    }

    private static void row(CsvTable table, String what, String name, String value) {
        table.add(new CsvTable.Row().text(what).text(name).text(value));
    }
}
