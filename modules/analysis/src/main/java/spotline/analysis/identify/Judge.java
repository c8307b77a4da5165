package spotline.analysis.identify;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import spotline.reference.Line;

/**
 * Turns a fitted model into elements with verdicts and reasons.
 *
 * <p>{@code present}: two lines, or one line and the Auger group, or one line where no other could reach detection and
 * nothing else explains it; else {@code possible}. A line that another element's losses, states or Auger electrons could
 * make counts only where it is far too strong for that.
 */
final class Judge {
    /** A line is seen from here on, standard deviations. */
    private static final double SEEN = 3;
    /** A line expected with this is above detection: by it both kinds of error stay below about 5 %. */
    private static final double DETECTABLE = 3.3;

    private static final double MUST_SHOW = 5;
    /** A line that falls short of the expected by this and a share of the expected is not there. */
    private static final double MISSED = 3;

    private static final double MISSED_SHARE = 0.25;
    /** A missing line weighs against an element when it should have made this share of its gain. */
    private static final double CONTRADICTING_SHARE = 0.2;
    /** A line expected with nine standard deviations weighs against any element. */
    private static final double PLAIN_SQUARE = 81;
    /** Areas of one element's lines agree within this factor: shake-up and the tables spoil them. */
    private static final double AREA_FACTOR = 2.6;

    private static final double MISSING_SHARE = 0.4;
    private static final double LEAST_INDEPENDENT = 0.25;
    private static final double PRESENT_GAIN = 28;
    private static final double PRESENT_GAIN_ONE_LINE = 70;
    /** Lithium, beryllium and boron show one line and no Auger group. */
    private static final int HEAVIEST_OF_ONE_LINE = 5;

    private static final double ONE_LINE_OF_ONE = 250;
    /** An explanation within this of an element's own gain, or within this share of it, comes close. */
    private static final double CLOSE_GAIN = 12;

    private static final double CLOSE_SHARE = 0.7;
    /** Elements seen more clearly than this have no rivals worth looking for. */
    private static final double BEYOND_DOUBT = 400;

    /** The model has losses and Auger groups of its own: what gains this much beside them is none. */
    private static final double BEYOND_SUSPICION = 180;

    private static final int NEEDS_WITHOUT_MAIN = 3;
    private static final int RARE_NEEDS_LINES = 3;
    /** A line on the edge of the valence band proves nothing. */
    private static final double CLEAR_OF_VALENCE_EV = 3;

    private final SurveyModelFit model;
    private final Hunt hunt;
    private final LineSources sources;
    private final Set<String> declared;

    Judge(SurveyModelFit model, Hunt hunt, LineSources sources, Set<String> declared) {
        this.model = model;
        this.hunt = hunt;
        this.sources = sources;
        this.declared = declared;
    }

    List<ElementSeen> elements() {
        List<ElementSeen> seen = new ArrayList<>();
        for (int e = 0; e < model.members.size(); e++) if (model.active(e) && model.amount(e) > 0) seen.add(judge(e));
        return seen;
    }

    /** What an element's lines say one by one. */
    private static final class Tally {
        final List<LineSeen> lines = new ArrayList<>();
        final List<Evidence.LineMissing> missing = new ArrayList<>();
        final Set<String> overlaps = new TreeSet<>();
        final Set<String> suspicions = new TreeSet<>();
        int proving;
        int couldShow;
        boolean main;
        boolean auger;
        boolean contradicted;
        double strongest;
    }

    private ElementSeen judge(int owner) {
        Atom atom = model.members.get(owner).atom();
        double gain = model.evidence(owner);
        Tally tally = new Tally();
        for (LineTests.Test test : LineTests.of(model, owner)) {
            boolean valence = test.energyEv() < model.firstEnergyEv() + CLEAR_OF_VALENCE_EV;
            if (test.auger()) augerLine(owner, test, tally);
            else if (!valence) photoLine(owner, gain, test, tally);
        }
        List<Evidence.Alternative> alternatives = new ArrayList<>();
        if (gain < BEYOND_DOUBT) alternatives.addAll(rivals(owner, gain));
        double own = gain - ModelSelection.penalty(atom, declared);
        boolean rival = !alternatives.isEmpty() && alternatives.get(0).likelihoodGain() > own - CLOSE_GAIN;
        if (gain < BEYOND_SUSPICION) {
            for (String s : tally.suspicions) alternatives.add(new Evidence.Alternative(s, Double.NaN));
        }
        Verdict verdict = verdict(atom, tally, own, rival, alternatives.isEmpty());
        Evidence evidence = new Evidence(
                gain,
                tally.missing,
                List.copyOf(tally.overlaps),
                alternatives,
                reasons(atom, verdict, tally, alternatives, gain));
        return new ElementSeen(atom.symbol(), verdict, tally.lines, tally.strongest, evidence);
    }

    private static Verdict verdict(Atom atom, Tally tally, double own, boolean rival, boolean alone) {
        boolean two = own >= PRESENT_GAIN && (tally.proving >= 2 || (tally.proving >= 1 && tally.auger));
        boolean one = own >= oneLine(atom) && tally.proving == 1 && tally.couldShow <= 1 && alone;
        boolean strong = own >= BEYOND_DOUBT && ModelSelection.common(atom.symbol()) && tally.proving >= 1;
        boolean present = (two && !rival || one || strong) && !tally.contradicted;
        present &= tally.main || tally.proving >= NEEDS_WITHOUT_MAIN;
        if (atom.rare()) present &= tally.proving >= RARE_NEEDS_LINES;
        return present ? Verdict.PRESENT : Verdict.POSSIBLE;
    }

    /**
     * What one line must bring when it is all there is: more where nothing else could ever speak for the element; what is
     * seldom met is never called present by one line.
     */
    private static double oneLine(Atom atom) {
        if (atom.element().z() <= HEAVIEST_OF_ONE_LINE) return ONE_LINE_OF_ONE;
        return ModelSelection.common(atom.symbol()) ? PRESENT_GAIN_ONE_LINE : Double.POSITIVE_INFINITY;
    }

    private void photoLine(int owner, double gain, LineTests.Test test, Tally to) {
        String name = test.line().line().toString();
        boolean regular = test.line().regular();
        boolean fits = test.ratio() > 1 / AREA_FACTOR;
        to.overlaps.addAll(sources.overlapping(owner, test));
        if (test.expected() >= DETECTABLE && regular) to.couldShow++;
        if (test.significance() >= SEEN && fits) {
            to.lines.add(new LineSeen(name, test.energyEv(), test.significance(), test.ratio()));
            to.strongest = Math.max(to.strongest, test.significance());
            to.main |= test.line().main() && test.ratio() <= AREA_FACTOR;
            if (!regular || test.ratio() > AREA_FACTOR || test.independent() < LEAST_INDEPENDENT) return;
            double area = test.ratio()
                    * model.amount(owner)
                    * model.templates.area(model.members.get(owner).emitter(), test.line());
            List<String> others = sources.of(owner, test.energyEv(), area);
            if (others.isEmpty() || gain >= BEYOND_SUSPICION || usual(owner)) to.proving++;
            else to.suspicions.addAll(others);
        } else if (test.expected() >= DETECTABLE && regular) {
            to.missing.add(new Evidence.LineMissing(name, test.energyEv(), test.expected(), test.significance()));
            boolean weighty = test.expected() * test.expected() > Math.min(PLAIN_SQUARE, CONTRADICTING_SHARE * gain);
            to.contradicted |= test.expected() - test.significance() > MISSED + MISSED_SHARE * test.expected();
            to.contradicted |= weighty && test.expected() >= MUST_SHOW;
            Line main = model.members.get(owner).atom().main().line();
            boolean partner =
                    test.line().line().whole().equals(main) && test.significance() < MISSING_SHARE * test.expected();
            to.contradicted |= (test.line().main() || partner) && test.independent() > LEAST_INDEPENDENT;
        }
    }

    /** Carbon and oxygen need no excuse: whatever has met air carries them. */
    private boolean usual(int owner) {
        return ModelSelection.EVERYWHERE.contains(model.members.get(owner).symbol());
    }

    private void augerLine(int owner, LineTests.Test test, Tally to) {
        if (test.significance() < SEEN) return;
        Atom atom = model.members.get(owner).atom();
        String name = atom.symbol() + " " + LineTests.mainBranch(atom).name();
        to.lines.add(new LineSeen(name, test.energyEv(), test.significance(), Double.NaN));
        to.strongest = Math.max(to.strongest, test.significance());
        double area = model.amount(owner)
                * model.templates.area(model.members.get(owner).emitter(), LineTests.mainBranch(atom));
        boolean clean = sources.of(owner, test.energyEv(), area).isEmpty();
        to.auger |= clean && test.independent() > LEAST_INDEPENDENT && test.significance() > SEEN + 0.5;
    }

    /** Elements that would do nearly as well in its place, the best first. */
    private List<Evidence.Alternative> rivals(int owner, double gain) {
        Design design = model.design;
        Hunt.Base base =
                new Hunt.Base(design, model.fit().passive, c -> design.column(c).owner() != owner);
        Atom self = model.members.get(owner).atom();
        double own = gain - ModelSelection.penalty(self, declared);
        double least = Math.max(8, Math.min(CLOSE_SHARE * own, own - CLOSE_GAIN));
        List<Evidence.Alternative> found = new ArrayList<>();
        for (Hunt.Gain rival : hunt.gains(base, base.residual(), least, a -> a != self && !model.holds(a))) {
            double weighed =
                    rival.gain() - ModelSelection.penalty(rival.candidate().atom(), declared);
            if (weighed >= least) {
                found.add(new Evidence.Alternative(rival.candidate().atom().symbol(), weighed));
            }
        }
        found.sort(Comparator.comparingDouble(a -> -a.likelihoodGain()));
        return found;
    }

    private static List<String> reasons(
            Atom atom, Verdict verdict, Tally tally, List<Evidence.Alternative> alternatives, double gain) {
        List<String> reasons = new ArrayList<>();
        StringBuilder seen = new StringBuilder();
        for (LineSeen line : tally.lines) {
            if (seen.length() > 0) seen.append(", ");
            seen.append(String.format(
                    Locale.ROOT, "%s at %.1f eV (%.0f sigma", line.line(), line.energyEv(), line.significance()));
            if (!Double.isNaN(line.ratioToExpected())) {
                seen.append(String.format(Locale.ROOT, ", %.2f of the expected", line.ratioToExpected()));
            }
            seen.append(')');
        }
        reasons.add(tally.lines.isEmpty() ? "No line stands out by itself; all together do." : "Seen: " + seen + ".");
        for (Evidence.LineMissing m : tally.missing) {
            reasons.add(String.format(
                    Locale.ROOT,
                    "%s should stand out by %.0f sigma at %.1f eV and does by %.1f.",
                    m.line(),
                    m.expectedSignificance(),
                    m.energyEv(),
                    m.significance()));
        }
        for (Evidence.Alternative a : alternatives) reasons.add("Could also be " + a.explanation() + ".");
        reasons.add(String.format(
                Locale.ROOT,
                "The model of the survey gains %.0f by %s.",
                gain,
                atom.element().name()));
        if (verdict == Verdict.POSSIBLE && alternatives.isEmpty() && tally.missing.isEmpty()) {
            reasons.add("One line alone, or too weak, to call it present.");
        }
        return reasons;
    }
}
