package spotline.holder;

import static java.util.Objects.requireNonNull;

import java.time.LocalDate;
import java.util.Optional;

/**
 * Who reviewed the risks of this load under the laboratory's own rules. A record only: nothing is certified by it.
 *
 * @param reference where the review is kept
 */
public record LocalRiskReview(String by, Optional<LocalDate> date, Optional<String> reference) {
    public LocalRiskReview {
        if (by.isBlank()) throw new IllegalArgumentException("a risk review needs a name");
        requireNonNull(date, "date");
        requireNonNull(reference, "reference");
    }
}
