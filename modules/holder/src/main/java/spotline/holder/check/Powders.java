package spotline.holder.check;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import spotline.core.Decimal;
import spotline.core.Finding;
import spotline.holder.HolderPlan;
import spotline.holder.Mount;
import spotline.holder.MountMethod;
import spotline.holder.Outline;
import spotline.holder.PowderRecord;
import spotline.holder.PowderRecord.Quantity;
import spotline.holder.SampleForm;
import spotline.holder.Specimen;
import spotline.holder.Spot;

/** Powders: what makes one loose, how it lies on its tape, and what an ion gun does to it. */
final class Powders {
    /** Mounts that hold a powder together. */
    private static final Set<MountMethod> PRESSED = EnumSet.of(MountMethod.PELLET, MountMethod.PRESSED_IN_FOIL);

    private static final Set<MountMethod> TAPES = EnumSet.of(MountMethod.CARBON_TAPE, MountMethod.ADHESIVE_TAPE);

    private Powders() {}

    static boolean loose(Specimen specimen) {
        MountMethod method = specimen.mount().method();
        return method == MountMethod.POWDER_ON_TAPE || (powder(specimen) && !PRESSED.contains(method));
    }

    static boolean onTape(Specimen specimen) {
        MountMethod method = specimen.mount().method();
        return method == MountMethod.POWDER_ON_TAPE || (powder(specimen) && TAPES.contains(method));
    }

    private static boolean powder(Specimen specimen) {
        return specimen.sample().isPresent() && specimen.sample().get().form() == SampleForm.POWDER;
    }

    static List<Finding> findings(HolderPlan plan, PlanCheckSettings settings) {
        List<Finding> findings = new ArrayList<>();
        Set<String> ejected = new HashSet<>();
        for (Spot spot : plan.spots()) {
            if (spot.sputtered() && loose(spot.specimen())) {
                ejected.add(spot.specimen().id());
                findings.add(Named.finding(
                        spot,
                        PlanRule.POWDER_SPUTTER,
                        "Spot " + spot.id() + " is loose powder and has a sputter step: powder may be ejected."));
            }
        }
        for (Specimen specimen : plan.specimens()) {
            if (!onTape(specimen)) continue;
            onTape(plan, specimen, settings.handling(), findings);
            if (!ejected.contains(specimen.id())) record(plan, specimen, findings);
        }
        return findings;
    }

    private static void onTape(
            HolderPlan plan, Specimen specimen, PlanCheckSettings.Handling settings, List<Finding> findings) {
        Mount mount = specimen.mount();
        Optional<Outline> patch = mount.tapePatch().or(specimen::outline);
        if (patch.isPresent()) {
            double across = Math.max(patch.get().width(), patch.get().height());
            if (across >= settings.powderPatchMm() - Reach.ROUNDING_MM) {
                findings.add(Named.finding(
                        plan,
                        specimen,
                        PlanRule.POWDER_PATCH,
                        Named.capital(specimen) + " is powder on a patch " + Reach.millimetres(across)
                                + " across; under " + Reach.millimetres(settings.powderPatchMm()) + " is usual."));
            }
        }
        Optional<PowderRecord> record = mount.powder();
        Quantity quantity = record.isPresent() ? record.get().quantity() : Quantity.UNKNOWN;
        double showing = record.isPresent() ? record.get().tapeShowing().orElse(0) : 0;
        if (quantity == Quantity.SPARSE || showing > 0) {
            String carbon = showing > 0
                    ? " Tape over " + Decimal.significant(100 * showing, 2) + " % of the area adds about "
                            + Decimal.significant(showing * settings.tapeCarbonPercent(), 2) + " at.% C."
                    : " Its carbon adds to the sample's.";
            findings.add(Named.finding(
                    plan,
                    specimen,
                    PlanRule.POWDER_QUANTITY,
                    Named.capital(specimen) + " does not cover its tape." + carbon));
        } else if (quantity == Quantity.HEAPED) {
            findings.add(Named.finding(
                    plan,
                    specimen,
                    PlanRule.POWDER_QUANTITY,
                    Named.capital(specimen) + " is more powder than covers the tape: grains lie loose on grains."));
        }
        if (record.isPresent() && !record.get().looseGrainsRemoved().orElse(true)) {
            findings.add(Named.finding(
                    plan,
                    specimen,
                    PlanRule.POWDER_LOOSE_GRAINS,
                    "Loose grains of " + specimen.label()
                            + " were not removed: they can be shed onto the other samples and into the vacuum."));
        }
    }

    private static void record(HolderPlan plan, Specimen specimen, List<Finding> findings) {
        Optional<PowderRecord> record = specimen.mount().powder();
        List<String> missing = new ArrayList<>();
        if (record.isEmpty()
                || (record.get().quantity() == Quantity.UNKNOWN
                        && record.get().tapeShowing().isEmpty())) {
            missing.add("how much powder there is");
        }
        if (record.isEmpty() || record.get().looseGrainsRemoved().isEmpty()) {
            missing.add("whether loose grains were removed");
        }
        if (missing.isEmpty()) return;
        findings.add(Named.finding(
                plan,
                specimen,
                PlanRule.POWDER_RECORD,
                "The record of " + specimen.label() + " does not say " + Named.either(missing) + "."));
    }
}
