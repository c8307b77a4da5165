package spotline.cli;

import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Options common to all commands that treat data. */
final class TreatmentOptions {
    @Option(names = "--threads", paramLabel = "N", description = "threads to use (default: the processors)")
    private int threads = Runtime.getRuntime().availableProcessors();

    @Option(names = "--treatment", paramLabel = "FILE", description = "treatment laid over the defaults")
    private @Nullable Path treatment;

    @Option(names = "--seed", paramLabel = "N", description = "seed of all random streams (default: ${DEFAULT-VALUE})")
    private long seed = 1;

    @Option(names = "--debug", description = "show stack traces")
    private boolean debug;

    int threads() {
        return Math.max(1, threads);
    }

    Optional<Path> treatment() {
        return Optional.ofNullable(treatment);
    }

    long seed() {
        return seed;
    }

    boolean debug() {
        return debug;
    }
}
