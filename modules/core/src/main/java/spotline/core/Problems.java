package spotline.core;

import java.util.List;
import java.util.stream.Collectors;

/** All problems of one value at once. */
public final class Problems {
    private Problems() {}

    /** Errors: {@link IllegalArgumentException} that names every problem, if there is one. */
    public static void throwIfAny(List<Problem> problems) {
        if (!problems.isEmpty()) {
            throw new IllegalArgumentException(
                    problems.stream().map(Problem::sentence).collect(Collectors.joining("; ")));
        }
    }
}
