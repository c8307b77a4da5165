package spotline.run;

import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.SortedMap;
import java.util.TreeMap;
import spotline.core.Severity;

/**
 * What one rule came to in a run.
 *
 * @param number its place in the list of rules, from 1
 * @param severity of its gravest finding
 * @param limits in force
 * @param where spots at which it fired, none for the run as a whole
 * @param notChecked why it could not look, by spot; under an empty spot for the run as a whole
 */
public record RuleOutcome(
        int number,
        String id,
        String title,
        Severity severity,
        State state,
        List<LimitInForce> limits,
        List<String> where,
        SortedMap<String, String> notChecked) {
    /** The gravest that holds anywhere: fired, then silenced, then passed; not checked only where nothing could be. */
    public enum State {
        FIRED,
        SILENCED,
        PASSED,
        NOT_CHECKED;

        public String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }

    /** @param value not a number where none is set */
    public record LimitInForce(String name, double value, String unit, String source) {}

    public RuleOutcome {
        limits = List.copyOf(limits);
        where = List.copyOf(where);
        notChecked = Collections.unmodifiableSortedMap(new TreeMap<>(notChecked));
    }
}
