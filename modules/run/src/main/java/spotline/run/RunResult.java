package spotline.run;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import spotline.analysis.calibration.CalibrationRecord;
import spotline.core.Finding;
import spotline.core.Severity;
import spotline.holder.HolderPlan;

/**
 * What came of a holder run.
 *
 * @param plan what was declared
 * @param spots in the order of the holder run
 * @param findings of the whole run: of the plan, of every spot, across spots; in order of severity, then spot
 * @param treatments the full settings in force, by spot id
 * @param files SHA-256 of each input file, by name as the holder run gives it
 * @param ruleStates what each rule came to, in the order of the list of rules
 * @param led findings that explain others
 * @param calibration that the energy scale was corrected by, where the holder run names one
 */
public record RunResult(
        HolderPlan plan,
        List<SpotResult> spots,
        List<SampleComposition> samples,
        List<Finding> findings,
        SortedMap<String, JsonNode> treatments,
        SortedMap<String, String> files,
        String programVersion,
        long seed,
        List<RuleOutcome> ruleStates,
        List<Led> led,
        Optional<CalibrationRecord> calibration) {
    /** A result that no rules were held to. */
    public RunResult(
            HolderPlan plan,
            List<SpotResult> spots,
            List<SampleComposition> samples,
            List<Finding> findings,
            SortedMap<String, JsonNode> treatments,
            SortedMap<String, String> files,
            String programVersion,
            long seed) {
        this(
                plan,
                spots,
                samples,
                findings,
                treatments,
                files,
                programVersion,
                seed,
                List.of(),
                List.of(),
                Optional.empty());
    }

    public RunResult {
        ruleStates = List.copyOf(ruleStates);
        led = List.copyOf(led);
        spots = List.copyOf(spots);
        samples = List.copyOf(samples);
        findings = List.copyOf(findings);
        treatments = Collections.unmodifiableSortedMap(new TreeMap<>(treatments));
        files = Collections.unmodifiableSortedMap(new TreeMap<>(files));
    }

    /** Whether anything could not be treated or must not be used as it is. */
    public boolean stopped() {
        return findings.stream().anyMatch(f -> f.severity() == Severity.STOP);
    }
}
