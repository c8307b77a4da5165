package spotline.holder.check;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.locationtech.jts.geom.Polygon;
import spotline.core.Decimal;
import spotline.core.Finding;
import spotline.holder.Clip;
import spotline.holder.Conductivity;
import spotline.holder.ElectricalState;
import spotline.holder.Mount;
import spotline.holder.MountMethod;
import spotline.holder.Sample;
import spotline.holder.Shapes;
import spotline.holder.Specimen;
import spotline.holder.check.Layout.Piece;

/** Conduction paths as declared and as the mount allows, and the potentials to expect. */
final class ElectricalChecks {
    /** Mounts whose metal touches the surface side. */
    private static final Set<MountMethod> METAL_ON_SURFACE = EnumSet.of(MountMethod.METAL_CLIP, MountMethod.SCREWED);

    /** Mounts that put an insulator between specimen and holder. */
    private static final Set<MountMethod> INSULATING = EnumSet.of(MountMethod.COVER_SLIP, MountMethod.ADHESIVE_TAPE);

    /** A clip is metal unless its material has one of these words in it. */
    private static final List<String> NO_METAL =
            List.of("glass", "ceramic", "polymer", "plastic", "ptfe", "polyimide", "tape", "rubber", "mica", "wood");

    private final Layout layout;
    private final PlanCheckSettings.Electrical settings;
    private final List<Finding> findings = new ArrayList<>();

    private ElectricalChecks(Layout layout, PlanCheckSettings.Electrical settings) {
        this.layout = layout;
        this.settings = settings;
    }

    static List<Finding> findings(Layout layout, PlanCheckSettings settings) {
        ElectricalChecks checks = new ElectricalChecks(layout, settings.electrical());
        for (Specimen specimen : layout.plan().specimens()) {
            if (checks.partlyGrounded(specimen)) {
                checks.add(
                        specimen,
                        PlanRule.PARTLY_GROUNDED,
                        Named.capital(specimen) + " is declared " + conductivityWords(specimen)
                                + ", and metal grounds it at one face only: the rest of it may float."
                                + " Isolate the whole of it or bridge it.");
            }
            checks.contradiction(specimen);
            checks.layer(specimen);
        }
        checks.neighbours();
        return checks.findings;
    }

    private static Conductivity conductivity(Specimen specimen) {
        return specimen.sample().isPresent() ? specimen.sample().get().conductivity() : Conductivity.UNKNOWN;
    }

    private static String conductivityWords(Specimen specimen) {
        return conductivity(specimen) == Conductivity.INSULATOR ? "an insulator" : "of mixed conductivity";
    }

    /**
     * An insulator under a metal clip is half of each unless the clip is isolated too. A sample of mixed conductivity may
     * be held by a clip and rightly be isolated or bridged: only a declared grounding through the clip makes it doubtful.
     * A strap or a measured path to the surface settles either case.
     */
    private boolean partlyGrounded(Specimen specimen) {
        Mount mount = specimen.mount();
        if (!METAL_ON_SURFACE.contains(mount.method()) && !metalClip(mount)) return false;
        boolean path = mount.resistanceOhm().isPresent()
                && mount.resistanceOhm().getAsDouble() <= settings.resistanceLimitOhm();
        if (path || mount.strapped()) return false;
        return switch (conductivity(specimen)) {
            case INSULATOR -> mount.electricalState() != ElectricalState.ISOLATED;
            case MIXED -> mount.electricalState() == ElectricalState.GROUNDED;
            default -> false;
        };
    }

    private static boolean metalClip(Mount mount) {
        for (Clip clip : mount.clips()) {
            String words = (clip.name().orElse("") + " " + clip.material().orElse("")).toLowerCase(Locale.ROOT);
            boolean metal = true;
            for (String word : NO_METAL) metal &= !words.contains(word);
            if (metal) return true;
        }
        return false;
    }

    private void contradiction(Specimen specimen) {
        OptionalDouble measured = specimen.mount().resistanceOhm();
        ElectricalState state = specimen.mount().electricalState();
        if (measured.isPresent()) {
            measured(specimen, state, measured.getAsDouble());
        } else if (state == ElectricalState.GROUNDED) {
            noPath(specimen);
        }
    }

    private void measured(Specimen specimen, ElectricalState state, double ohm) {
        double limit = settings.resistanceLimitOhm();
        String resistance = Decimal.significant(ohm, 2) + " ohm to the holder";
        if (state == ElectricalState.GROUNDED && ohm > limit) {
            double volt = SurfacePotential.ofPath(settings.sampleCurrentA(), ohm);
            add(
                    specimen,
                    PlanRule.CONDUCTION_PATH,
                    Named.capital(specimen) + " is declared grounded, but " + resistance
                            + " would leave its surface at " + volts(volt) + " with " + current() + "; the limit is "
                            + volts(settings.negligiblePotentialV()) + ".");
        } else if (state == ElectricalState.ISOLATED && ohm <= limit) {
            add(
                    specimen,
                    PlanRule.CONDUCTION_PATH,
                    Named.capital(specimen) + " is declared isolated, but only " + resistance
                            + " were measured; above " + Decimal.significant(limit, 2)
                            + " ohm it counts as isolated.");
        }
    }

    /** Declared grounded, with nothing in the record through which a current could flow. */
    private void noPath(Specimen specimen) {
        Mount mount = specimen.mount();
        if (mount.strapped() || conductivity(specimen) == Conductivity.INSULATOR) return;
        if (INSULATING.contains(mount.method()) && !metalClip(mount)) {
            add(
                    specimen,
                    PlanRule.CONDUCTION_PATH,
                    Named.capital(specimen) + " is declared grounded, but its mount, "
                            + mount.method().word()
                            + ", insulates it, and neither a strap nor a clip nor a measured resistance is declared.");
        } else if (mount.method() == MountMethod.METAL_CLIP && noClipTouches(specimen)) {
            add(
                    specimen,
                    PlanRule.CONDUCTION_PATH,
                    Named.capital(specimen) + " is declared grounded by a clip, but no declared clip touches it.");
        }
    }

    private boolean noClipTouches(Specimen specimen) {
        Optional<Polygon> shape = layout.footprint(specimen);
        if (shape.isEmpty() || specimen.mount().clips().isEmpty()) return false;
        for (Clip clip : specimen.mount().clips()) {
            Optional<Polygon> part = Shapes.clip(clip);
            if (part.isEmpty() || Polygons.gap(part.get(), shape.get()) < Reach.ROUNDING_MM) return false;
        }
        return true;
    }

    private void layer(Specimen specimen) {
        if (specimen.sample().isEmpty() || specimen.mount().electricalState() != ElectricalState.GROUNDED) return;
        Sample sample = specimen.sample().get();
        boolean film = sample.filmThicknessUm().isPresent();
        if (sample.resistivityOhmCm().isEmpty()
                || !(film || specimen.thicknessMm().isPresent())) return;
        double um = film
                ? sample.filmThicknessUm().getAsDouble()
                : specimen.thicknessMm().getAsDouble() * 1000;
        double ohmCm = sample.resistivityOhmCm().getAsDouble();
        double volt =
                SurfacePotential.ofLayer(settings.sampleCurrentA(), settings.illuminatedAreaMm2(), um * 1e-4, ohmCm);
        if (volt <= settings.negligiblePotentialV()) return;
        add(
                specimen,
                PlanRule.EXPECTED_POTENTIAL,
                Named.capital(specimen) + " is declared grounded, but " + current() + " over "
                        + Decimal.significant(settings.illuminatedAreaMm2(), 2) + " mm2 through "
                        + Decimal.significant(um, 3) + " um of " + Decimal.significant(ohmCm, 2)
                        + " ohm cm would leave its surface at " + volts(volt) + "; the limit is "
                        + volts(settings.negligiblePotentialV()) + ".");
    }

    private void neighbours() {
        List<Piece> pieces = layout.pieces();
        for (int i = 0; i < pieces.size(); i++) {
            for (int j = i + 1; j < pieces.size(); j++) {
                Specimen first = Layout.first(pieces.get(i), pieces.get(j)).specimen();
                Specimen second = Layout.second(pieces.get(i), pieces.get(j)).specimen();
                if (!unlike(first, second)) continue;
                double gap = near(pieces.get(i).shape(), pieces.get(j).shape());
                if (gap >= settings.unlikeNeighbourMm()) continue;
                if (Polygons.shared(pieces.get(i).shape(), pieces.get(j).shape()) > Polygons.ROUNDING_MM2) continue;
                add(
                        first,
                        PlanRule.UNLIKE_NEIGHBOURS,
                        Named.capital(first) + " is "
                                + first.mount().electricalState().word() + " and "
                                + second.label() + ", " + Reach.millimetres(gap) + " away, is "
                                + second.mount().electricalState().word()
                                + ": the potential of one can disturb the other. "
                                + Decimal.significant(settings.unlikeNeighbourMm(), 2) + " mm are asked for.");
            }
        }
    }

    private double near(Polygon a, Polygon b) {
        double extents = a.getEnvelopeInternal().distance(b.getEnvelopeInternal());
        return extents >= settings.unlikeNeighbourMm() ? extents : Polygons.gap(a, b);
    }

    private static boolean unlike(Specimen a, Specimen b) {
        ElectricalState first = a.mount().electricalState();
        ElectricalState second = b.mount().electricalState();
        return first != second && first != ElectricalState.UNKNOWN && second != ElectricalState.UNKNOWN;
    }

    private String current() {
        return Decimal.significant(settings.sampleCurrentA() * 1e9, 3) + " nA";
    }

    private static String volts(double volt) {
        return Decimal.significant(volt, 2) + " V";
    }

    private void add(Specimen specimen, PlanRule rule, String message) {
        findings.add(Named.finding(layout.plan(), specimen, rule, message));
    }
}
