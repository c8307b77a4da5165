package spotline.analysis.identify;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import spotline.reference.GhostLine;

/**
 * Turns a fitted model into elements with verdicts and reasons.
 *
 * <p>{@code present}: two lines, or one line and the Auger group, or one line where no other could reach detection and
 * nothing else explains it; else {@code possible}.
 */
final class Judge {
    /** A line is seen from here on, standard deviations. */
    private static final double SEEN = 3;
    /** A line expected with this is above detection: by it both kinds of error stay below about 5 %. */
    private static final double DETECTABLE = 3.3;

    private static final double MUST_SHOW = 6;
    /** A missing line weighs against an element when it should have made this share of its gain. */
    private static final double CONTRADICTING_SHARE = 0.25;
    /** Areas of one element's lines agree within this factor: overlayers, shake-up and the tables spoil them. */
    private static final double AREA_FACTOR = 3;

    private static final double PRESENT_GAIN = 24;
    private static final double PRESENT_GAIN_ONE_LINE = 30;
    /** An explanation within this of an element's own gain, or within this share of it, comes close. */
    private static final double CLOSE_GAIN = 12;

    private static final double CLOSE_SHARE = 0.7;
    /** Elements seen more clearly than this have no rivals worth looking for. */
    private static final double BEYOND_DOUBT = 400;

    private static final double GHOST_WITHIN_EV = 1.5;
    private static final double LOSS_FROM_EV = 2;
    private static final double LOSS_TO_EV = 32;
    private static final double SHOULDER_EV = 6;
    private static final double SHOULDER_SHARE = 0.1;
    private static final double AUGER_SLACK_EV = 4;
    private static final double LOSS_SHARE = 0.5;

    private final SurveyModelFit model;
    private final Hunt hunt;
    private final List<GhostLine> ghosts;
    private final Set<String> declared;

    Judge(SurveyModelFit model, Hunt hunt, List<GhostLine> ghosts, Set<String> declared) {
        this.model = model;
        this.hunt = hunt;
        this.ghosts = ghosts;
        this.declared = declared;
    }

    List<ElementSeen> elements() {
        List<ElementSeen> seen = new ArrayList<>();
        for (int e = 0; e < model.members.size(); e++) if (model.active(e) && model.amount(e) > 0) seen.add(judge(e));
        return seen;
    }

    /** A line on the edge of the valence band proves nothing. */
    private static final double CLEAR_OF_VALENCE_EV = 3;

    private ElementSeen judge(int owner) {
        Atom atom = model.members.get(owner).atom();
        double gain = model.evidence(owner);
        List<LineTests.Test> tests = LineTests.of(model, owner);
        List<LineSeen> lines = new ArrayList<>();
        List<Evidence.LineMissing> missing = new ArrayList<>();
        Set<String> overlaps = new TreeSet<>();
        int proving = 0;
        int couldShow = 0;
        boolean auger = false;
        boolean contradicted = false;
        double strongest = 0;
        for (LineTests.Test test : tests) {
            String name = name(atom, test);
            boolean fits = test.ratio() > 1 / AREA_FACTOR;
            if (!test.auger() && test.energyEv() < model.firstEnergyEv() + CLEAR_OF_VALENCE_EV) continue;
            if (test.significance() >= SEEN && (fits || test.auger())) {
                double ratio = test.auger() ? Double.NaN : test.ratio();
                lines.add(new LineSeen(name, test.energyEv(), test.significance(), ratio));
                strongest = Math.max(strongest, test.significance());
                if (test.auger()) auger = true;
                else if (test.line().regular() && test.ratio() < AREA_FACTOR) proving++;
            } else if (test.expected() >= DETECTABLE
                    && !test.auger()
                    && test.line().regular()) {
                missing.add(new Evidence.LineMissing(name, test.energyEv(), test.expected(), test.significance()));
                boolean weighty = test.expected() * test.expected() > CONTRADICTING_SHARE * gain;
                contradicted |= weighty && test.expected() >= MUST_SHOW && !fits;
                contradicted |= test.line().main() && test.independent() > 0.3;
            }
            if (!test.auger() && test.expected() >= DETECTABLE && test.line().regular()) couldShow++;
            if (!test.auger()) overlaps.addAll(overlapping(owner, test));
        }
        List<Evidence.Alternative> alternatives =
                gain < BEYOND_DOUBT && proving < 4 ? alternatives(owner, gain, tests) : List.of();
        double weighed = gain - ModelSelection.penalty(atom, declared);
        boolean twoLines = weighed >= PRESENT_GAIN && (proving >= 2 || (proving >= 1 && auger));
        boolean onlyLine = weighed >= PRESENT_GAIN_ONE_LINE && proving >= 1 && couldShow <= 1 && alternatives.isEmpty();
        boolean rival = alternatives.stream().anyMatch(a -> a.likelihoodGain() > gain - CLOSE_GAIN / 2);
        boolean present = (twoLines && !rival || onlyLine) && !contradicted && !atom.rare();
        if (atom.rare()) present = twoLines && !rival && !contradicted && proving >= 3;
        Verdict verdict = present ? Verdict.PRESENT : Verdict.POSSIBLE;
        Evidence evidence = new Evidence(
                gain,
                missing,
                List.copyOf(overlaps),
                alternatives,
                reasons(atom, verdict, lines, missing, alternatives, gain));
        return new ElementSeen(atom.symbol(), verdict, lines, strongest, evidence);
    }

    private String name(Atom atom, LineTests.Test test) {
        if (test.auger())
            return atom.symbol() + " " + LineTests.mainBranch(atom).name();
        return test.line().line().toString();
    }

    /** Strong lines and Auger groups of other elements at the place of a line. */
    private Set<String> overlapping(int owner, LineTests.Test test) {
        Set<String> names = new TreeSet<>();
        double width = model.templates.gaussianEv;
        double own = model.amount(owner)
                * model.templates.area(model.members.get(owner).emitter(), test.line());
        for (int e = 0; e < model.members.size(); e++) {
            if (e == owner || !model.active(e)) continue;
            Emitter emitter = model.members.get(e).emitter();
            Atom other = emitter.atom();
            double amount = model.amount(e);
            double offset = model.meanOffset(e);
            for (AtomLine line : other.lines()) {
                for (AtomLine.Member m : line.members()) {
                    double apart = Math.abs(m.bindingEv() + offset - test.energyEv());
                    double area = amount * model.templates.area(emitter, m);
                    if (apart < width && area > 0.1 * own)
                        names.add(m.line() + " under " + test.line().line());
                }
            }
            for (AugerBranch b : other.auger()) {
                double binding = model.templates.grid.photonEv - b.kineticEv();
                double area = amount * model.templates.area(emitter, b);
                if (Math.abs(binding + offset - test.energyEv()) < b.widthEv() && area > 0.3 * own) {
                    names.add(other.symbol() + " " + b.name() + " under "
                            + test.line().line());
                }
            }
        }
        return names;
    }

    private List<Evidence.Alternative> alternatives(int owner, double gain, List<LineTests.Test> tests) {
        List<Evidence.Alternative> found = new ArrayList<>();
        Design design = model.design;
        Hunt.Base base =
                new Hunt.Base(design, model.fit().passive, c -> design.column(c).owner() != owner);
        Design.White residual = base.residual();
        Atom self = model.members.get(owner).atom();
        double own = gain - ModelSelection.penalty(self, declared);
        double least = Math.max(8, Math.min(CLOSE_SHARE * own, own - CLOSE_GAIN));
        for (Hunt.Gain rival : hunt.gains(base, residual, least, a -> a != self && !model.holds(a))) {
            double penalty = ModelSelection.penalty(rival.candidate().atom(), declared);
            if (rival.gain() - penalty < least) continue;
            found.add(new Evidence.Alternative(rival.candidate().atom().symbol(), rival.gain()));
        }
        LineTests.Test main = null;
        for (LineTests.Test test : tests) {
            if (!test.auger() && (main == null || test.significance() > main.significance())) main = test;
        }
        if (main != null) found.addAll(sources(owner, main));
        found.sort(Comparator.comparingDouble(
                (Evidence.Alternative a) -> Double.isNaN(a.likelihoodGain()) ? 0 : -a.likelihoodGain()));
        return found;
    }

    /** Strong lines whose ghost or loss may be what looks like the line. */
    private List<Evidence.Alternative> sources(int owner, LineTests.Test test) {
        List<Evidence.Alternative> found = new ArrayList<>();
        double area = model.amount(owner)
                * model.templates.area(model.members.get(owner).emitter(), test.line());
        for (int e = 0; e < model.members.size(); e++) {
            if (e == owner || !model.active(e)) continue;
            double amount = model.amount(e);
            for (AtomLine line : model.members.get(e).atom().lines()) {
                double strong =
                        amount * model.templates.area(model.members.get(e).emitter(), line);
                double at = line.bindingEv() + model.meanOffset(e);
                for (GhostLine ghost : ghosts) {
                    boolean here = Math.abs(at + ghost.apparentShiftEv() - test.energyEv()) < GHOST_WITHIN_EV;
                    if (here && area < 0.06 * strong && ghost.apparentShiftEv() != 0) {
                        found.add(new Evidence.Alternative(
                                line.line() + " excited by stray " + ghost.contaminant(), Double.NaN));
                    }
                }
                double behind = test.energyEv() - at;
                if (behind > LOSS_FROM_EV && behind < LOSS_TO_EV && area < LOSS_SHARE * strong) {
                    found.add(new Evidence.Alternative("energy loss or shake-up behind " + line.line(), Double.NaN));
                } else if (Math.abs(behind) < SHOULDER_EV && area < SHOULDER_SHARE * strong) {
                    found.add(new Evidence.Alternative("another state of " + line.line(), Double.NaN));
                }
            }
            for (AugerBranch b : model.members.get(e).atom().auger()) {
                double at = model.templates.grid.photonEv - b.kineticEv() + model.meanOffset(e);
                double group =
                        amount * model.templates.area(model.members.get(e).emitter(), b);
                if (Math.abs(at - test.energyEv()) < b.widthEv() + AUGER_SLACK_EV && group > area) {
                    found.add(new Evidence.Alternative(
                            "Auger group " + model.members.get(e).symbol() + " " + b.name(), Double.NaN));
                }
            }
        }
        return found;
    }

    private List<String> reasons(
            Atom atom,
            Verdict verdict,
            List<LineSeen> lines,
            List<Evidence.LineMissing> missing,
            List<Evidence.Alternative> alternatives,
            double gain) {
        List<String> reasons = new ArrayList<>();
        StringBuilder seen = new StringBuilder();
        for (LineSeen line : lines) {
            if (seen.length() > 0) seen.append(", ");
            seen.append(String.format(
                    Locale.ROOT, "%s at %.1f eV (%.0f sigma", line.line(), line.energyEv(), line.significance()));
            if (!Double.isNaN(line.ratioToExpected())) {
                seen.append(String.format(Locale.ROOT, ", %.2f of the expected", line.ratioToExpected()));
            }
            seen.append(')');
        }
        reasons.add(lines.isEmpty() ? "No line stands out by itself; all together do." : "Seen: " + seen + ".");
        for (Evidence.LineMissing m : missing) {
            reasons.add(String.format(
                    Locale.ROOT,
                    "%s should stand out by %.0f sigma at %.1f eV and does by %.1f.",
                    m.line(),
                    m.expectedSignificance(),
                    m.energyEv(),
                    m.significance()));
        }
        for (Evidence.Alternative a : alternatives) {
            reasons.add("Could also be " + a.explanation() + ".");
        }
        reasons.add(String.format(
                Locale.ROOT,
                "The model of the survey gains %.0f by %s.",
                gain,
                atom.element().name()));
        if (verdict == Verdict.POSSIBLE && alternatives.isEmpty() && missing.isEmpty()) {
            reasons.add("One line alone, or too weak, to call it present.");
        }
        return reasons;
    }
}
