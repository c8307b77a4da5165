package spotline.analysis.identify;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.reference.AugerLine;
import spotline.reference.Element;
import spotline.reference.Elements;
import spotline.reference.Line;
import spotline.reference.Orbital;
import spotline.reference.ReferenceData;

/**
 * Auger groups of an element: where they lie and how many core holes feed them.
 *
 * <p>Energies by the equivalent-cores estimate {@code E_abc = E_a(Z) - [E_b(Z) + E_b(Z+1)]/2 - [E_c(Z) + E_c(Z+1)]/2},
 * moved as one so that the listed principal line comes out. Nearly every hole of these levels decays by an Auger process.
 * How the decays divide among the branches is rounded general knowledge of the field.
 *
 * <p>Units: eV. Errors: none; an element without a group above {@value #SLOWEST_EV} eV has none.
 *
 * <p>Source: M.F. Chung, L.H. Jenkins, Surf. Sci. 22 (1970) 479, for the estimate; shares from memory.
 */
final class AugerBranches {
    /** Slower Auger electrons ride on the steep secondary background. */
    static final double SLOWEST_EV = 110;

    private static final double UNLISTED_VALENCE_EV = 4;

    private record Decay(String name, String hole, String second, String third, double share, double widthEv) {}

    private final ReferenceData reference;
    private final double photonEv;

    AugerBranches(ReferenceData reference, double photonEv) {
        this.reference = reference;
        this.photonEv = photonEv;
    }

    List<AugerBranch> of(Element element) {
        Optional<Element> next = Elements.byNumber(element.z() + 1);
        List<AugerLine> listed = reference.augerLines(element);
        List<AugerBranch> branches = new ArrayList<>();
        if (next.isEmpty()) return branches;
        List<Decay> decays = decays(element.z());
        double move = 0;
        for (Decay decay : decays) {
            OptionalDouble estimate = estimate(element, next.get(), decay);
            Optional<AugerLine> line = line(listed, decay);
            if (line.isPresent() && estimate.isPresent()) {
                move = line.get().kineticEv() - estimate.getAsDouble();
                break;
            }
        }
        for (Decay decay : decays) {
            OptionalDouble estimate = estimate(element, next.get(), decay);
            OptionalDouble holes =
                    reference.crossSection(new Line(element.symbol(), Orbital.parse(decay.hole())), photonEv);
            if (estimate.isEmpty() || holes.isEmpty()) continue;
            Optional<AugerLine> line = line(listed, decay);
            double kinetic = line.map(AugerLine::kineticEv).orElse(estimate.getAsDouble() + move);
            if (kinetic < SLOWEST_EV || kinetic > photonEv - 10) continue;
            branches.add(new AugerBranch(
                    decay.name(), kinetic, decay.widthEv(), holes.getAsDouble() * decay.share(), line.isPresent()));
        }
        return branches;
    }

    private static Optional<AugerLine> line(List<AugerLine> listed, Decay decay) {
        return listed.stream().filter(l -> l.transition().equals(decay.name())).findFirst();
    }

    private OptionalDouble estimate(Element element, Element next, Decay decay) {
        Optional<Double> hole = level(element, decay.hole());
        if (hole.isEmpty()) return OptionalDouble.empty();
        double energy = hole.get();
        for (String other : List.of(decay.second(), decay.third())) {
            energy -= 0.5
                    * (level(element, other).orElse(UNLISTED_VALENCE_EV)
                            + level(next, other).orElse(UNLISTED_VALENCE_EV));
        }
        return OptionalDouble.of(energy);
    }

    private Optional<Double> level(Element element, String orbital) {
        return reference
                .bindingEnergy(new Line(element.symbol(), Orbital.parse(orbital)))
                .map(e -> e.valueEv());
    }

    private static List<Decay> decays(int z) {
        if (z <= 7) return List.of(new Decay("KVV", "1s", "2p3/2", "2p3/2", 1, z == 6 ? 13 : 9));
        if (z <= 18) return k();
        if (z <= 36) return l(z);
        if (z >= 42 && z <= 71) return m(z);
        return List.of();
    }

    private static List<Decay> k() {
        return List.of(
                new Decay("KL23L23", "1s", "2p3/2", "2p3/2", 0.64, 5),
                new Decay("KL1L23", "1s", "2s", "2p3/2", 0.27, 7),
                new Decay("KL1L1", "1s", "2s", "2s", 0.09, 9));
    }

    private static List<Decay> l(int z) {
        double filled = Math.max(0, Math.min(1, (z - 20) / 9.0));
        double sharp = 0.65 * Math.pow(filled, 1.5);
        double core = 0.38 * (1 - filled) + 0.10 * filled;
        double width = z >= 28 ? 4 : 8;
        List<Decay> decays = new ArrayList<>();
        for (int twoJ = 3; twoJ >= 1; twoJ -= 2) {
            String hole = "2p" + twoJ + "/2";
            String shell = twoJ == 3 ? "L3" : "L2";
            decays.add(new Decay(shell + "M45M45", hole, "3d5/2", "3d5/2", sharp, width));
            decays.add(new Decay(shell + "M23M45", hole, "3p3/2", "3d5/2", 1 - sharp - core, 10));
            decays.add(new Decay(shell + "M23M23", hole, "3p3/2", "3p3/2", core, 12));
        }
        return decays;
    }

    private static List<Decay> m(int z) {
        double filled = Math.max(0, Math.min(1, (z - 57) / 14.0));
        List<Decay> decays = new ArrayList<>();
        for (int twoJ = 5; twoJ >= 3; twoJ -= 2) {
            String hole = "3d" + twoJ + "/2";
            String shell = twoJ == 5 ? "M5" : "M4";
            double width = z >= 46 && z <= 55 ? 4.5 : 9;
            decays.add(new Decay(shell + "N45N45", hole, "4d5/2", "4d5/2", 0.75 * (1 - filled) + 0.1, width));
            decays.add(new Decay(shell + "N23N45", hole, "4p3/2", "4d5/2", 0.15, 16));
            if (filled > 0) decays.add(new Decay(shell + "N45N67", hole, "4d5/2", "4f7/2", 0.6 * filled, 12));
        }
        return decays;
    }
}
