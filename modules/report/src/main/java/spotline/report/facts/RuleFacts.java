package spotline.report.facts;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import spotline.core.Decimal;
import spotline.run.RuleOutcome;

/** What tables and reports say of a rule. */
public final class RuleFacts {
    private RuleFacts() {}

    /** Each reason once, with the spots it holds for. */
    public static String notChecked(RuleOutcome outcome) {
        return outcome.notChecked().values().stream()
                .distinct()
                .map(why -> why + spots(outcome, why))
                .collect(Collectors.joining("; "));
    }

    private static String spots(RuleOutcome outcome, String why) {
        List<String> spots = outcome.notChecked().entrySet().stream()
                .filter(e -> e.getValue().equals(why) && !e.getKey().isEmpty())
                .map(Map.Entry::getKey)
                .toList();
        return spots.isEmpty() ? "" : " (" + String.join(", ", spots) + ")";
    }

    /** Names, values and units of the limits in force. */
    public static String limits(RuleOutcome outcome) {
        return outcome.limits().stream().map(RuleFacts::limit).collect(Collectors.joining("; "));
    }

    private static String limit(RuleOutcome.LimitInForce limit) {
        if (Double.isNaN(limit.value())) return limit.name() + " not set";
        return (limit.name() + " " + Decimal.text(limit.value()) + " " + limit.unit()).strip();
    }
}
