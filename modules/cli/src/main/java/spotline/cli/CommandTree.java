package spotline.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import picocli.CommandLine;
import spotline.formats.FileNames;

/** All commands and what becomes of a wrong one. */
final class CommandTree {
    private static final List<String> NAMES = List.of(
            "run",
            "diff",
            "inspect",
            "identify",
            "lookup",
            "calibrate",
            "plan",
            "fit",
            "factors",
            "figure",
            "convert",
            "view");

    private CommandTree() {}

    static int execute(PrintWriter out, PrintWriter err, boolean terminal, String... args) {
        SpotlineCommand root = new SpotlineCommand();
        CommandLine line = new CommandLine(root);
        CommandEnvironment environment = new CommandEnvironment(out, err, terminal);
        for (String name : wanted(args)) line.addSubcommand(name, command(name, environment));
        line.registerConverter(Path.class, FileNames::path);
        // A file may be called @something.
        line.setExpandAtFiles(false);
        line.setCaseInsensitiveEnumValuesAllowed(true);
        line.setOut(out);
        line.setErr(err);
        line.setParameterExceptionHandler((e, given) -> {
            String hint = e.getCommandLine().getCommandSpec().qualifiedName();
            err.println("spotline: " + Main.oneLine(String.valueOf(e.getMessage())) + " (see " + hint + " --help)");
            return 2;
        });
        line.setExecutionExceptionHandler((e, command, parsed) -> CommandFailure.report(e, err, debug(args)));
        return line.execute(args);
    }

    /** Making a command costs more than some commands take: only the one that is asked for is made, all for help. */
    private static List<String> wanted(String... args) {
        return args.length > 0 && NAMES.contains(args[0]) ? List.of(args[0]) : NAMES;
    }

    private static Object command(String name, CommandEnvironment environment) {
        return switch (name) {
            case "run" -> new RunCommand(environment);
            case "diff" -> new DiffCommand(environment);
            case "inspect" -> new InspectCommand(environment);
            case "identify" -> new IdentifyCommand(environment);
            case "lookup" -> new LookupCommand(environment);
            case "calibrate" -> new CalibrateCommand(environment);
            case "plan" -> new PlanCommand(environment);
            case "fit" -> new FitCommand(environment);
            case "factors" -> new FactorsCommand(environment);
            case "figure" -> new FigureCommand(environment);
            case "convert" -> new ConvertCommand(environment);
            case "view" -> new ViewCommand(environment);
            default -> throw new IllegalArgumentException(name);
        };
    }

    private static boolean debug(String[] args) {
        for (String arg : args) if (arg.equals("--debug")) return true;
        return false;
    }
}
