package spotline.holder.check;

import java.util.ArrayList;
import java.util.List;
import spotline.core.Finding;
import spotline.holder.Clip;
import spotline.holder.HolderPlan;
import spotline.holder.Shapes;
import spotline.holder.Specimen;
import spotline.holder.Spot;

/** One note for all that the geometry checks could not look at; none when they saw everything. */
final class Unchecked {
    private Unchecked() {}

    static List<Finding> findings(Layout layout) {
        HolderPlan plan = layout.plan();
        List<String> sentences = new ArrayList<>();
        if (layout.holder().isEmpty() && !plan.specimens().isEmpty()) {
            sentences.add("The plan names no holder: overhang, usable area and heights were not checked.");
        }
        List<String> specimens = new ArrayList<>();
        List<String> parts = new ArrayList<>();
        for (Specimen specimen : plan.specimens()) {
            if (layout.footprint(specimen).isEmpty()) specimens.add(specimen.label());
            for (Clip clip : specimen.mount().clips()) {
                if (Shapes.clip(clip).isEmpty()) parts.add("the " + clip.label() + " of " + specimen.label());
            }
        }
        if (!specimens.isEmpty()) {
            sentences.add("Overhang and overlap were not checked, since outline or position is not declared, for "
                    + String.join(", ", specimens) + ".");
        }
        if (!parts.isEmpty()) {
            sentences.add("Clearance from " + String.join(", ", parts)
                    + " was not checked, since outline or position is not declared.");
        }
        clearance(plan, sentences);
        return sentences.isEmpty()
                ? List.of()
                : List.of(PlanRule.GEOMETRY_UNCHECKED.finding(String.join(" ", sentences)));
    }

    private static void clearance(HolderPlan plan, List<String> sentences) {
        List<String> spots = new ArrayList<>();
        int placed = 0;
        for (Spot spot : plan.spots()) {
            if (spot.position().isEmpty()) continue;
            placed++;
            if (plan.analysisArea(spot).isEmpty()) spots.add(spot.id());
        }
        if (spots.isEmpty()) return;
        String which = spots.size() == placed ? "" : " of spots " + String.join(", ", spots);
        sentences.add("The clearance" + which + " was not checked, since no analysis area is declared.");
    }
}
