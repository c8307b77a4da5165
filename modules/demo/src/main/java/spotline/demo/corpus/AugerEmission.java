package spotline.demo.corpus;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spotline.reference.AugerLine;
import spotline.reference.Element;
import spotline.reference.Line;
import spotline.reference.Orbital;
import spotline.reference.ReferenceData;

/**
 * Auger groups: listed principal energies with a scatter, further branches set off from them by core-level distances, each
 * broken into uneven parts. Rounded general knowledge of the field, no source.
 */
final class AugerEmission {
    /** @param kineticEv of an uncharged element, eV */
    record Part(double kineticEv, double holes, double widthEv) {}

    private final ReferenceData data;
    private final double photonEv;
    private final Draw draw;

    AugerEmission(ReferenceData data, double photonEv, Draw draw) {
        this.data = data;
        this.photonEv = photonEv;
        this.draw = draw;
    }

    List<Part> of(Element element) {
        List<Part> parts = new ArrayList<>();
        int z = element.z();
        if (z >= 6 && z <= 18) k(element, parts);
        else if (z >= 19 && z <= 36) l(element, parts);
        else if (z >= 42 && z <= 66) m(element, parts);
        return parts;
    }

    private void k(Element element, List<Part> parts) {
        Optional<Double> listed = listed(element, "K");
        double holes = holes(element, "1s");
        if (listed.isEmpty() || holes == 0) return;
        double top = listed.get();
        if (element.z() <= 7) {
            split(parts, top, holes, 14, 3);
            return;
        }
        double apart = level(element, "2s", 20) - level(element, "2p3/2", 5) + draw.between(-1, 4);
        split(parts, top, 0.6 * holes, 5, 2);
        split(parts, top - apart, 0.3 * holes, 7, 2);
        split(parts, top - 2 * apart, 0.1 * holes, 8, 1);
    }

    private void l(Element element, List<Part> parts) {
        int d = Math.max(0, Math.min(10, element.z() - 20));
        double m = level(element, "3p3/2", 30) - level(element, "3d5/2", 4);
        double gap = draw.between(1, 6);
        double base;
        if (listed(element, "L3M45M45").isPresent())
            base = listed(element, "L3M45M45").get();
        else if (listed(element, "L3M23M45").isPresent())
            base = listed(element, "L3M23M45").get() + m + gap;
        else if (listed(element, "L3M23M23").isPresent())
            base = listed(element, "L3M23M23").get() + 2 * (m + gap);
        else return;
        double sharp = 0.7 * Math.pow(d / 10.0, 1.3);
        double core = 0.08 + 0.35 * (1 - d / 10.0);
        double splitting = level(element, "2p1/2", 0) - level(element, "2p3/2", 0);
        for (int twoJ = 3; twoJ >= 1; twoJ -= 2) {
            double holes = holes(element, "2p" + twoJ + "/2") * (twoJ == 1 ? draw.between(0.4, 1) : 1);
            double top = base + (twoJ == 1 ? splitting : 0);
            if (d > 0) split(parts, top, sharp * holes, element.z() >= 28 ? 4 : 8, 2);
            if (d > 0) split(parts, top - m - gap, (1 - sharp - core) * holes, 10, 3);
            split(parts, top - 2 * (m + gap), core * holes, 12, 2);
        }
    }

    private void m(Element element, List<Part> parts) {
        double five = level(element, "3d5/2", 0);
        double four = level(element, "3d3/2", 0);
        double top = listed(element, "M5")
                .or(() -> listed(element, "M4").map(e -> e - (four - five)))
                .orElse(five - 2 * level(element, "4d5/2", 5) - draw.between(5, 20));
        double width = element.z() >= 46 && element.z() <= 56 ? 5 : 11;
        double inner = level(element, "4p3/2", 50) - level(element, "4d5/2", 5);
        split(parts, top, 0.75 * holes(element, "3d5/2"), width, 2);
        split(parts, top + four - five, 0.75 * holes(element, "3d3/2"), width, 2);
        split(parts, top - inner, 0.15 * (holes(element, "3d5/2") + holes(element, "3d3/2")), 16, 2);
    }

    private void split(List<Part> parts, double kinetic, double holes, double width, int pieces) {
        if (holes <= 0) return;
        double moved = kinetic + draw.normal(1.2);
        for (int i = 0; i < pieces; i++) {
            parts.add(new Part(
                    moved + draw.between(-0.4, 0.4) * width * (pieces - 1),
                    holes * draw.between(0.7, 1.2) / pieces,
                    width * draw.between(0.6, 1)));
        }
    }

    private Optional<Double> listed(Element element, String transition) {
        return data.augerLines(element).stream()
                .filter(l -> l.transition().startsWith(transition))
                .map(AugerLine::kineticEv)
                .findFirst();
    }

    private double level(Element element, String orbital, double otherwise) {
        return data.bindingEnergy(new Line(element.symbol(), Orbital.parse(orbital)))
                .map(e -> e.valueEv())
                .orElse(otherwise);
    }

    private double holes(Element element, String orbital) {
        return data.crossSection(new Line(element.symbol(), Orbital.parse(orbital)), photonEv)
                .orElse(0);
    }
}
