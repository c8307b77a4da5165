package spotline.holder.check;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import spotline.core.Decimal;
import spotline.core.Finding;
import spotline.holder.Conductivity;
import spotline.holder.ElectricalState;
import spotline.holder.HolderPlan;
import spotline.holder.Mount;
import spotline.holder.MountMethod;
import spotline.holder.Sample;
import spotline.holder.SampleForm;
import spotline.holder.Specimen;
import spotline.holder.SpectrumRole;
import spotline.holder.Spot;

/** Checks that need the record alone: what is missing, and what contradicts itself. */
final class RecordChecks {
    /** Mounts whose metal touches the surface side. */
    private static final Set<MountMethod> METAL_ON_SURFACE = EnumSet.of(MountMethod.METAL_CLIP, MountMethod.SCREWED);

    /** Mounts that hold a powder together. */
    private static final Set<MountMethod> PRESSED = EnumSet.of(MountMethod.PELLET, MountMethod.PRESSED_IN_FOIL);

    private RecordChecks() {}

    static List<Finding> spotRecords(HolderPlan plan) {
        List<Finding> findings = new ArrayList<>();
        for (Spot spot : plan.spots()) {
            List<String> missing = new ArrayList<>();
            List<String> effects = new ArrayList<>();
            if (spot.sample().isEmpty()) missing.add("sample");
            if (spot.position().isEmpty()) missing.add("position");
            if (spot.mount().method() == MountMethod.UNKNOWN) {
                missing.add("mount");
                effects.add("signals of the mount cannot be told from the sample's");
            }
            if (spot.mount().electricalState() == ElectricalState.UNKNOWN) {
                missing.add("electrical state");
                effects.add("the charge method cannot be defended");
            }
            if (missing.isEmpty()) continue;
            String effect = effects.isEmpty() ? "." : ": " + String.join(", and ", effects) + ".";
            findings.add(PlanRule.SPOT_RECORD
                    .finding("Spot " + spot.id() + " has no declared " + listed(missing) + effect)
                    .at(spot.id(), spot.sampleName()));
        }
        return findings;
    }

    private static String listed(List<String> words) {
        int last = words.size() - 1;
        return last == 0 ? words.get(0) : String.join(", ", words.subList(0, last)) + " or " + words.get(last);
    }

    static List<Finding> electrical(HolderPlan plan, PlanCheckSettings settings) {
        List<Finding> partly = new ArrayList<>();
        List<Finding> paths = new ArrayList<>();
        for (Specimen specimen : plan.specimens()) {
            if (partlyGrounded(specimen, settings)) {
                partly.add(Named.finding(
                        plan,
                        specimen,
                        PlanRule.PARTLY_GROUNDED,
                        Named.capital(specimen) + " is declared " + conductivity(specimen)
                                + ", and metal grounds it at one face only: the rest of it may float."
                                + " Isolate the whole of it or bridge it."));
            }
            contradiction(specimen, settings)
                    .ifPresent(text -> paths.add(Named.finding(plan, specimen, PlanRule.CONDUCTION_PATH, text)));
        }
        partly.addAll(paths);
        return partly;
    }

    private static String conductivity(Specimen specimen) {
        boolean insulator =
                specimen.sample().map(Sample::conductivity).orElse(Conductivity.UNKNOWN) == Conductivity.INSULATOR;
        return insulator ? "an insulator" : "of mixed conductivity";
    }

    /**
     * An insulator under a metal clip is half of each unless the clip is isolated too. A sample of mixed conductivity may
     * be held by a clip and rightly be isolated or bridged: only a declared grounding through the clip makes it doubtful.
     * A measured path to the surface settles either case.
     */
    private static boolean partlyGrounded(Specimen specimen, PlanCheckSettings settings) {
        Mount mount = specimen.mount();
        if (!METAL_ON_SURFACE.contains(mount.method())) return false;
        if (mount.resistanceOhm().isPresent() && mount.resistanceOhm().getAsDouble() <= settings.resistanceLimitOhm()) {
            return false;
        }
        return switch (specimen.sample().map(Sample::conductivity).orElse(Conductivity.UNKNOWN)) {
            case INSULATOR -> mount.electricalState() != ElectricalState.ISOLATED;
            case MIXED -> mount.electricalState() == ElectricalState.GROUNDED;
            default -> false;
        };
    }

    private static Optional<String> contradiction(Specimen specimen, PlanCheckSettings settings) {
        OptionalDouble measured = specimen.mount().resistanceOhm();
        if (measured.isEmpty()) return Optional.empty();
        double ohm = measured.getAsDouble();
        double limit = settings.resistanceLimitOhm();
        String resistance = Decimal.significant(ohm, 2) + " ohm to the holder";
        ElectricalState state = specimen.mount().electricalState();
        if (state == ElectricalState.GROUNDED && ohm > limit) {
            double volt = ohm * settings.sampleCurrentA();
            return Optional.of(Named.capital(specimen) + " is declared grounded, but " + resistance
                    + " would leave its surface at " + Decimal.significant(volt, 2) + " V with "
                    + Decimal.significant(settings.sampleCurrentA() * 1e9, 3) + " nA; the limit is "
                    + Decimal.significant(settings.negligiblePotentialV(), 3) + " V.");
        }
        if (state == ElectricalState.ISOLATED && ohm <= limit) {
            return Optional.of(Named.capital(specimen) + " is declared isolated, but only " + resistance
                    + " were measured; above " + Decimal.significant(limit, 2) + " ohm it counts as isolated.");
        }
        return Optional.empty();
    }

    static List<Finding> powderAndIonGun(HolderPlan plan) {
        List<Finding> findings = new ArrayList<>();
        for (Spot spot : plan.spots()) {
            boolean sputtered = spot.spectra().stream().anyMatch(entry -> entry.role() == SpectrumRole.ETCH);
            if (sputtered && loosePowder(spot.specimen())) {
                findings.add(PlanRule.POWDER_SPUTTER
                        .finding(
                                "Spot " + spot.id() + " is loose powder and has a sputter step: powder may be ejected.")
                        .at(spot.id(), spot.sampleName()));
            }
        }
        return findings;
    }

    static boolean loosePowder(Specimen specimen) {
        boolean powder = specimen.sample().map(Sample::form).orElse(SampleForm.UNKNOWN) == SampleForm.POWDER;
        MountMethod method = specimen.mount().method();
        return method == MountMethod.POWDER_ON_TAPE || (powder && !PRESSED.contains(method));
    }
}
