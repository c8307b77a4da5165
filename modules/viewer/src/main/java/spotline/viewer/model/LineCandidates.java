package spotline.viewer.model;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import spotline.analysis.identify.ElementSeen;
import spotline.analysis.identify.Identification;
import spotline.reference.AugerLine;
import spotline.reference.Element;
import spotline.reference.Elements;
import spotline.reference.LineData;
import spotline.reference.ReferenceData;
import spotline.run.SpotResult;

/** Which lines the reference data have near an energy: what a click on the bench answers. */
public final class LineCandidates {
    /** A line near an energy, eV; {@code known} where its element was found or declared at the spot. */
    public record Candidate(String line, double energyEv, boolean known) {}

    /** How far a line may lie from where it is looked for, eV. */
    static final double REACH_EV = 3;

    private static final int MOST = 6;

    private LineCandidates() {}

    /** Near a measured energy, eV, of a spot's scan: on its referenced scale, else as its survey was shifted. */
    static List<Candidate> at(ReferenceData reference, SpotResult spot, double photonEnergyEv, double measuredEv) {
        Set<String> known = new TreeSet<>();
        spot.identification()
                .ifPresent(i -> i.elements().stream().map(ElementSeen::element).forEach(known::add));
        spot.composition().forEach(row -> known.add(row.element()));
        double shift = spot.charge()
                .shiftEv()
                .orElseGet(
                        () -> spot.identification().map(Identification::shiftEv).orElse(0.0));
        return near(reference, photonEnergyEv, measuredEv + shift, REACH_EV, known, MOST);
    }

    /**
     * @param bindingEv referenced binding energy, eV
     * @param reachEv how far a line may lie
     * @param known elements found or declared
     * @param most how many are wanted
     * @return elements that are known first, then by distance
     */
    public static List<Candidate> near(
            ReferenceData reference,
            double photonEnergyEv,
            double bindingEv,
            double reachEv,
            Set<String> known,
            int most) {
        List<Candidate> found = new ArrayList<>();
        for (Element element : Elements.all()) {
            if (element.z() < 3) continue;
            boolean isKnown = known.contains(element.symbol());
            for (LineData line : reference.lines(element, photonEnergyEv)) {
                double at = line.energy().valueEv();
                if (Math.abs(at - bindingEv) <= reachEv)
                    found.add(new Candidate(line.line().toString(), at, isKnown));
            }
            if (!isKnown) continue;
            for (AugerLine line : reference.augerLines(element)) {
                double at = line.apparentBindingEv(photonEnergyEv);
                if (Math.abs(at - bindingEv) <= reachEv) {
                    found.add(new Candidate(element.symbol() + " " + line.transition(), at, true));
                }
            }
        }
        found.sort(Comparator.comparing((Candidate c) -> !c.known())
                .thenComparingDouble(c -> Math.abs(c.energyEv() - bindingEv)));
        return List.copyOf(found.subList(0, Math.min(most, found.size())));
    }
}
