package spotline.cli;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;

/** One command line and what it came to. */
record CommandRun(int status, String out, String err) {
    static final Path ROOT = Path.of("..", "..").toAbsolutePath().normalize();
    static final Path DEMO = ROOT.resolve("demo-spectra");
    static final Path HOLDER = DEMO.resolve("footbridge-bearing.json");

    static CommandRun of(Object... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        String[] words = new String[args.length];
        for (int i = 0; i < args.length; i++) words[i] = args[i].toString();
        int status = Main.execute(new PrintWriter(out), new PrintWriter(err, true), false, words);
        return new CommandRun(status, out.toString(), err.toString());
    }
}
