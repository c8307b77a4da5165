package spotline.report.facts;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import spotline.analysis.charge.ChargeEvidence;
import spotline.analysis.charge.ChargeEvidence.Candidate;
import spotline.analysis.charge.ChargeEvidence.Rigidity;
import spotline.analysis.charge.ChargeEvidence.SiblingLine;
import spotline.analysis.charge.ChargeEvidence.TwoPotentials;
import spotline.analysis.charge.ChargeEvidence.UnmovedLine;
import spotline.analysis.charge.ChargeEvidence.Width;
import spotline.analysis.charge.ChargeMethod;
import spotline.analysis.charge.ChargeReference;
import spotline.analysis.charge.Drift;
import spotline.analysis.charge.FermiEdge;
import spotline.core.Estimate;
import spotline.report.text.DisplayNumber;

/** What speaks for and against an energy reference, a plain statement each; what was not measured is said too. */
public final class ChargeStatements {
    /** One piece of evidence: what it is about, and what was found. */
    public record Statement(String about, String found) {}

    private ChargeStatements() {}

    public static List<Statement> of(ChargeReference charge) {
        ChargeEvidence evidence = charge.evidence();
        List<Statement> all = new ArrayList<>();
        if (!evidence.declared().isEmpty()) {
            all.add(new Statement("The record says", String.join("; ", evidence.declared())));
        }
        width(charge).ifPresent(w -> all.add(new Statement("Width", width(w))));
        evidence.shape().ifPresent(s -> all.add(new Statement("One potential or two", shape(s))));
        evidence.drift().ifPresent(d -> all.add(new Statement("First and last scan", drift(d))));
        evidence.rigidity().ifPresent(r -> all.add(new Statement("Lines measured twice", rigidity(r))));
        evidence.check().ifPresent(c -> all.add(new Statement("Second reference", agreement(c, charge))));
        siblings(evidence).ifPresent(s -> all.add(new Statement("Other spots of the sample", s)));
        evidence.fermiEdge().ifPresent(e -> all.add(new Statement("Fermi edge", edge(e))));
        if (!evidence.unmoved().isEmpty()) {
            all.add(new Statement("Metal lines that did not move", unmoved(evidence.unmoved())));
        } else if (charge.method() != ChargeMethod.NONE && charge.shiftEv().isPresent()) {
            all.add(new Statement("Metal lines that did not move", "none found"));
        }
        return all;
    }

    /** The width that bears on the reference: that of the reference line. */
    public static Optional<Width> width(ChargeReference charge) {
        return charge.evidence().widths().stream()
                .filter(w -> charge.fit().isPresent()
                        ? w.spectrum().equals(charge.fit().get().spectrum())
                        : !charge.referenceLine().isEmpty()
                                && charge.referenceLine().startsWith(w.line()))
                .findFirst();
    }

    /** The sibling's line that differs most. */
    public static Optional<SiblingLine> furthestSibling(ChargeEvidence evidence) {
        return evidence.siblings().stream()
                .max(Comparator.comparingDouble(s -> Math.abs(s.differenceEv().value())));
    }

    /** {@code "Si 2p, SiO2"}. */
    public static String name(Candidate candidate) {
        return candidate.state().isEmpty() ? candidate.line() : candidate.line() + ", " + candidate.state();
    }

    private static String width(Width w) {
        String own = w.line() + " is " + text(w.fwhm()) + " eV wide";
        if (w.narrowest().isEmpty()) return own + "; no same line elsewhere on the holder to hold it against";
        double extra = w.extraEv().orElse(0);
        return own + "; the narrowest same line elsewhere on the holder "
                + text(w.narrowest().get()) + " eV, at spot " + w.narrowestSpot()
                + (extra > 0
                        ? ": broader by " + DisplayNumber.fixed(extra, 2) + " eV, taken in squares"
                        : ": none narrower");
    }

    private static String shape(TwoPotentials s) {
        if (!s.asked()) {
            return "the shape and the width of C 1s ask for no second potential (gain in deviance "
                    + DisplayNumber.fixed(s.devianceGain(), 1) + ")";
        }
        if (s.byWidth()) return "C 1s is wider than one potential usually leaves it";
        return "C 1s is better described at two potentials "
                + DisplayNumber.of(s.separationEv(), s.separationU(), 2).text() + " eV apart (gain in deviance "
                + DisplayNumber.fixed(s.devianceGain(), 1) + ")";
    }

    private static String drift(Drift d) {
        String change = d.line() + " moved by " + signed(d.changeEv()) + " eV over "
                + d.scans().size() + " scans";
        return change
                + d.slopeEvPerHour()
                        .map(s -> "; regression over their times " + signed(s) + " eV/h")
                        .orElse("; their times are not known, so no rate");
    }

    private static String rigidity(Rigidity r) {
        String lines = r.lines().stream()
                .map(m -> m.line() + " " + signed(m.changeEv()))
                .collect(Collectors.joining(", "));
        return (r.together()
                        ? "moved together: "
                        : "moved apart, by up to " + DisplayNumber.fixed(r.largestEv(), 2) + " eV from their mean: ")
                + lines + " eV";
    }

    private static String agreement(Candidate c, ChargeReference charge) {
        String says = name(c) + " at "
                + DisplayNumber.of(c.referenceEv(), OptionalDouble.of(c.referenceU()), 2)
                        .text() + " eV would give a shift of " + DisplayNumber.signed(c.shiftEv(), 2) + " eV";
        if (charge.shiftEv().isEmpty()) return says;
        double apart = c.shiftEv() - charge.shiftEv().getAsDouble();
        double u = Math.hypot(
                charge.standardUncertainty().orElse(0), c.standardUncertainty().orElse(c.referenceU()));
        return says + ", " + DisplayNumber.signed(apart, 2) + " \u00b1 " + DisplayNumber.fixed(u, 2)
                + " eV from the one in use";
    }

    private static Optional<String> siblings(ChargeEvidence evidence) {
        if (evidence.siblings().isEmpty()) return Optional.empty();
        return Optional.of("referenced energies differ by "
                + evidence.siblings().stream()
                        .map(s -> signed(s.differenceEv()) + " eV in " + s.line() + " from spot " + s.otherSpot())
                        .collect(Collectors.joining(", ")));
    }

    private static String edge(FermiEdge e) {
        return "at " + text(e.positionEv()) + " eV as measured, "
                + DisplayNumber.fixed(e.width1090Ev(), 2) + " eV wide from 10 to 90 %, of which "
                + DisplayNumber.fixed(FermiEdge.thermalWidthEv(e.temperatureK()), 2) + " eV is thermal at "
                + DisplayNumber.fixed(e.temperatureK(), 0) + " K";
    }

    private static String unmoved(List<UnmovedLine> lines) {
        return lines.stream()
                        .map(u -> u.line() + " at " + DisplayNumber.fixed(u.measuredEv(), 2)
                                + " eV as measured, the metal's " + DisplayNumber.fixed(u.metalEv(), 2) + " eV")
                        .collect(Collectors.joining("; "))
                + ": grounded hardware in the analysis area";
    }

    private static String text(Estimate e) {
        return DisplayNumber.of(e.value(), e.standardUncertainty(), 2).text();
    }

    private static String signed(Estimate e) {
        String text = text(e);
        boolean nought = text.startsWith("\u2212")
                || text.chars().takeWhile(c -> c != ' ').noneMatch(c -> c >= '1' && c <= '9');
        return nought ? text : "+" + text;
    }
}
