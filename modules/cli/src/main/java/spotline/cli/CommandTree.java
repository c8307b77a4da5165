package spotline.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import picocli.CommandLine;
import spotline.formats.FileNames;

/** All commands and what becomes of a wrong one. */
final class CommandTree {
    private CommandTree() {}

    static int execute(PrintWriter out, PrintWriter err, boolean terminal, String... args) {
        SpotlineCommand root = new SpotlineCommand();
        CommandLine line = new CommandLine(root);
        CommandEnvironment environment = new CommandEnvironment(out, err, terminal);
        line.addSubcommand(new RunCommand(environment));
        line.addSubcommand(new DiffCommand(environment));
        line.addSubcommand(new InspectCommand(environment));
        line.addSubcommand(new IdentifyCommand(environment));
        line.addSubcommand(new LookupCommand(environment));
        line.addSubcommand(new CalibrateCommand(environment));
        line.addSubcommand(new PlanCommand(environment));
        line.addSubcommand(new FitCommand(environment));
        line.addSubcommand(new FactorsCommand(environment));
        line.addSubcommand(new FigureCommand(environment));
        line.addSubcommand(new ConvertCommand(environment));
        line.addSubcommand(new ViewCommand(environment));
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

    private static boolean debug(String[] args) {
        for (String arg : args) if (arg.equals("--debug")) return true;
        return false;
    }
}
