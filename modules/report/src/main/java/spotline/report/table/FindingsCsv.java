package spotline.report.table;

import java.util.List;
import spotline.core.Finding;

/** A row a finding. */
public final class FindingsCsv {
    public static final String FILE = "findings.csv";

    private static final List<String> COLUMNS = List.of("severity", "rule", "spot", "sample", "spectrum", "message");

    private FindingsCsv() {}

    public static byte[] of(List<Finding> findings) {
        return table(findings).bytes();
    }

    public static String text(List<Finding> findings) {
        return table(findings).text();
    }

    public static CsvTable table(List<Finding> findings) {
        CsvTable table = new CsvTable(COLUMNS);
        for (Finding finding : findings) {
            table.add(new CsvTable.Row()
                    .text(finding.severity().word())
                    .text(finding.rule())
                    .text(finding.spot())
                    .text(finding.sample())
                    .text(finding.spectrum())
                    .text(finding.message()));
        }
        return table;
    }
}
