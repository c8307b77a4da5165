package spotline.numerics.fit;

import static java.util.Objects.requireNonNull;

import java.util.List;

/**
 * A parameter as a linear function of others: {@code target = sum(ratio * source) + offset}. The covariance of the
 * sources carries through.
 */
public record Tie(String target, List<Term> terms, double offset) {
    /** One source and what it is multiplied by. */
    public record Term(String source, double ratio) {
        public Term {
            requireNonNull(source, "source");
            if (!Double.isFinite(ratio)) throw new IllegalArgumentException("ratio is not finite, was " + ratio);
        }
    }

    public Tie {
        requireNonNull(target, "target");
        terms = List.copyOf(terms);
        if (terms.isEmpty()) throw new IllegalArgumentException(target + ": a tie needs a source");
        if (!Double.isFinite(offset)) throw new IllegalArgumentException("offset is not finite, was " + offset);
    }

    public Tie(String target, String source, double ratio, double offset) {
        this(target, List.of(new Term(source, ratio)), offset);
    }

    public static Tie equal(String target, String source) {
        return new Tie(target, source, 1, 0);
    }

    public static Tie ratio(String target, String source, double ratio) {
        return new Tie(target, source, ratio, 0);
    }

    public static Tie offset(String target, String source, double offset) {
        return new Tie(target, source, 1, offset);
    }

    /** An offset that is itself a parameter of the fit: {@code target = source + offsetParameter}. */
    public static Tie freeOffset(String target, String source, String offsetParameter) {
        return new Tie(target, List.of(new Term(source, 1), new Term(offsetParameter, 1)), 0);
    }
}
