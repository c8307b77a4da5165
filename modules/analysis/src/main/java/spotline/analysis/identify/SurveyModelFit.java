package spotline.analysis.identify;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import spotline.reference.GhostLine;

/**
 * The forward model of a survey for a list of elements, fitted: states, Auger groups, loss structure and tails of each,
 * a smooth background below them. Columns of further elements can be tried on it. Worked with by one thread.
 */
final class SurveyModelFit {
    /** The valence band is not modelled, eV. */
    private static final double SHALLOWEST_EV = 11.5;

    /** A line expected with this many standard deviations speaks plainly. */
    private static final double PLAIN = 9;

    private static final double MISSING_SHARE = 0.33;
    /** A line this many line widths beside another lies under it. */
    private static final double UNDER = 1.2;

    private static final double UNDER_SHARE = 0.3;
    /** States within this many line widths make one top. */
    private static final double ONE_TOP = 0.8;

    final Templates templates;
    final List<Member> members = new ArrayList<>();
    final Design design;
    private final Set<Integer> removed = new TreeSet<>();
    private final List<GhostLine> stray = new ArrayList<>();
    private final List<Plasmon> plasmons = new ArrayList<>();
    /** By how much variances were enlarged, channel by channel; empty for not at all. */
    private final double[] excess;

    private final double firstEnergyEv;
    private final double shiftEv;
    private final Discrepancy.Freedom freedom;
    /** Whether it is among the members: nothing else takes carbon so high. */
    private boolean fluorine;

    private LinearFit fit;

    private SurveyModelFit(
            Templates templates,
            Whitening whitening,
            double[] excess,
            double firstEnergyEv,
            double shiftEv,
            Discrepancy.Freedom freedom) {
        this.templates = templates;
        this.design = new Design(templates.grid.counts, whitening);
        this.excess = excess;
        this.firstEnergyEv = firstEnergyEv;
        this.shiftEv = shiftEv;
        this.freedom = freedom;
        this.fit = design.solve(new double[0]);
    }

    /**
     * A first fit under weights from the survey alone: its misfit can be compared with that of other shifts.
     *
     * @param shiftEv what has to be added to measured energies: it says which states an offset may mean
     */
    static SurveyModelFit first(Templates templates, List<Member> members, double shiftEv) {
        double firstEnergy = SHALLOWEST_EV - shiftEv;
        SurveyGrid grid = templates.grid;
        SurveyModelFit first = new SurveyModelFit(
                templates,
                Discrepancy.first(grid, firstEnergy),
                new double[0],
                firstEnergy,
                shiftEv,
                Discrepancy.Freedom.TO_DETECT);
        first.fluorine = fluorine(members);
        for (Member m : members) first.add(m, false);
        first.refit();
        return first;
    }

    /** The same members with departures that follow from this fit, and with what it found of their amounts. */
    SurveyModelFit reweighted() {
        return reweighted(new double[0], shiftEv, freedom);
    }

    /** The same once more, departures enlarged where this fit leaves more than it should. */
    SurveyModelFit sobered() {
        double[] residual = design.residual(fit.curve()).values();
        double[] more = Discrepancy.excess(templates.grid, residual);
        for (int i = 0; i < more.length; i++) {
            more[i] = Math.max(1, more[i] * (excess.length > 0 ? excess[i] : 1));
        }
        return reweighted(more, shiftEv, freedom);
    }

    /** The same elements over a background that bends little: their areas come out closer. */
    SurveyModelFit toQuantify() {
        return reweighted(new double[0], shiftEv, Discrepancy.Freedom.TO_QUANTIFY)
                .sobered();
    }

    /** The same at another shift. */
    SurveyModelFit at(double newShiftEv) {
        return reweighted(excess, newShiftEv, freedom);
    }

    private SurveyModelFit reweighted(double[] newExcess, double newShiftEv, Discrepancy.Freedom newFreedom) {
        int n = templates.grid.channels;
        double[] lines = new double[n];
        double[] groups = new double[n];
        double[] unsure = new double[n];
        double[] model = fit.curve();
        for (int e = 0; e < members.size(); e++) {
            double amount = active(e) ? amount(e) : 0;
            if (amount > 0) templates.heights(members.get(e).emitter(), meanOffset(e), amount, lines, groups, unsure);
        }
        for (int i = 0; i < design.size(); i++) {
            Design.Column c = design.column(i);
            if (c.kind() == Design.Kind.AUGER) c.curve().addTo(groups, fit.x[i]);
        }
        double[] total = design.background(model);
        for (int i = 0; i < n; i++) total[i] += model[i];
        Whitening whitening = Discrepancy.of(
                templates.grid,
                SHALLOWEST_EV - newShiftEv,
                total,
                lines,
                groups,
                unsure,
                templates.gaussianEv + 0.6,
                newExcess,
                newFreedom);
        SurveyModelFit next =
                new SurveyModelFit(templates, whitening, newExcess, SHALLOWEST_EV - newShiftEv, newShiftEv, newFreedom);
        next.plasmons.addAll(plasmons);
        next.fluorine = fluorine(members);
        for (int e = 0; e < members.size(); e++) {
            if (!active(e)) continue;
            Member m = members.get(e);
            double amount = amount(e);
            if (!(amount > 0)) continue;
            Emitter emitter = new Emitter(m.atom(), Burial.of(this, e));
            double significance = Math.max(m.significance(), countingSignificance(emitter, meanOffset(e), amount));
            next.add(new Member(emitter, meanOffset(e), amount, significance), true);
        }
        new MemberColumns(next.design, templates, newShiftEv, next.fluorine).addCommonLosses(next.members);
        next.refit();
        if (!stray.isEmpty()) next.addGhosts(stray, 0);
        return next;
    }

    /** Signal of an amount of an element's lines over counting noise alone. */
    private double countingSignificance(Emitter emitter, double offset, double amount) {
        double[] curve = templates.photo(emitter, offset).dense(templates.grid.channels);
        double sum = 0;
        for (int i = 0; i < curve.length; i++) {
            double c = curve[i] * amount;
            sum += c * c / Math.max(1, templates.grid.counts[i]);
        }
        return Math.sqrt(sum);
    }

    private static boolean fluorine(List<Member> members) {
        return members.stream().anyMatch(m -> m.symbol().equals("F"));
    }

    /** Adds an element's columns; the fit is not renewed. */
    void add(Member member, boolean deviations) {
        new MemberColumns(design, templates, shiftEv, fluorine)
                .add(member, members.size(), deviations ? plasmons : List.of(), deviations);
        members.add(member);
    }

    /** A loss of all strong lines that the next fit of these members will have columns for. */
    void expectPlasmon(Plasmon plasmon) {
        plasmons.add(plasmon);
    }

    /** Adds lines excited by stray radiation where the likelihood gains enough by them; the fit is renewed. */
    void addGhosts(List<GhostLine> ghosts, double leastGain) {
        for (GhostLine ghost : ghosts) {
            Optional<Curve> curve = CommonStructure.ghost(this, ghost, leastGain);
            if (curve.isEmpty()) continue;
            design.add(Design.Kind.GHOST, -1, 0, ghost.apparentShiftEv(), curve.get());
            stray.add(ghost);
            refit();
        }
    }

    void refit() {
        fit = design.solve(fit.x);
    }

    void remove(int owner) {
        design.disableOwner(owner);
        removed.add(owner);
    }

    boolean active(int owner) {
        return !removed.contains(owner);
    }

    boolean holds(Atom atom) {
        for (int e = 0; e < members.size(); e++) if (active(e) && members.get(e).atom() == atom) return true;
        return false;
    }

    /** Whether a line of another element that is clearly there lies at an element's main line. */
    boolean underAnother(int owner) {
        Member m = members.get(owner);
        double at = m.atom().main().bindingEv() + meanOffset(owner);
        double own = amount(owner) * templates.area(m.emitter(), m.atom().main());
        for (int e = 0; e < members.size(); e++) {
            if (e == owner || !active(e) || !members.get(e).clear()) continue;
            Emitter other = members.get(e).emitter();
            for (AtomLine line : other.atom().lines()) {
                for (AtomLine.Member member : line.members()) {
                    boolean here = Math.abs(member.bindingEv() + meanOffset(e) - at) < UNDER * templates.gaussianEv;
                    if (here && amount(e) * templates.area(other, member) > UNDER_SHARE * own) return true;
                }
            }
        }
        return false;
    }

    /** What the likelihood would lose without an element's peaks, everything else found anew: twice its logarithm. */
    double evidence(int owner) {
        return fit.lossWithout(i -> {
            Design.Column c = design.column(i);
            return c.owner() == owner && c.kind() != Design.Kind.TAIL;
        });
    }

    /** Number of an element among the members; -1 where it is not in the model. */
    int owner(String symbol) {
        for (int e = 0; e < members.size(); e++)
            if (active(e) && members.get(e).symbol().equals(symbol)) return e;
        return -1;
    }

    /** Offset below which a share of an element's states lies; not a number where it has none. */
    double quantileOffset(int owner, double share) {
        double sum = amount(owner);
        double found = 0;
        for (int i = 0; i < design.size(); i++) {
            Design.Column c = design.column(i);
            if (c.owner() != owner || c.kind() != Design.Kind.STATE) continue;
            found += fit.x[i];
            if (found > share * sum) return c.offsetEv();
        }
        return Double.NaN;
    }

    LinearFit fit() {
        return fit;
    }

    /** Measured binding energy from which on the survey is modelled. */
    double firstEnergyEv() {
        return firstEnergyEv;
    }

    double shiftEv() {
        return shiftEv;
    }

    /** Standard deviation of the sum of an element's states. */
    double amountDeviation(int owner) {
        int[] states = java.util.stream.IntStream.range(0, design.size())
                .filter(i ->
                        design.column(i).owner() == owner && design.column(i).kind() == Design.Kind.STATE)
                .toArray();
        double[] ones = new double[states.length];
        java.util.Arrays.fill(ones, 1);
        return Math.sqrt(Math.max(0, fit.variance(states, ones)));
    }

    /** Everything that an element contributes. */
    double[] elementCurve(int owner) {
        return sum(c -> c.owner() == owner);
    }

    /** Lines excited by stray radiation. */
    double[] strayCurve() {
        return sum(c -> c.kind() == Design.Kind.GHOST);
    }

    /** The smooth background with the losses that all elements share. */
    double[] background() {
        double[] sum = design.background(fit.curve());
        double[] shared = sum(c -> c.kind() == Design.Kind.COMMON_LOSS);
        for (int i = 0; i < sum.length; i++) sum[i] += shared[i];
        return sum;
    }

    private double[] sum(Predicate<Design.Column> wanted) {
        double[] sum = new double[templates.grid.channels];
        for (int i = 0; i < design.size(); i++) {
            Design.Column c = design.column(i);
            if (fit.x[i] != 0 && wanted.test(c)) c.curve().addTo(sum, fit.x[i]);
        }
        return sum;
    }

    /** A line by the fitted states, its area as the tables have it. */
    double[] lineCurve(int owner, AtomLine line) {
        double[] sum = new double[templates.grid.channels];
        for (int i = 0; i < design.size(); i++) {
            Design.Column c = design.column(i);
            if (c.owner() != owner || c.kind() != Design.Kind.STATE || fit.x[i] == 0) continue;
            templates.line(members.get(owner).emitter(), line, c.offsetEv()).addTo(sum, fit.x[i]);
        }
        return sum;
    }

    /** Whether a line that should stand out plainly is all but missing. */
    boolean contradicted(int owner) {
        double amount = amount(owner);
        for (int i = 0; i < design.size(); i++) {
            Design.Column c = design.column(i);
            if (c.owner() != owner || c.kind() != Design.Kind.LINE) continue;
            AtomLine line = members.get(owner).atom().lines().get(c.part());
            double expected = amount * Math.sqrt(c.white().square());
            if (line.regular() && expected > PLAIN && amount + fit.x[i] < MISSING_SHARE * amount) return true;
        }
        return false;
    }

    /** Area of a line as fitted over that of the tables. */
    double fittedRatio(int owner, AtomLine line) {
        int part = members.get(owner).atom().lines().indexOf(line);
        double amount = amount(owner);
        for (int i = 0; i < design.size(); i++) {
            Design.Column c = design.column(i);
            if (c.owner() == owner && c.kind() == Design.Kind.LINE && c.part() == part && amount > 0) {
                return Math.max(0, 1 + fit.x[i] / amount);
            }
        }
        return 1;
    }

    /** The Auger group as the tables have it for the fitted amount. */
    double[] augerCurve(int owner) {
        double[] sum = new double[templates.grid.channels];
        templates.auger(members.get(owner).emitter(), meanOffset(owner)).addTo(sum, amount(owner));
        return sum;
    }

    /** The Auger group as fitted. */
    double[] fittedAuger(int owner) {
        Member member = members.get(owner);
        if (!member.clear()) return augerCurve(owner);
        return sum(c -> c.owner() == owner && c.kind() == Design.Kind.AUGER);
    }

    /** Sum of an element's states. */
    double amount(int owner) {
        double sum = 0;
        for (int i = 0; i < design.size(); i++) {
            Design.Column c = design.column(i);
            if (c.owner() == owner && c.kind() == Design.Kind.STATE) sum += fit.x[i];
        }
        return sum;
    }

    /** Mean offset of an element's strongest state and its neighbours: where its line has its top. */
    double topOffset(int owner) {
        double top = Double.NaN;
        double largest = 0;
        for (int i = 0; i < design.size(); i++) {
            Design.Column c = design.column(i);
            if (c.owner() != owner || c.kind() != Design.Kind.STATE || fit.x[i] <= largest) continue;
            largest = fit.x[i];
            top = c.offsetEv();
        }
        if (Double.isNaN(top)) return members.get(owner).offsetEv();
        return meanOffset(owner, top, ONE_TOP * templates.gaussianEv);
    }

    double meanOffset(int owner) {
        return meanOffset(owner, 0, Double.POSITIVE_INFINITY);
    }

    private double meanOffset(int owner, double about, double reachEv) {
        double sum = 0;
        double moment = 0;
        for (int i = 0; i < design.size(); i++) {
            Design.Column c = design.column(i);
            if (c.owner() != owner || c.kind() != Design.Kind.STATE) continue;
            if (Math.abs(c.offsetEv() - about) > reachEv) continue;
            sum += fit.x[i];
            moment += fit.x[i] * c.offsetEv();
        }
        return sum > 0 ? moment / sum : members.get(owner).offsetEv();
    }
}
