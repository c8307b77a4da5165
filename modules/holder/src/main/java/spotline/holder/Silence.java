package spotline.holder;

import static java.util.Objects.requireNonNull;

import java.util.Optional;
import spotline.core.Finding;

/**
 * A rule whose findings are not shown, and why.
 *
 * @param spot the one spot it is silenced for; all when empty
 */
public record Silence(String rule, Optional<String> spot, String reason) {
    public Silence {
        requireNonNull(spot, "spot");
        if (rule.isBlank()) throw new IllegalArgumentException("a silence needs a rule");
        if (reason.isBlank()) throw new IllegalArgumentException("a silence needs a reason");
    }

    public boolean covers(Finding finding) {
        return finding.rule().equals(rule) && (spot.isEmpty() || finding.spot().equals(spot.get()));
    }
}
