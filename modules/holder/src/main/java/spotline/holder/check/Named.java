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

    static Finding finding(Spot spot, PlanRule rule, String message) {
        return rule.finding(message).at(spot.id(), spot.sampleName());
    }

    /** The specimen's label at the head of a sentence. */
    static String capital(Specimen specimen) {
        String label = specimen.label();
        return label.substring(0, 1).toUpperCase(Locale.ROOT) + label.substring(1);
    }

    /** {@code a, b or c}. */
    static String either(List<String> words) {
        int last = words.size() - 1;
        return last == 0 ? words.get(0) : String.join(", ", words.subList(0, last)) + " or " + words.get(last);
    }
}
