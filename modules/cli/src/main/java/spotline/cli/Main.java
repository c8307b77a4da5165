package spotline.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.Locale;

/** Entry of the {@code spotline} command. */
public final class Main {
    private Main() {}

    public static void main(String[] args) {
        Locale.setDefault(Locale.ROOT);
        if (args.length > 0 && args[0].equals("run")) ShortRun.begin();
        PrintWriter out = new PrintWriter(System.out, false, StandardCharsets.UTF_8);
        PrintWriter err = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
        boolean terminal = System.console() != null;
        int status = execute(out, err, terminal, CommandWords.recovered(args));
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
        return DirectPlanCheck.asked(args)
                ? DirectPlanCheck.run(args[2], out, err)
                : CommandTree.execute(out, err, terminal, args);
    }

    static String oneLine(String text) {
        return TerminalText.clean(text.replaceAll("\\s*\\R\\s*", " ")).strip();
    }
}
