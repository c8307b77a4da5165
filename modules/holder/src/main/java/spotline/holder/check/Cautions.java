package spotline.holder.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import spotline.core.Finding;
import spotline.core.Severity;
import spotline.holder.HolderPlan;
import spotline.holder.HolderTemplate;
import spotline.holder.HolderTemplate.TemperatureRange;
import spotline.holder.Sample;
import spotline.holder.SampleForm;
import spotline.holder.Specimen;
import spotline.holder.Spot;
import spotline.holder.StagePlan;

/**
 * The usual cautions a plan's record calls for, in general words. Source: common practice, no source. They are neither
 * complete nor a risk assessment: the laboratory's own rules and trained people decide.
 */
public final class Cautions {
    /** To stand with every list of cautions, also an empty one. */
    public static final String NOTICE = "These reminders are general and not complete. The local rules and the people"
            + " trained for this work decide what is safe. This program certifies neither safety nor compliance.";

    /** What burns. */
    private static final double HOT_C = 50;

    /** What frosts. */
    private static final double COLD_C = 0;

    private Cautions() {}

    public static List<Caution> of(HolderPlan plan, Optional<HolderTemplate> holder) {
        List<Caution> cautions = new ArrayList<>();
        add(
                cautions,
                plan,
                "unknown hazards",
                specimen -> hazards(specimen).isEmpty(),
                "The record does not say which hazards the sample has. Find out, and have it looked at under the local"
                        + " rules, before the container is opened.");
        add(
                cautions,
                plan,
                "declared hazards",
                specimen -> hazards(specimen).filter(text -> !none(text)).isPresent(),
                "The record names hazards. Handle, mount and dispose of the sample as the local risk review says.");
        add(
                cautions,
                plan,
                "loose powder",
                Powders::loose,
                "Loose or fine grains can be breathed in, and can be shed into the vacuum. Use the protection the local"
                        + " rules ask for, press or stick the grains down, and remove loose ones away from the other"
                        + " samples before loading.");
        add(
                cautions,
                plan,
                "loose fibres",
                specimen -> form(specimen) == SampleForm.FIBRE,
                "Loose fibres can be breathed in, and can be lost in the chamber. Fix them down and treat offcuts as"
                        + " the local rules say.");
        add(
                cautions,
                plan,
                "residue of a liquid",
                specimen -> form(specimen) == SampleForm.LIQUID_RESIDUE,
                "What is left of a liquid can give off vapour, in the room and in the vacuum. Be sure that it is dry and"
                        + " allowed in the instrument.");
        add(
                cautions,
                plan,
                "ion gun",
                specimen -> plan.spotsOn(specimen).stream().anyMatch(Spot::sputtered),
                "Sputtering works with high voltage and compressed gas, throws material about, and can contaminate"
                        + " neighbours. Only people trained on this ion gun run it.");
        add(
                cautions,
                plan,
                "kept from the air",
                specimen -> specimen.transfer().isPresent()
                        || specimen.sample().filter(Sample::airSensitive).isPresent(),
                "Glove boxes, transfer vessels and protective gas have hazards of their own, and a sample that must not"
                        + " meet the air may react when it does. Know what it does before the chain is opened, also on"
                        + " the way back.");
        stage(cautions, plan, holder);
        return List.copyOf(cautions);
    }

    private static void stage(List<Caution> cautions, HolderPlan plan, Optional<HolderTemplate> holder) {
        Optional<TemperatureRange> range = holder.flatMap(HolderTemplate::temperature);
        List<StagePlan.SetPoint> points = plan.file().stage().setPoints();
        if (range.filter(r -> r.max() > HOT_C).isPresent() || points.stream().anyMatch(p -> p.temperatureC() > HOT_C)) {
            cautions.add(new Caution(
                    "heat",
                    List.of(),
                    "This holder can be heated. Parts stay hot long after, and samples, tape and glue can melt,"
                            + " decompose or give off vapour: stay below their declared limits, and let everything cool"
                            + " before it is touched."));
        }
        if (range.filter(r -> r.min() < COLD_C).isPresent()
                || points.stream().anyMatch(p -> p.temperatureC() < COLD_C)) {
            cautions.add(new Caution(
                    "cold",
                    List.of(),
                    "This holder can be cooled. Cryogens burn skin and displace the air in a room: follow the local"
                            + " rules for them. Warm the holder above the dew point before it is vented."));
        }
        if (plan.file().stage().biasV().orElse(0) != 0) {
            cautions.add(new Caution(
                    "bias",
                    List.of(),
                    "A potential is put on the samples. Only people allowed to do so connect and switch it, as the"
                            + " local electrical rules say."));
        }
    }

    private static void add(
            List<Caution> cautions, HolderPlan plan, String topic, Predicate<Specimen> concerned, String text) {
        List<String> labels =
                plan.specimens().stream().filter(concerned).map(Specimen::label).toList();
        if (!labels.isEmpty()) cautions.add(new Caution(topic, labels, text));
    }

    private static Optional<String> hazards(Specimen specimen) {
        return specimen.sample().flatMap(Sample::hazards);
    }

    private static SampleForm form(Specimen specimen) {
        return specimen.sample().map(Sample::form).orElse(SampleForm.UNKNOWN);
    }

    private static boolean none(String hazards) {
        String word = hazards.strip();
        return word.equalsIgnoreCase("none") || word.equalsIgnoreCase("none known");
    }

    /** Why the load does not count as ready; empty when a local risk review is on record. */
    public static Optional<String> notReady(HolderPlan plan) {
        return plan.file().localRiskReview().isPresent()
                ? Optional.empty()
                : Optional.of("No local risk review is on record: the plan does not count as ready to load.");
    }

    /** Every reason why the load does not count as ready: no named local risk review, or a {@code stop} that is open. */
    public static List<String> notReady(HolderPlan plan, List<Finding> findings) {
        List<String> reasons = new ArrayList<>(notReady(plan).stream().toList());
        long stops = findings.stream()
                .filter(finding -> finding.severity() == Severity.STOP)
                .count();
        if (stops > 0) {
            reasons.add(stops + (stops == 1 ? " finding says" : " findings say") + " stop: put right before loading.");
        }
        return List.copyOf(reasons);
    }
}
