package spotline.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import spotline.core.Decimal;
import spotline.core.Place;
import spotline.core.ReadException;
import spotline.core.Work;
import spotline.report.diff.ResultNumbers;
import spotline.report.diff.SettingDifference;
import spotline.report.json.ResultJson;
import spotline.run.RunResult;
import spotline.run.document.Change;
import spotline.run.document.Edit;
import spotline.run.document.HandEdits;
import spotline.run.document.History;
import spotline.run.document.Keeper;
import spotline.run.document.LivingRun;

@Command(
        name = "diff",
        mixinStandardHelpOptions = true,
        description =
                "What differs between two results, holder runs, projects or treatments: which numbers moved, by how"
                        + " many of their combined uncertainties, and which setting did it.",
        footer = {
            "",
            "Example: spotline diff results-may results-june",
            "         spotline diff before.spotline after.spotline"
        })
final class DiffCommand implements Callable<Integer> {
    private final CommandEnvironment environment;

    @Parameters(
            index = "0",
            paramLabel = "A",
            description = "result directory, result.json, holder run, project or treatment")
    @SuppressWarnings("NullAway.Init")
    private Path first;

    @Parameters(index = "1", paramLabel = "B", description = "the same kind")
    @SuppressWarnings("NullAway.Init")
    private Path second;

    @Mixin
    private final TreatmentOptions options = new TreatmentOptions();

    DiffCommand(CommandEnvironment environment) {
        this.environment = environment;
    }

    /** What a side is: settings, and either numbers or what they can be had from. */
    private record Side(JsonNode settings, Optional<JsonNode> result, Optional<RunInput> run) {}

    @Override
    public Integer call() throws Exception {
        try (ProgressLine progress = new ProgressLine(environment)) {
            Side a = side(first);
            Side b = side(second);
            try {
                compare(a, b, progress);
            } finally {
                if (a.run().isPresent()) a.run().get().close();
                if (b.run().isPresent()) b.run().get().close();
            }
        }
        return 0;
    }

    private Side side(Path given) throws ReadException {
        Path file = Files.isDirectory(given) ? given.resolve(ResultJson.FILE) : given;
        if (!RunInput.isProject(file)) {
            JsonNode tree = json(file);
            String format = tree.path("format").asText();
            if (format.startsWith("spotline-result/"))
                return new Side(settings(tree), Optional.of(tree), Optional.empty());
            if (format.startsWith("spotline-treatment/")) return new Side(tree, Optional.empty(), Optional.empty());
        }
        RunInput input = RunInput.open(file, options);
        return new Side(input.history(options).document().tree(), Optional.empty(), Optional.of(input));
    }

    private static JsonNode json(Path file) throws ReadException {
        try {
            return new ObjectMapper().readTree(file.toFile());
        } catch (IOException e) {
            throw new ReadException(
                    Place.file(file.toString()),
                    Files.exists(file) ? "no JSON file" : "no such file",
                    "a result, a holder run, a project or a treatment");
        }
    }

    /** What a result says went into its numbers: the record, the files by their sums, the resolved settings by spot. */
    private static JsonNode settings(JsonNode result) {
        var all = new ObjectMapper().createObjectNode();
        for (String name : List.of("programVersion", "seed", "holderRun", "steps", "sensitivityFactors")) {
            if (result.has(name)) all.set(name, result.get(name));
        }
        var files = all.putObject("files");
        for (JsonNode file : result.path("files")) files.set(file.path("name").asText(), file.path("sha256"));
        for (JsonNode spot : result.path("spots")) {
            var told = all.putObject("spot " + spot.path("spot").asText());
            told.set("electricalState", spot.path("electricalState"));
            told.set("declared", spot.path("declared"));
            spot.path("treatment").properties().forEach(p -> told.set(p.getKey(), p.getValue()));
        }
        return all;
    }

    private void compare(Side a, Side b, Work work) throws ReadException, IOException {
        List<SettingDifference> settings = SettingDifference.of(a.settings(), b.settings());
        List<ResultNumbers.Moved> moved = List.of();
        boolean numbers = (a.result().isPresent() || a.run().isPresent())
                && (b.result().isPresent() || b.run().isPresent());
        if (numbers) moved = ResultNumbers.moved(numbers(a, work), numbers(b, work));
        PrintWriter to = environment.out();
        if (numbers) {
            TextTable table = new TextTable("moved", "A", "B", "in combined u");
            for (ResultNumbers.Moved m : moved) {
                table.row(m.what(), shown(m.before()), shown(m.after()), times(m.combined()));
            }
            to.println(moved.size() + (moved.size() == 1 ? " number moved." : " numbers moved."));
            if (!moved.isEmpty()) table.print(to);
            to.println();
        }
        to.println(settings.size() + (settings.size() == 1 ? " setting differs." : " settings differ."));
        boolean attributable = a.run().isPresent() && b.run().isPresent() && !moved.isEmpty();
        TextTable table = attributable
                ? new TextTable("setting", "A", "B", "alone moves", "furthest, in combined u")
                : new TextTable("setting", "A", "B");
        for (SettingDifference s : settings) {
            if (!attributable) {
                table.row(s.pointer(), shown(s.before()), shown(s.after()));
                continue;
            }
            Optional<List<ResultNumbers.Moved>> alone = alone(a, s, work);
            table.row(
                    s.pointer(),
                    shown(s.before()),
                    shown(s.after()),
                    alone.map(DiffCommand::counted).orElse("cannot stand alone"),
                    alone.map(DiffCommand::furthest).orElse(""));
        }
        if (!settings.isEmpty()) table.print(to);
    }

    private Map<String, ResultNumbers.Reported> numbers(Side side, Work work) throws ReadException, IOException {
        if (side.result().isPresent()) return ResultNumbers.of(side.result().get());
        return numbers(side.run().orElseThrow().treat(options.threads(), work));
    }

    private static Map<String, ResultNumbers.Reported> numbers(RunResult result) throws IOException {
        return ResultNumbers.of(new ObjectMapper().readTree(ResultJson.of(result)));
    }

    /** What a setting of B moves when it alone is put into A; empty when A with it would be no holder run. */
    private Optional<List<ResultNumbers.Moved>> alone(Side a, SettingDifference setting, Work work) throws IOException {
        RunInput input = a.run().orElseThrow();
        try (LivingRun run = new LivingRun(
                History.of(input.history(options).document()),
                input.source().inputs(),
                HandEdits.NOTHING_ASKED,
                Keeper.NOBODY,
                ProgramVersion.text(),
                options.threads())) {
            Map<String, ResultNumbers.Reported> before = numbers(run.settle(work));
            Change change = new Change(setting.pointer(), setting.before(), setting.after());
            run.apply(new Edit("One setting of the other", List.of(change), false, "", "", Optional.empty()));
            return Optional.of(ResultNumbers.moved(before, numbers(run.settle(work))));
        } catch (ReadException e) {
            return Optional.empty();
        }
    }

    private static String counted(List<ResultNumbers.Moved> moved) {
        if (moved.isEmpty()) return "nothing";
        List<String> names = new ArrayList<>();
        for (ResultNumbers.Moved m : moved) if (names.size() < 3) names.add(m.what());
        String more = moved.size() > names.size() ? " and " + (moved.size() - names.size()) + " more" : "";
        return String.join("; ", names) + more;
    }

    private static String furthest(List<ResultNumbers.Moved> moved) {
        OptionalDouble most = moved.stream()
                .flatMapToDouble(m -> m.combined().stream())
                .map(Math::abs)
                .max();
        return times(most);
    }

    private static String times(OptionalDouble value) {
        return value.isPresent() ? Decimal.significant(value.getAsDouble(), 3) : "";
    }

    private static String shown(OptionalDouble value) {
        return value.isPresent() ? Decimal.significant(value.getAsDouble(), 6) : "-";
    }

    private static String shown(Optional<JsonNode> value) {
        if (value.isEmpty()) return "-";
        String text =
                value.get().isTextual() ? value.get().textValue() : value.get().toString();
        return text.length() <= 40 ? text : text.substring(0, 37) + "...";
    }
}
