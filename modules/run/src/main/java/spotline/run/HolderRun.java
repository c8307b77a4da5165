package spotline.run;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import spotline.analysis.calibration.CalibrationRecord;
import spotline.core.Finding;
import spotline.holder.HolderPlan;

/**
 * One loaded holder, measured: the plan, the linked spectra and the treatment of every spot.
 *
 * @param files SHA-256 of each spectrum file that could be read, by name as the holder run gives it
 * @param findings that concern no single spot
 * @param planFindings of the mounting checks; empty where they were not made
 * @param calibration that the energy scale was corrected by, where the holder run names one
 */
public record HolderRun(
        HolderPlan plan,
        List<SpotInput> spots,
        SortedMap<String, String> files,
        List<Finding> findings,
        long seed,
        Optional<List<Finding>> planFindings,
        Optional<CalibrationRecord> calibration) {
    /** A run whose plan was not checked, and whose energy scale is as measured. */
    public HolderRun(
            HolderPlan plan,
            List<SpotInput> spots,
            SortedMap<String, String> files,
            List<Finding> findings,
            long seed) {
        this(plan, spots, files, findings, seed, Optional.empty(), Optional.empty());
    }

    /** A run whose energy scale is as measured. */
    public HolderRun(
            HolderPlan plan,
            List<SpotInput> spots,
            SortedMap<String, String> files,
            List<Finding> findings,
            long seed,
            Optional<List<Finding>> planFindings) {
        this(plan, spots, files, findings, seed, planFindings, Optional.empty());
    }

    public HolderRun {
        planFindings = planFindings.map(List::copyOf);
        spots = List.copyOf(spots);
        files = Collections.unmodifiableSortedMap(new TreeMap<>(files));
        findings = List.copyOf(findings);
    }

    /** The same run with more to say of it as a whole. */
    public HolderRun with(List<Finding> more) {
        List<Finding> all = new ArrayList<>(findings);
        all.addAll(more);
        return new HolderRun(plan, spots, files, all, seed, planFindings, calibration);
    }
}
