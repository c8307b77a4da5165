package spotline.holder.check;

import java.util.List;
import java.util.Locale;
import spotline.core.Finding;
import spotline.holder.HolderPlan;
import spotline.holder.Sample;
import spotline.holder.Specimen;
import spotline.holder.Spot;

/** Ties a finding about a specimen to its sample, and to its spot where it has exactly one. */
final class Named {
    private Named() {}

    static Finding finding(HolderPlan plan, Specimen specimen, PlanRule rule, String message) {
        List<Spot> spots = plan.spotsOn(specimen);
        String spot = spots.size() == 1 ? spots.get(0).id() : "";
        return rule.finding(message)
                .at(spot, specimen.sample().map(Sample::name).orElse(""));
    }

    /** The specimen's label at the head of a sentence. */
    static String capital(Specimen specimen) {
        String label = specimen.label();
        return label.substring(0, 1).toUpperCase(Locale.ROOT) + label.substring(1);
    }
}
