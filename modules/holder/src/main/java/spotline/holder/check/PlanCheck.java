package spotline.holder.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spotline.core.Finding;
import spotline.holder.HolderPlan;
import spotline.holder.HolderTemplate;

/**
 * Mounting checks of a plan, before anything is loaded.
 *
 * <p>Shape: a plan, the holder it is for and thresholds in, findings out, in the order of {@link PlanRule} and then of
 * the plan. Units: mm, degrees, degrees Celsius, ohm, V, A. What is not declared raises a finding only where it is needed;
 * what could not be checked is told in one note. No finding is silenced here. Source: common practice, and as
 * {@link PlanRule} says.
 */
public final class PlanCheck {
    private PlanCheck() {}

    /**
     * The mounting checks with the thresholds of the plan's own file, and whether the load counts as ready at all: what is
     * told of a plan before and after it was measured.
     *
     * @param holder empty when the plan does not say which holder it is for
     */
    public static List<Finding> ofLoad(HolderPlan plan, Optional<HolderTemplate> holder) {
        List<Finding> findings = new ArrayList<>();
        Optional<String> notReady = Cautions.notReady(plan);
        if (notReady.isPresent()) findings.add(PlanRule.LOCAL_RISK_REVIEW.finding(notReady.get()));
        findings.addAll(check(plan, holder));
        return List.copyOf(findings);
    }

    /**
     * With the thresholds that the plan's own file gives, and the defaults for the rest.
     *
     * @param holder empty when the plan does not say which holder it is for
     */
    public static List<Finding> check(HolderPlan plan, Optional<HolderTemplate> holder) {
        return check(plan, holder, PlanCheckSettings.of(plan.file().planCheck()));
    }

    public static List<Finding> check(HolderPlan plan, HolderTemplate holder, PlanCheckSettings settings) {
        return check(plan, Optional.of(holder), settings);
    }

    /** @param holder empty when the plan does not say which holder it is for */
    public static List<Finding> check(HolderPlan plan, Optional<HolderTemplate> holder, PlanCheckSettings settings) {
        Layout layout = new Layout(plan, holder);
        List<Finding> findings = new ArrayList<>();
        findings.addAll(RecordChecks.findings(plan));
        findings.addAll(PlacementChecks.findings(layout, settings));
        findings.addAll(ClearanceChecks.findings(layout, settings));
        findings.addAll(ElectricalChecks.findings(layout, settings));
        findings.addAll(Powders.findings(plan, settings));
        findings.addAll(StageChecks.findings(plan, holder, settings));
        findings.addAll(TransferChecks.findings(layout));
        findings.addAll(ProfileChecks.findings(layout, settings));
        findings.addAll(Unchecked.findings(layout));
        return inOrder(findings);
    }

    private static List<Finding> inOrder(List<Finding> findings) {
        if (findings.isEmpty()) return List.of();
        List<Finding> ordered = new ArrayList<>(findings.size());
        for (PlanRule rule : PlanRule.values()) {
            for (Finding finding : findings) {
                if (finding.rule().equals(rule.id())) ordered.add(finding);
            }
        }
        return List.copyOf(ordered);
    }
}
