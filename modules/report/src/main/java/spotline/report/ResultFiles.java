package spotline.report;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import spotline.report.html.ReportPage;
import spotline.report.json.ResultJson;
import spotline.report.table.ChargeCsv;
import spotline.report.table.CompositionCsv;
import spotline.report.table.ElementsCsv;
import spotline.report.table.EnergiesCsv;
import spotline.report.table.FindingsCsv;
import spotline.report.table.IntensitiesCsv;
import spotline.report.table.PeaksCsv;
import spotline.report.table.SamplesCsv;
import spotline.report.table.StatesCsv;
import spotline.run.RunResult;

/**
 * Writes what came of a holder run.
 *
 * <p>All files are made before the first is written, and each is written beside its place and moved into it: nobody ever
 * reads half a file, and what a fault leaves is the earlier run's. Their names are fixed; nothing from the run's input
 * becomes part of a path.
 */
public final class ResultFiles {
    private ResultFiles() {}

    /**
     * Writes every result file into a directory, which is made where it is missing. Files of the same names are
     * replaced, others are left alone.
     *
     * <p>Errors: {@link IOException} when a file cannot be written.
     */
    public static void write(RunResult result, Path directory) throws IOException {
        Map<String, byte[]> files = contents(result);
        Files.createDirectories(directory);
        for (Map.Entry<String, byte[]> file : files.entrySet()) {
            WholeFile.write(directory.resolve(file.getKey()), file.getValue());
        }
    }

    /** The bytes of every result file by its name, in the order they are written. */
    public static Map<String, byte[]> contents(RunResult result) {
        Map<String, byte[]> files = new LinkedHashMap<>();
        files.put(CompositionCsv.FILE, CompositionCsv.of(result));
        files.put(CompositionCsv.VARIANTS_FILE, CompositionCsv.variants(result));
        files.put(SamplesCsv.FILE, SamplesCsv.of(result));
        files.put(StatesCsv.FILE, StatesCsv.of(result));
        files.put(ChargeCsv.FILE, ChargeCsv.of(result));
        files.put(EnergiesCsv.FILE, EnergiesCsv.of(result));
        files.put(ElementsCsv.FILE, ElementsCsv.of(result));
        files.put(IntensitiesCsv.FILE, IntensitiesCsv.of(result));
        files.put(PeaksCsv.FILE, PeaksCsv.of(result));
        files.put(FindingsCsv.FILE, FindingsCsv.of(result.findings()));
        files.put(ResultJson.FILE, ResultJson.of(result));
        files.put(ReportPage.FILE, ReportPage.of(result));
        return files;
    }
}
