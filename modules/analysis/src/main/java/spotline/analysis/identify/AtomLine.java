package spotline.analysis.identify;

import java.util.List;
import spotline.reference.Line;

/**
 * A photoelectron line of an element, both members of a doublet.
 *
 * @param bindingEv of the member with j = l + 1/2
 * @param crossSection of the whole line, relative to C 1s
 * @param spreadEv how far its tabulated energy may be trusted, eV
 * @param main the line the element is quantified from
 */
record AtomLine(Line line, List<Member> members, double bindingEv, double crossSection, double spreadEv, boolean main) {
    /** Lines wider than this come out broken up or not at all: many-electron effects, eV. */
    private static final double WIDEST_REGULAR = 4;
    /** Shallower lines take part in bonds, eV. */
    private static final double SHALLOWEST_REGULAR = 25;
    /**
     * Inner valence s levels down to here (F 2s, Ca 3s) are broken up by many-electron effects, and the tables hold gas
     * values for some: nothing is proved by their absence, eV.
     */
    private static final double SHALLOWEST_REGULAR_S = 45;

    record Member(Line line, double bindingEv, double crossSection, double widthEv) {}

    AtomLine {
        members = List.copyOf(members);
    }

    /** Whether shape and area follow the tables closely enough to count as proof. */
    boolean regular() {
        int l = line.orbital().l();
        boolean shallow = !main && bindingEv < (l == 0 ? SHALLOWEST_REGULAR_S : l == 1 ? SHALLOWEST_REGULAR : 0);
        return members.get(0).widthEv() <= WIDEST_REGULAR && !shallow;
    }

    /** The line as a survey shows it: in two where the members of its doublet stand apart. */
    List<AtomLine> shown(double resolvedEv) {
        if (members.size() < 2 || members.get(1).bindingEv() - members.get(0).bindingEv() < resolvedEv) {
            return List.of(this);
        }
        return members.stream()
                .map(m -> new AtomLine(
                        m.line(), List.of(m), m.bindingEv(), m.crossSection(), spreadEv, main && m == members.get(0)))
                .toList();
    }
}
