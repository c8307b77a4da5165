package spotline.report;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.Executor;
import java.util.function.Supplier;
import spotline.report.html.OwnerPage;
import spotline.report.html.ReportPage;
import spotline.report.json.ResultJson;
import spotline.report.paper.PagePdf;
import spotline.report.print.Typeface;
import spotline.report.table.ChargeCsv;
import spotline.report.table.ChecksCsv;
import spotline.report.table.CompositionCsv;
import spotline.report.table.CompositionLatex;
import spotline.report.table.CompositionMarkdown;
import spotline.report.table.ElementsCsv;
import spotline.report.table.EnergiesCsv;
import spotline.report.table.ExceptionsCsv;
import spotline.report.table.FindingsCsv;
import spotline.report.table.IntensitiesCsv;
import spotline.report.table.PeaksCsv;
import spotline.report.table.SampleCsv;
import spotline.report.table.SamplesCsv;
import spotline.report.table.StatesCsv;
import spotline.report.workbook.CompositionWorkbook;
import spotline.run.RunResult;
import spotline.run.SampleComposition;

/**
 * Writes what came of a holder run.
 *
 * <p>All files are made before the first is written, and each is written beside its place and moved into it: nobody ever
 * reads half a file, and what a fault leaves is the earlier run's. Names are fixed; of the run's input only a sample's name
 * becomes part of one, with nothing left in it but letters, digits and hyphens.
 */
public final class ResultFiles {
    /** The folder of the samples' own pages and tables. */
    public static final String SAMPLES = "samples";

    private ResultFiles() {}

    /**
     * Writes every result file into a directory, which is made where it is missing. Files of the same names are
     * replaced, others are left alone, but for pages of samples that the earlier result in the directory names and this
     * one does not.
     *
     * <p>Errors: {@link IOException} when a file cannot be written.
     */
    public static void write(RunResult result, Path directory) throws IOException {
        write(contents(result), directory);
    }

    /** The same of bytes made before. */
    public static void write(Map<String, byte[]> files, Path directory) throws IOException {
        Files.createDirectories(directory.resolve(SAMPLES));
        for (String page : FormerPages.of(directory.resolve(ResultJson.FILE))) {
            if (!files.containsKey(page)) Files.deleteIfExists(directory.resolve(page));
        }
        for (Map.Entry<String, byte[]> file : files.entrySet()) {
            WholeFile.write(directory.resolve(file.getKey()), file.getValue());
        }
    }

    /** The bytes of every result file by its name. */
    public static Map<String, byte[]> contents(RunResult result) {
        return contents(result, ReportOptions.DEFAULT, Runnable::run);
    }

    /**
     * The same in the order they are written.
     *
     * @param executor draws up files beside one another; their bytes do not depend on it
     */
    public static Map<String, byte[]> contents(RunResult result, ReportOptions options, Executor executor) {
        // The longest first: the report, and the typeface that its paper form waits for.
        CompletableFuture<byte[]> report =
                made(executor, () -> ReportPage.of(result, options.form(), options.letterhead()));
        CompletableFuture<Typeface> typeface = made(executor, Typeface::new);
        CompletableFuture<byte[]> paper =
                report.thenCombineAsync(typeface, (html, type) -> PagePdf.of(html, type, options.made()), executor);
        Map<String, CompletableFuture<byte[]>> files = new LinkedHashMap<>();
        files.put(CompositionWorkbook.FILE, made(executor, () -> CompositionWorkbook.of(result, options.made())));
        files.put(ResultJson.FILE, made(executor, () -> ResultJson.of(result)));
        files.put(CompositionCsv.FILE, made(executor, () -> CompositionCsv.of(result)));
        files.put(CompositionCsv.VARIANTS_FILE, made(executor, () -> CompositionCsv.variants(result)));
        files.put(SamplesCsv.FILE, made(executor, () -> SamplesCsv.of(result)));
        files.put(ExceptionsCsv.FILE, made(executor, () -> ExceptionsCsv.of(result)));
        files.put(StatesCsv.FILE, made(executor, () -> StatesCsv.of(result)));
        files.put(ChargeCsv.FILE, made(executor, () -> ChargeCsv.of(result)));
        files.put(EnergiesCsv.FILE, made(executor, () -> EnergiesCsv.of(result)));
        files.put(ElementsCsv.FILE, made(executor, () -> ElementsCsv.of(result)));
        files.put(IntensitiesCsv.FILE, made(executor, () -> IntensitiesCsv.of(result)));
        files.put(PeaksCsv.FILE, made(executor, () -> PeaksCsv.of(result)));
        files.put(FindingsCsv.FILE, made(executor, () -> FindingsCsv.of(result.findings())));
        files.put(ChecksCsv.FILE, made(executor, () -> ChecksCsv.of(result.ruleStates())));
        files.put(CompositionMarkdown.FILE, made(executor, () -> CompositionMarkdown.of(result)));
        files.put(CompositionLatex.FILE, made(executor, () -> CompositionLatex.of(result)));
        samples(result, options, executor, typeface, files);
        files.put(ReportPage.FILE, report);
        files.put(ReportPage.PDF_FILE, paper);
        Map<String, byte[]> contents = new LinkedHashMap<>();
        files.forEach((name, bytes) -> contents.put(name, joined(bytes)));
        return contents;
    }

    private static void samples(
            RunResult result,
            ReportOptions options,
            Executor executor,
            CompletableFuture<Typeface> typeface,
            Map<String, CompletableFuture<byte[]>> files) {
        List<String> names = SampleFileNames.of(
                result.samples().stream().map(SampleComposition::sample).toList());
        for (int i = 0; i < names.size(); i++) {
            int index = i;
            String path = SAMPLES + "/" + names.get(i);
            CompletableFuture<byte[]> page = made(executor, () -> OwnerPage.of(result, index, options.letterhead()));
            files.put(
                    path + ".csv",
                    made(executor, () -> SampleCsv.of(result, result.samples().get(index))));
            files.put(path + ".html", page);
            files.put(
                    path + ".pdf",
                    page.thenCombineAsync(typeface, (html, type) -> PagePdf.of(html, type, options.made()), executor));
        }
    }

    private static <T> CompletableFuture<T> made(Executor executor, Supplier<T> supplier) {
        return CompletableFuture.supplyAsync(supplier, executor);
    }

    /** What a file's own making threw, as it was thrown. */
    private static byte[] joined(CompletableFuture<byte[]> file) {
        try {
            return file.join();
        } catch (CompletionException e) {
            if (e.getCause() instanceof RuntimeException cause) throw cause;
            throw e;
        }
    }
}
