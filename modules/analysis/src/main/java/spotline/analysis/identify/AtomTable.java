package spotline.analysis.identify;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import spotline.reference.ChemicalState;
import spotline.reference.Element;
import spotline.reference.Elements;
import spotline.reference.EnergyRange;
import spotline.reference.LevelEnergy;
import spotline.reference.Line;
import spotline.reference.LineData;
import spotline.reference.NaturalWidth;
import spotline.reference.ReferenceData;

/**
 * Lithium to uranium as one photon energy shows them.
 *
 * <p>Shape: an atom an element that has a main line. Units: eV, cross sections relative to C 1s. Errors: none.
 */
final class AtomTable {
    private static final int LIGHTEST = 3;
    private static final int HEAVIEST = 92;
    /** Lines closer to the photon energy than this ride on the steep secondary background, eV. */
    private static final double SLOWEST = 70;
    /** Shallower levels belong to the valence band, eV. */
    private static final double SHALLOWEST = 2.5;

    private static final double UNKNOWN_WIDTH = 1;
    /** Two X-ray lines closer than this have the same cross sections, eV. */
    private static final double SAME_PHOTON = 0.5;

    /** A metal's state may lie this far above the element, and a little below it, eV (common practice, no source). */
    private static final double LARGEST_RISE = 4.2;

    private static final double LARGEST_FALL = 1.0;
    /** Elements whose lines hardly move: closed shells. */
    private static final Set<String> STEADY =
            Set.of("Li", "O", "Na", "K", "Rb", "Cs", "F", "Ne", "Ar", "Kr", "Xe", "Mg", "Ca", "Sr", "Ba");

    private static final double STEADY_RANGE = 1.5;

    private static final Set<String> RARE =
            Set.of("Ne", "Kr", "Tc", "Xe", "Pm", "Po", "At", "Rn", "Fr", "Ra", "Ac", "Pa");

    private final double photonEv;
    private final List<Atom> atoms;

    private AtomTable(double photonEv, List<Atom> atoms) {
        this.photonEv = photonEv;
        this.atoms = List.copyOf(atoms);
    }

    /** The two common sources and the shipped tables, read once. */
    private static final class AluminiumKAlpha {
        private static final AtomTable TABLE = read(ReferenceData.shipped(), 1486.6);
    }

    private static final class MagnesiumKAlpha {
        private static final AtomTable TABLE = read(ReferenceData.shipped(), 1253.6);
    }

    static AtomTable of(ReferenceData reference, double photonEv) {
        if (reference == ReferenceData.shipped()) {
            if (Math.abs(photonEv - 1486.6) <= SAME_PHOTON) return AluminiumKAlpha.TABLE;
            if (Math.abs(photonEv - 1253.6) <= SAME_PHOTON) return MagnesiumKAlpha.TABLE;
        }
        return read(reference, photonEv);
    }

    private static AtomTable read(ReferenceData reference, double photonEv) {
        AugerBranches auger = new AugerBranches(reference, photonEv);
        List<Atom> atoms = new ArrayList<>();
        for (Element element : Elements.all()) {
            if (element.z() < LIGHTEST || element.z() > HEAVIEST) continue;
            atom(reference, element, auger, photonEv).ifPresent(atoms::add);
        }
        return new AtomTable(photonEv, atoms);
    }

    double photonEv() {
        return photonEv;
    }

    List<Atom> atoms() {
        return atoms;
    }

    Optional<Atom> atom(String symbol) {
        return atoms.stream().filter(a -> a.symbol().equals(symbol)).findFirst();
    }

    private static Optional<Atom> atom(ReferenceData reference, Element element, AugerBranches auger, double photonEv) {
        Optional<Line> main = reference.mainLine(element, photonEv);
        if (main.isEmpty()) return Optional.empty();
        List<AtomLine> lines = new ArrayList<>();
        for (LineData data : reference.lines(element, photonEv)) {
            if (data.kineticEv() < SLOWEST || data.energy().valueEv() < SHALLOWEST) continue;
            line(reference, data, main.get(), photonEv).ifPresent(lines::add);
        }
        if (lines.stream().noneMatch(AtomLine::main)) return Optional.empty();
        lines.sort(Comparator.comparing((AtomLine l) -> !l.main())
                .thenComparing(
                        Comparator.comparingDouble(AtomLine::crossSection).reversed()));
        EnergyRange states = states(reference, element, main.get(), lines.get(0).bindingEv());
        return Optional.of(new Atom(
                element, lines, auger.of(element), states.lowEv(), states.highEv(), RARE.contains(element.symbol())));
    }

    private static Optional<AtomLine> line(ReferenceData reference, LineData data, Line main, double photonEv) {
        List<AtomLine.Member> members = new ArrayList<>();
        for (Line member : data.members()) {
            Optional<LevelEnergy> energy = reference.bindingEnergy(member);
            OptionalDouble sigma = reference.crossSection(member, photonEv);
            if (energy.isEmpty() || sigma.isEmpty()) continue;
            double width =
                    reference.naturalWidth(member).map(NaturalWidth::fwhmEv).orElse(UNKNOWN_WIDTH);
            members.add(new AtomLine.Member(member, energy.get().valueEv(), sigma.getAsDouble(), width));
        }
        if (members.isEmpty()) return Optional.empty();
        double sigma =
                members.stream().mapToDouble(AtomLine.Member::crossSection).sum();
        return Optional.of(new AtomLine(
                data.line(),
                members,
                data.energy().valueEv(),
                sigma,
                data.energy().spreadEv(),
                data.line().equals(main)));
    }

    private static EnergyRange states(ReferenceData reference, Element element, Line main, double bindingEv) {
        boolean steady = STEADY.contains(element.symbol());
        double low = steady ? -STEADY_RANGE : -LARGEST_FALL;
        double high = steady ? STEADY_RANGE : LARGEST_RISE;
        for (ChemicalState state : reference.chemicalStates(main.high())) {
            if (state.satellite() || !state.line().high().equals(main.high())) continue;
            low = Math.min(low, state.valueEv() - bindingEv - 0.3);
            high = Math.max(high, state.valueEv() - bindingEv + 0.3);
        }
        return new EnergyRange(low, high);
    }
}
