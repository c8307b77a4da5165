package spotline.run;

import java.util.List;
import java.util.function.Supplier;

/**
 * What steps came to, so that a step whose inputs and settings did not change does not run again. Steps are pure: whether
 * one is remembered changes no number.
 */
public interface Memo {
    /**
     * What a step depends on.
     *
     * @param step its name and version: {@code "intensity/3"}
     * @param parts all that it looks at, each equal by value; spectra are equal to themselves alone
     */
    record Key(String step, List<Object> parts) {
        public Key {
            parts = List.copyOf(parts);
        }

        public static Key of(String step, Object... parts) {
            return new Key(step, List.of(parts));
        }
    }

    /** A part of a key that is equal to itself alone: for values that are long to compare and are kept anyway. */
    final class Same {
        private final Object value;

        public Same(Object value) {
            this.value = value;
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof Same that && that.value == value;
        }

        @Override
        public int hashCode() {
            return System.identityHashCode(value);
        }
    }

    /** What the step came to before with this key, else what it comes to now. What it throws is thrown and not kept. */
    <T> T of(Key key, Supplier<T> step);

    /** Remembers nothing. */
    Memo NONE = new Memo() {
        @Override
        public <T> T of(Key key, Supplier<T> step) {
            return step.get();
        }
    };
}
