package spotline.cli;

import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** Options common to all commands that treat data. */
final class TreatmentOptions {
    @Option(
            names = "--threads",
            paramLabel = "N",
            converter = Threads.class,
            description = "threads to use (default: the processors)")
    private int threads = Runtime.getRuntime().availableProcessors();

    @Option(names = "--treatment", paramLabel = "FILE", description = "treatment laid over the defaults")
    private @Nullable Path treatment;

    @Option(
            names = "--seed",
            paramLabel = "N",
            description = "seed of all random streams (default: 1; a project's own)")
    private @Nullable Long seed;

    @Option(names = "--debug", description = "show stack traces")
    private boolean debug;

    int threads() {
        return threads;
    }

    Optional<Path> treatment() {
        return Optional.ofNullable(treatment);
    }

    long seed() {
        return seed == null ? 1 : seed;
    }

    /** The seed where one was asked for. */
    Optional<Long> statedSeed() {
        return Optional.ofNullable(seed);
    }

    boolean debug() {
        return debug;
    }

    /** One thread or more. */
    static final class Threads implements ITypeConverter<Integer> {
        @Override
        public Integer convert(String value) {
            if (!value.matches("[1-9][0-9]{0,3}")) {
                throw new TypeConversionException("'" + value + "' is no number of threads: 1 to 9999");
            }
            return Integer.valueOf(value);
        }
    }
}
