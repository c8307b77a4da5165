package spotline.run;

import java.util.List;
import java.util.Set;
import spotline.core.Finding;

/** The rules a run is held to; pure. */
public interface RunRules {
    Judged judge(RunView view);

    /**
     * What the rules say.
     *
     * @param findings all of the run's, those found before included, as they are shown: silenced where the holder run says
     *     so, the gravest first
     * @param outcomes a rule each, in the order of the list of rules
     * @param led findings that explain others
     * @param withheld spots whose numbers a rule stopped
     */
    record Judged(List<Finding> findings, List<RuleOutcome> outcomes, List<Led> led, Set<String> withheld) {
        public Judged {
            findings = List.copyOf(findings);
            outcomes = List.copyOf(outcomes);
            led = List.copyOf(led);
            withheld = Set.copyOf(withheld);
        }
    }
}
