package spotline.run.findings;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import spotline.core.Finding;
import spotline.core.Severity;
import spotline.run.RunView;
import spotline.run.SpotView;

/**
 * One check.
 *
 * @param number in the list of checks, from 1
 * @param id stable; the rule of the findings it raises itself
 * @param severity of its gravest finding
 * @param adopted rules of findings that other steps raise and that belong to this check
 */
public record Rule(
        int number, String id, String title, Severity severity, List<Limit> limits, Set<String> adopted, Check check) {
    /** The state by spot; under an empty id that of the run as a whole. */
    @FunctionalInterface
    interface Check {
        Map<String, RuleState> of(RunView run);
    }

    /** A check of one spot in the light of the whole run. */
    @FunctionalInterface
    interface SpotCheck {
        RuleState of(RunView run, SpotView spot, Limits limits);
    }

    public Rule {
        limits = List.copyOf(limits);
        adopted = Set.copyOf(adopted);
    }

    static Rule ofSpot(int number, String id, String title, Severity severity, List<Limit> limits, SpotCheck check) {
        return new Rule(number, id, title, severity, limits, Set.of(), everySpot(check));
    }

    static Rule ofRun(int number, String id, String title, Severity severity, List<Limit> limits, Check check) {
        return new Rule(number, id, title, severity, limits, Set.of(), check);
    }

    /** A check that other steps make: this tells where they could not. @param unchecked passed, or why not checked */
    static Rule elsewhere(
            int number,
            String id,
            String title,
            Severity severity,
            List<Limit> limits,
            Set<String> adopted,
            SpotCheck unchecked) {
        return new Rule(number, id, title, severity, limits, adopted, everySpot(unchecked));
    }

    static Check everySpot(SpotCheck check) {
        return run -> {
            Map<String, RuleState> states = new LinkedHashMap<>();
            for (SpotView spot : run.spots()) states.put(spot.id(), check.of(run, spot, Limits.at(run, spot)));
            return states;
        };
    }

    /** Passed where a condition holds. */
    static SpotCheck needs(Predicate<SpotView> condition, String why) {
        return (run, spot, limits) -> condition.test(spot) ? RuleState.PASSED : RuleState.notChecked(why);
    }

    /** Whether a finding is this check's. */
    public boolean raises(Finding finding) {
        return finding.rule().equals(id) || adopted.contains(finding.rule());
    }

    static String words(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
