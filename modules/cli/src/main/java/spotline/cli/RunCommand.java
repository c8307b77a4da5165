package spotline.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import spotline.core.Finding;
import spotline.core.Severity;
import spotline.reference.ReferenceData;
import spotline.report.ReportOptions;
import spotline.report.ResultFiles;
import spotline.report.TemplateFolder;
import spotline.report.html.Form;
import spotline.report.html.Letterhead;
import spotline.report.sheet.LoadingSheet;
import spotline.report.text.DisplayNumber;
import spotline.run.HolderRun;
import spotline.run.HolderRunLoader;
import spotline.run.RunPipeline;
import spotline.run.RunResult;
import spotline.run.SampleComposition;
import spotline.run.findings.RuleBook;

@Command(
        name = "run",
        mixinStandardHelpOptions = true,
        description = "Treats every spot of a holder run and writes tables and report.",
        footer = {"", "Example: spotline run holder.json --out results --threads 2"})
final class RunCommand implements Callable<Integer> {
    private final CommandEnvironment environment;

    @Parameters(index = "0", paramLabel = "HOLDER.json", description = "the holder run")
    @SuppressWarnings("NullAway.Init")
    private Path holder;

    @Option(names = "--out", paramLabel = "DIR", required = true, description = "directory the results are written to")
    @SuppressWarnings("NullAway.Init")
    private Path out;

    @Option(
            names = "--report",
            paramLabel = "short|full",
            description = "how much report.html and report.pdf tell (default: full)")
    private Form form = Form.FULL;

    @Option(
            names = "--template",
            paramLabel = "DIR",
            description = "folder with the lab's name.txt, contact.txt, footer.txt, mark.png or mark.jpg, style.css")
    private @Nullable Path template;

    @Mixin
    private final TreatmentOptions options = new TreatmentOptions();

    RunCommand(CommandEnvironment environment) {
        this.environment = environment;
    }

    @Override
    public Integer call() throws Exception {
        RunResult result;
        ReportOptions report = new ReportOptions(
                form,
                template == null ? Letterhead.NONE : TemplateFolder.read(template),
                Optional.ofNullable(System.getenv("SOURCE_DATE_EPOCH")).flatMap(LoadingSheet::sourceDate));
        try (ProgressLine progress = new ProgressLine(environment)) {
            ReferenceData reference = ReferenceData.shipped();
            HolderRun run = new HolderRunLoader(reference).load(holder, options.treatment(), options.seed(), progress);
            result = new RunPipeline(reference, ProgramVersion.text(), RuleBook.standard())
                    .treat(run, options.threads(), progress);
            write(result, report);
        }
        print(result);
        return result.stopped() ? 1 : 0;
    }

    private void write(RunResult result, ReportOptions report) throws IOException {
        ExecutorService pool = Executors.newFixedThreadPool(options.threads());
        try {
            ResultFiles.write(result, out, report, pool);
        } finally {
            pool.shutdownNow();
        }
    }

    private void print(RunResult result) {
        PrintWriter to = environment.out();
        result.plan().file().title().ifPresent(to::println);
        to.println();
        TextTable table = new TextTable("sample", "spots", "composition, at.% ± standard uncertainty");
        for (SampleComposition sample : result.samples()) {
            StringBuilder cells = new StringBuilder();
            for (SampleComposition.Mean mean : sample.elements()) {
                if (cells.length() > 0) cells.append(",  ");
                cells.append(mean.element()).append(' ').append(value(mean));
            }
            table.row(sample.sample(), String.join(" ", sample.spots()), cells.toString());
        }
        table.print(to);
        to.println();
        for (Finding f : result.findings()) {
            if (f.severity() == Severity.NOTE) continue;
            String where = f.spot().isEmpty() ? "" : " spot " + f.spot() + ":";
            to.println(f.severity().word() + ":" + where + " " + f.message());
        }
        long notes = result.findings().stream()
                .filter(f -> f.severity() == Severity.NOTE)
                .count();
        to.println(notes + " notes in findings.csv. Elements listed sum to 100; H and He are not seen.");
        to.println("Report: " + out.resolve("report.html"));
    }

    private static String value(SampleComposition.Mean mean) {
        if (mean.atomicPercent().isEmpty()) return "-";
        return DisplayNumber.of(mean.atomicPercent().getAsDouble(), mean.standardUncertainty(), 1)
                .text();
    }
}
