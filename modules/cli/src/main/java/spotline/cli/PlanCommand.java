package spotline.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import spotline.core.Place;
import spotline.core.ReadException;
import spotline.report.WholeFile;
import spotline.report.json.PlanJson;
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
            @Option(names = "--json", description = "every rule with its state, and the findings, as JSON")
                    boolean json,
            @Option(names = "--debug", description = "show stack traces") boolean debug)
            throws ReadException {
        return DirectPlanCheck.print(holder, json ? PlanJson::of : FindingsCsv::text, environment.out());
    }

    @Command(
            name = "sheet",
            mixinStandardHelpOptions = true,
            description = "Writes the loading sheet to print, drawn to scale.",
            footer = {"", "Example: spotline plan sheet holder.json --out sheet.pdf"})
    int sheet(
            @Parameters(paramLabel = "HOLDER.json", description = "the holder run") Path holder,
            @Option(
                            names = "--out",
                            paramLabel = "FILE",
                            required = true,
                            description = "FILE.pdf, or FILE.svg: one file a page")
                    Path out,
            @Option(names = "--paper", paramLabel = "PAPER", defaultValue = "A4", description = "A4 or LETTER")
                    Paper paper,
            @Option(names = "--debug", description = "show stack traces") boolean debug)
            throws ReadException, IOException {
        LoadingSheet sheet;
        try {
            sheet = LoadingSheet.read(holder);
        } catch (ReadException e) {
            throw DirectPlanCheck.unlessProject(holder, e);
        }
        Optional<Instant> made =
                Optional.ofNullable(System.getenv("SOURCE_DATE_EPOCH")).flatMap(LoadingSheet::sourceDate);
        String name = out.getFileName().toString();
        String ending = name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
        List<Path> written = new ArrayList<>();
        switch (ending) {
            case "pdf" -> {
                WholeFile.write(out, sheet.pdf(paper, made));
                written.add(out);
            }
            case "svg" -> {
                List<String> pages = sheet.svg(paper);
                for (int i = 0; i < pages.size(); i++) {
                    String number = pages.size() > 1 ? "-" + (i + 1) : "";
                    Path page = out.resolveSibling(name.substring(0, name.length() - 4) + number + ".svg");
                    WholeFile.write(page, pages.get(i).getBytes(StandardCharsets.UTF_8));
                    written.add(page);
                }
            }
            default ->
                throw new ReadException(
                        Place.file(out.toString()), "another ending", "a file that ends with .pdf or .svg");
        }
        String files = written.stream().map(Path::toString).collect(Collectors.joining(", "));
        environment.out().println("Loading sheet: " + files + " (print at 100 %, then check its ruler)");
        return 0;
    }
}
