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
 * the plan. Units: mm, ohm. What is not declared raises a finding only where it is needed; what could not be checked is
 * told in one note. No finding is silenced here. Source: common practice, and as {@link PlanRule} says.
 */
public final class PlanCheck {
    private PlanCheck() {}

    public static List<Finding> check(HolderPlan plan, HolderTemplate holder, PlanCheckSettings settings) {
        return check(plan, Optional.of(holder), settings);
    }

    /** @param holder empty when the plan does not say which holder it is for */
    public static List<Finding> check(HolderPlan plan, Optional<HolderTemplate> holder, PlanCheckSettings settings) {
        List<Finding> findings = new ArrayList<>();
        findings.addAll(RecordChecks.spotRecords(plan));
        findings.addAll(new GeometryChecks(plan, holder, settings).findings());
        findings.addAll(RecordChecks.electrical(plan, settings));
        findings.addAll(RecordChecks.powderAndIonGun(plan));
        findings.addAll(GeometryChecks.unchecked(plan, holder));
        return List.copyOf(findings);
    }
}
