package spotline.core;

import java.util.List;
import java.util.Optional;

/** What a step came to: a value with findings, or the finding that says why it could not do its work. */
public sealed interface Outcome<T> {
    record Done<T>(T value, List<Finding> findings) implements Outcome<T> {
        public Done {
            findings = List.copyOf(findings);
        }
    }

    record Untreated<T>(Finding finding) implements Outcome<T> {}

    static <T> Outcome<T> done(T value) {
        return new Done<>(value, List.of());
    }

    static <T> Outcome<T> done(T value, List<Finding> findings) {
        return new Done<>(value, findings);
    }

    static <T> Outcome<T> untreated(Finding finding) {
        return new Untreated<>(finding);
    }

    default List<Finding> allFindings() {
        if (this instanceof Done<T> done) return done.findings();
        return List.of(((Untreated<T>) this).finding());
    }

    default Optional<T> result() {
        return this instanceof Done<T> done ? Optional.of(done.value()) : Optional.empty();
    }
}
