package spotline.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import picocli.CommandLine;

/** Entry of the {@code spotline} command. */
public final class Main {
    private Main() {}

    public static void main(String[] args) {
        Locale.setDefault(Locale.ROOT);
        PrintWriter out = new PrintWriter(System.out, false, StandardCharsets.UTF_8);
        PrintWriter err = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
        boolean terminal = System.console() != null;
        int status = execute(out, err, terminal, args);
        out.flush();
        err.flush();
        System.exit(status);
    }

    /**
     * Runs one command line.
     *
     * @param terminal whether standard error is a terminal, so that progress may be shown
     * @return exit status: 0 done; 1 done with something untreated or a stop; 2 the command or its input is wrong
     */
    static int execute(PrintWriter out, PrintWriter err, boolean terminal, String... args) {
        SpotlineCommand root = new SpotlineCommand();
        CommandLine line = new CommandLine(root);
        CommandEnvironment environment = new CommandEnvironment(out, err, terminal);
        line.addSubcommand(new RunCommand(environment));
        line.addSubcommand(new InspectCommand(environment));
        line.addSubcommand(new IdentifyCommand(environment));
        line.addSubcommand(new LookupCommand(environment));
        line.addSubcommand(new CalibrateCommand(environment));
        line.addSubcommand(new PlanCommand(environment));
        line.addSubcommand(new FitCommand(environment));
        line.addSubcommand(new ViewCommand(environment));
        line.setCaseInsensitiveEnumValuesAllowed(true);
        line.setOut(out);
        line.setErr(err);
        line.setParameterExceptionHandler((e, given) -> {
            String hint = e.getCommandLine().getCommandSpec().qualifiedName();
            err.println("spotline: " + oneLine(String.valueOf(e.getMessage())) + " (see " + hint + " --help)");
            return 2;
        });
        line.setExecutionExceptionHandler((e, command, parsed) -> CommandFailure.report(e, err, debug(args)));
        return line.execute(args);
    }

    private static boolean debug(String[] args) {
        for (String arg : args) if (arg.equals("--debug")) return true;
        return false;
    }

    static String oneLine(String text) {
        return text.replaceAll("\\s*\\R\\s*", " ").strip();
    }
}
