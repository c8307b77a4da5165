package spotline.run.findings;

import java.util.List;
import spotline.core.Finding;

/** What a rule came to at one spot, or for the run as a whole. */
public sealed interface RuleState {
    RuleState PASSED = new Passed();

    record Fired(List<Finding> findings) implements RuleState {
        public Fired {
            findings = List.copyOf(findings);
            if (findings.isEmpty()) throw new IllegalArgumentException("a rule that fired has a finding");
        }
    }

    record Passed() implements RuleState {}

    /** @param why what was missing */
    record NotChecked(String why) implements RuleState {}

    static RuleState of(List<Finding> findings) {
        return findings.isEmpty() ? PASSED : new Fired(findings);
    }

    static RuleState fired(Finding finding) {
        return new Fired(List.of(finding));
    }

    static RuleState notChecked(String why) {
        return new NotChecked(why);
    }
}
