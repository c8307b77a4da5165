package spotline.holder.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spotline.core.Finding;
import spotline.holder.EtchStep;
import spotline.holder.HolderTemplate;
import spotline.holder.PointMm;
import spotline.holder.Spot;

/**
 * Depth profiles: etching and measuring that take turns at one spot. A single etch step cleans, and is none. Source:
 * ASTM E1127 and ISO 14606, scopes.
 */
final class ProfileChecks {
    private static final String LOPSIDED = ": its crater may come out lopsided.";

    private ProfileChecks() {}

    static List<Finding> findings(Layout layout, PlanCheckSettings settings) {
        List<Finding> findings = new ArrayList<>();
        if (layout.holder().isEmpty()) return findings;
        HolderTemplate holder = layout.holder().get();
        for (Spot spot : layout.plan().spots()) {
            boolean profile = spot.etchCycles() > 1;
            if (!profile || Powders.loose(spot.specimen())) continue;
            Optional<PointMm> axis = holder.rotationAxis();
            if (axis.isEmpty()) {
                findings.add(Named.finding(
                        spot,
                        PlanRule.PROFILE_UNROTATED,
                        "Spot " + spot.id() + " is a depth profile, and the holder does not rotate" + LOPSIDED));
            } else if (!rotated(spot)) {
                findings.add(Named.finding(
                        spot,
                        PlanRule.PROFILE_UNROTATED,
                        "Spot " + spot.id() + " is a depth profile without rotation" + LOPSIDED));
            } else if (spot.position().isPresent()) {
                double off = Layout.distance(axis.get(), spot.position().get());
                double limit = settings.handling().rotationAxisToleranceMm();
                if (off <= limit + Reach.ROUNDING_MM) continue;
                findings.add(Named.finding(
                        spot,
                        PlanRule.PROFILE_OFF_AXIS,
                        "Spot " + spot.id() + " is a depth profile " + Reach.millimetres(off)
                                + " off the rotation axis" + LOPSIDED + " Up to " + Reach.millimetres(limit)
                                + " is allowed."));
            }
        }
        return findings;
    }

    private static boolean rotated(Spot spot) {
        for (EtchStep step : spot.etchSteps()) {
            if (!step.rotation().orElse(true)) return false;
        }
        return true;
    }
}
