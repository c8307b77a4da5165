package spotline.analysis.quantify;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Predicate;
import spotline.core.Estimate;

/**
 * Atomic fractions of what was detected.
 *
 * <p>Shape: one contribution an element in, one row an element out, in the order given. Units: at.%; the detected rows
 * sum to 100; hydrogen and helium are not seen.
 *
 * <p>X_i = 100 q_i / Q with q = I / S and Q the sum over the detected elements; dX_i/dq_j = 100 (delta_ij Q - q_i) / Q^2,
 * so that shared contributions (factors, exponents) cancel as they should. Detection limit of element i:
 * 100 d / (Q + d) with d its limit on the scale of q (Q without i's own share).
 *
 * <p>Errors: with nothing detected no row has a number.
 *
 * <p>Source: ISO 18118 (atomic fraction); detection limit ISO 19668 after Currie (1968).
 */
public final class Composition {
    /** Version of the step: rises when its numbers change. */
    public static final String STEP = "quantify/3";

    private static final Predicate<String> STATISTICAL =
            source -> source.startsWith("counting/") || source.startsWith("endpoints/");

    private Composition() {}

    /** A composition of the other elements alone: carbon-free, for example. What is left sums to 100 again. */
    public static List<Quantified> without(Set<String> elements, List<Contribution> contributions) {
        return of(contributions.stream()
                .filter(c -> !elements.contains(c.element()))
                .toList());
    }

    public static List<Quantified> of(List<Contribution> contributions) {
        List<Contribution> detected =
                contributions.stream().filter(Contribution::detected).toList();
        double total =
                detected.stream().mapToDouble(c -> c.normalised().value()).sum();
        List<Estimate> inputs = detected.stream().map(Contribution::normalised).toList();
        List<Quantified> rows = new ArrayList<>();
        for (Contribution c : contributions) {
            int own = detected.indexOf(c);
            double others = total - (own >= 0 ? c.normalised().value() : 0);
            OptionalDouble limit = others + c.limitNormalised() > 0
                    ? OptionalDouble.of(100 * c.limitNormalised() / (others + c.limitNormalised()))
                    : OptionalDouble.empty();
            Optional<Estimate> percent = Optional.empty();
            OptionalDouble statistical = OptionalDouble.empty();
            if (own >= 0 && total > 0) {
                double[] slopes = new double[inputs.size()];
                double q = c.normalised().value();
                for (int j = 0; j < slopes.length; j++)
                    slopes[j] = 100 * ((j == own ? total : 0) - q) / (total * total);
                Estimate x = Estimate.linear(100 * q / total, inputs, slopes);
                percent = Optional.of(x);
                statistical = x.uncertaintyFrom(STATISTICAL);
            }
            rows.add(new Quantified(
                    c.element(), c.line(), c.spectrum(), c.basis(), percent, statistical, own < 0, limit));
        }
        return rows;
    }
}
