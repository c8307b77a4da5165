package spotline.report.table;

import java.util.List;
import spotline.report.facts.OwnSettings;
import spotline.run.RunResult;
import spotline.run.document.SpotException;

/** A row a setting in which a spot differs from its sample's family and the holder. */
public final class ExceptionsCsv {
    public static final String FILE = "exceptions.csv";

    private static final List<String> COLUMNS = List.of("sample", "spot", "setting", "own", "elsewhere");

    private ExceptionsCsv() {}

    public static byte[] of(RunResult result) {
        return table(result).bytes();
    }

    public static CsvTable table(RunResult result) {
        CsvTable table = new CsvTable(COLUMNS);
        for (SpotException e : OwnSettings.of(result).exceptions()) {
            table.add(new CsvTable.Row()
                    .text(result.plan().spot(e.spot()).map(s -> s.sampleName()).orElse(""))
                    .text(e.spot())
                    .text(OwnSettings.setting(e))
                    .text(OwnSettings.value(e.here()))
                    .text(OwnSettings.value(e.elsewhere())));
        }
        return table;
    }
}
