package spotline.analysis.identify;

import java.util.List;
import spotline.reference.Element;

/**
 * What an element shows to one photon energy.
 *
 * @param lines the main line first, then by falling cross section
 * @param lowestEv lowest of its states relative to the tabulated energy of its main line, eV
 * @param highestEv highest of them
 * @param rare not met outside special work: it takes more to believe in it
 */
record Atom(
        Element element,
        List<AtomLine> lines,
        List<AugerBranch> auger,
        double lowestEv,
        double highestEv,
        boolean rare) {
    Atom {
        lines = List.copyOf(lines);
        auger = List.copyOf(auger);
    }

    String symbol() {
        return element.symbol();
    }

    AtomLine main() {
        return lines.get(0);
    }
}
