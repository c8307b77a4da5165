package spotline.cli;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import spotline.viewer.ViewerLauncher;

@Command(
        name = "view",
        mixinStandardHelpOptions = true,
        description = "Opens the viewer.",
        footer = {"", "Example: spotline view holder.json"})
final class ViewCommand implements Callable<Integer> {
    private final CommandEnvironment environment;

    @Parameters(index = "0", arity = "0..1", paramLabel = "HOLDER.json", description = "the holder run to open")
    private @Nullable Path holder;

    @Option(names = "--debug", description = "show stack traces")
    private boolean debug;

    ViewCommand(CommandEnvironment environment) {
        this.environment = environment;
    }

    @Override
    public Integer call() {
        try {
            ViewerLauncher.open(Optional.ofNullable(holder));
            return 0;
        } catch (RuntimeException | LinkageError e) {
            if (debug) e.printStackTrace(environment.err());
            environment
                    .err()
                    .println(
                            "spotline: the viewer cannot open a window here: it needs a display, and a jar built on this"
                                    + " kind of system");
            return 2;
        }
    }
}
