package spotline.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import spotline.core.Finding;
import spotline.core.ReadException;
import spotline.core.Severity;
import spotline.holder.HolderPlan;
import spotline.holder.HolderRunReader;
import spotline.holder.HolderTemplate;
import spotline.holder.HolderTemplates;
import spotline.holder.check.PlanCheck;
import spotline.report.WholeFile;
import spotline.report.print.Paper;
import spotline.report.sheet.LoadingSheet;
import spotline.report.table.FindingsCsv;

@Command(
        name = "plan",
        mixinStandardHelpOptions = true,
        description = "Checks a holder before anything is loaded.",
        footer = {"", "Example: spotline plan check holder.json"})
final class PlanCommand implements Runnable {
    private final CommandEnvironment environment;

    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    PlanCommand(CommandEnvironment environment) {
        this.environment = environment;
    }

    @Override
    public void run() {
        throw new ParameterException(new CommandLine(spec), "plan needs a command: check or sheet");
    }

    @Command(
            name = "check",
            mixinStandardHelpOptions = true,
            description = "Prints the mounting checks as rows of findings.csv; exit status 1 when any is a stop.",
            footer = {"", "Example: spotline plan check holder.json"})
    int check(
            @Parameters(paramLabel = "HOLDER.json", description = "the holder run") Path holder,
            @Option(names = "--debug", description = "show stack traces") boolean debug)
            throws ReadException {
        List<Finding> findings = check(HolderPlan.of(HolderRunReader.read(holder)), holder);
        environment.out().print(new String(FindingsCsv.of(findings), StandardCharsets.UTF_8));
        return findings.stream().anyMatch(f -> f.severity() == Severity.STOP) ? 1 : 0;
    }

    @Command(
            name = "sheet",
            mixinStandardHelpOptions = true,
            description = "Writes the loading sheet to print, drawn to scale.",
            footer = {"", "Example: spotline plan sheet holder.json --out sheet.pdf"})
    int sheet(
            @Parameters(paramLabel = "HOLDER.json", description = "the holder run") Path holder,
            @Option(names = "--out", paramLabel = "FILE.pdf", required = true, description = "PDF file to write")
                    Path out,
            @Option(names = "--paper", paramLabel = "PAPER", defaultValue = "A4", description = "A4 or LETTER")
                    Paper paper,
            @Option(names = "--debug", description = "show stack traces") boolean debug)
            throws ReadException, IOException {
        LoadingSheet sheet = LoadingSheet.read(holder);
        Optional<Instant> made =
                Optional.ofNullable(System.getenv("SOURCE_DATE_EPOCH")).flatMap(LoadingSheet::sourceDate);
        WholeFile.write(out, sheet.pdf(paper, made));
        environment.out().println("Loading sheet: " + out + " (print at 100 %, then check its ruler)");
        return 0;
    }

    /** Errors: {@link ReadException} when the holder template cannot be read. */
    static List<Finding> check(HolderPlan plan, Path holder) throws ReadException {
        Optional<HolderTemplate> template = HolderTemplates.of(plan.file(), holder);
        return PlanCheck.check(plan, template);
    }
}
