package spotline.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import spotline.core.Finding;
import spotline.core.Place;
import spotline.core.ReadException;
import spotline.core.Severity;
import spotline.report.ReportOptions;
import spotline.report.ResultFiles;
import spotline.report.TemplateFolder;
import spotline.report.facts.OwnSettings;
import spotline.report.html.Form;
import spotline.report.html.Letterhead;
import spotline.report.sheet.LoadingSheet;
import spotline.report.table.SummaryCsv;
import spotline.report.text.DisplayNumber;
import spotline.report.text.Shown;
import spotline.run.Led;
import spotline.run.RunResult;
import spotline.run.SampleComposition;
import spotline.run.project.Project;
import spotline.run.project.ProjectSession;
import spotline.run.project.RawFiles;
import spotline.run.project.Stamp;
import spotline.run.project.Writer;

@Command(
        name = "run",
        mixinStandardHelpOptions = true,
        description =
                "Treats every spot of a holder run and writes tables and report; of several, each for itself, and a"
                        + " summary.",
        footer = {
            "",
            "Example: spotline run holder.json --out results --threads 2",
            "         spotline run holder.json --out results --project holder.spotline",
            "         spotline run holder.spotline --out results-again",
            "         spotline run load-1.json load-2.json --out results"
        })
final class RunCommand implements Callable<Integer> {
    private final CommandEnvironment environment;

    @Parameters(arity = "1..*", paramLabel = "HOLDER.json", description = "the holder run, or a project; or several")
    @SuppressWarnings("NullAway.Init")
    private List<Path> holders;

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

    @Option(
            names = "--project",
            paramLabel = "FILE.spotline",
            description = "save the run as a project: settings, history, results and raw files in one file")
    private @Nullable Path project;

    @Option(names = "--raw-outside", description = "keep only paths and sums of the raw files in the project")
    private boolean rawOutside;

    @Mixin
    private final TreatmentOptions options = new TreatmentOptions();

    RunCommand(CommandEnvironment environment) {
        this.environment = environment;
    }

    @Override
    public Integer call() throws Exception {
        if (holders.size() > 1) return many();
        RunResult result;
        ReportOptions report = new ReportOptions(
                form, template == null ? Letterhead.NONE : TemplateFolder.read(template), sourceDate());
        try (ProgressLine progress = new ProgressLine(environment);
                RunInput input = RunInput.open(holders.get(0), options)) {
            if (project != null) mayBeReplaced(project, input);
            result = input.treat(options.threads(), progress);
            Map<String, byte[]> files = contents(result, report);
            ResultFiles.write(files, out);
            if (project != null) save(project, input, files);
        }
        print(result);
        if (project != null) environment.out().println("Project: " + project);
        return result.stopped() ? 1 : 0;
    }

    private Map<String, byte[]> contents(RunResult result, ReportOptions report) {
        ExecutorService pool = Executors.newFixedThreadPool(options.threads());
        try {
            return ResultFiles.contents(result, report, pool);
        } finally {
            pool.shutdownNow();
        }
    }

    private static Optional<Instant> sourceDate() {
        return Optional.ofNullable(System.getenv("SOURCE_DATE_EPOCH")).flatMap(LoadingSheet::sourceDate);
    }

    /** A project in which somebody came to another document is no place for this run. */
    private void mayBeReplaced(Path file, RunInput input) throws ReadException, IOException {
        Path holder = holders.get(0);
        if (!Files.exists(file) || (Files.exists(holder) && Files.isSameFile(file, holder))) return;
        String ours = input.history(options).document().hash();
        boolean edited;
        try (Project standing = Project.open(file)) {
            edited = standing.history().lastDone().isPresent()
                    && !standing.document().hash().equals(ours);
        }
        if (edited) {
            throw new ReadException(
                    Place.file(file.toString()),
                    "a project with edits of its own",
                    "another name for the new project, or this project as the run to treat");
        }
    }

    private void save(Path file, RunInput input, Map<String, byte[]> results) throws ReadException, IOException {
        OffsetDateTime now = OffsetDateTime.now(ZoneId.systemDefault()).truncatedTo(ChronoUnit.SECONDS);
        Optional<Instant> sourceDate = sourceDate();
        Stamp stamp = new Stamp(ProgramVersion.text(), now, sourceDate);
        Writer writer = new Writer(
                System.getProperty("user.name", "somebody"),
                host(),
                ProcessHandle.current().pid(),
                now);
        ProjectSession.create(
                        file,
                        input.history(options)
                                .reported(Optional.of(sourceDate
                                        .map(s -> s.atOffset(ZoneOffset.UTC))
                                        .orElse(now))),
                        input.source().inputs(),
                        rawOutside ? RawFiles.OUTSIDE : RawFiles.INSIDE,
                        results,
                        writer,
                        stamp)
                .close();
    }

    private static String host() {
        return Optional.ofNullable(System.getenv("HOSTNAME"))
                .or(() -> Optional.ofNullable(System.getenv("COMPUTERNAME")))
                .orElse("this machine");
    }

    private int many() throws IOException, InterruptedException {
        if (project != null) throw new IOException("--project takes one holder run, " + holders.size() + " were given");
        List<ManyRuns.Done> all;
        try (ProgressLine progress = new ProgressLine(environment)) {
            all = new ManyRuns(options, out).treat(holders, progress);
        }
        PrintWriter to = environment.out();
        TextTable table = new TextTable("run", "samples", "outcome");
        for (ManyRuns.Done done : all) {
            String samples = done.summary().map(s -> "" + s.samples().size()).orElse("-");
            String outcome = done.summary()
                    .map(s -> s.stopped() ? "a stop was found" : "done")
                    .orElse("not treated");
            table.row(done.name(), samples, outcome);
        }
        table.print(to);
        boolean none = all.stream().allMatch(d -> d.summary().isEmpty());
        if (!none) {
            to.println("Summary: " + out.resolve(SummaryCsv.FILE) + ", control samples: "
                    + out.resolve(SummaryCsv.CONTROL_FILE));
        }
        boolean whole = true;
        for (ManyRuns.Done done : all) {
            done.fault().ifPresent(f -> CommandFailure.report(f, environment.err(), options.debug()));
            whole &= done.summary().isPresent() && !done.summary().get().stopped();
        }
        if (none) return 2;
        return whole ? 0 : 1;
    }

    private void print(RunResult result) {
        PrintWriter to = environment.out();
        result.plan().file().title().map(TerminalText::clean).ifPresent(to::println);
        to.println();
        OwnSettings own = OwnSettings.of(result);
        TextTable table = new TextTable("sample", "spots", "composition, at.% ± standard uncertainty");
        for (SampleComposition sample : result.samples()) {
            StringBuilder cells = new StringBuilder();
            for (SampleComposition.Mean mean : sample.elements()) {
                if (cells.length() > 0) cells.append(",  ");
                cells.append(mean.element()).append(' ').append(value(mean));
            }
            table.row(Shown.label(sample.sample()), own.marked(sample.spots(), " "), cells.toString());
        }
        table.print(to);
        to.println();
        for (SampleComposition sample : result.samples()) {
            own.notes(sample.spots()).forEach(note -> to.println(TerminalText.clean(note)));
        }
        Set<Finding> explained = new HashSet<>();
        result.led().forEach(led -> explained.addAll(led.followers()));
        for (Finding f : result.findings()) {
            if (f.severity() == Severity.NOTE || explained.contains(f)) continue;
            to.println(line(f));
            for (Led led : result.led()) {
                if (led.leader().equals(f))
                    led.followers().forEach(follower -> to.println("  explains " + line(follower)));
            }
        }
        long notes = result.findings().stream()
                .filter(f -> f.severity() == Severity.NOTE)
                .count();
        to.println(notes + " notes in findings.csv. Elements listed sum to 100; H and He are not seen.");
        to.println("Report: " + out.resolve("report.html"));
    }

    private static String line(Finding f) {
        String where = f.spot().isEmpty() ? "" : " spot " + f.spot() + ":";
        return TerminalText.clean(f.severity().word() + ":" + where + " " + f.message());
    }

    private static String value(SampleComposition.Mean mean) {
        if (mean.atomicPercent().isEmpty()) return "-";
        return DisplayNumber.of(mean.atomicPercent().getAsDouble(), mean.standardUncertainty(), 1)
                .text();
    }
}
