package spotline.analysis.identify;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import spotline.reference.GhostLine;

/**
 * The forward model of a survey for a list of elements, fitted: states, Auger groups, loss structure and tails of each,
 * a smooth background below them. Columns of further elements can be tried on it. Worked with by one thread.
 */
final class SurveyModelFit {
    /** Deviation of a second line's area from the tables, share (common practice, no source). */
    private static final double AREA_DEVIATION = 0.3;

    /** The valence band is not modelled, eV. */
    private static final double SHALLOWEST_EV = 14;

    private static final double IRREGULAR_DEVIATION = 0.8;
    /** Stray radiation stronger than this share of the source would be a source of its own. */
    private static final double LARGEST_GHOST = 0.08;

    private static final double AUGER_DEVIATION = 0.6;
    private static final double LOSS_DEVIATION = 0.12;
    /** Lines expected with less than this many standard deviations get no deviation of their own. */
    private static final double WEAKEST_DEVIATING = 2.5;

    private static final double[] LOSSES = {4.5, 7.5, 11, 15, 19.5, 25};
    private static final double[] LOSS_WIDTHS = {3, 3.5, 4.5, 5, 6, 7};
    private static final double[] AUGER_OFFSETS = {-5, -2, 1, 4, 8};

    final Templates templates;
    final List<Member> members = new ArrayList<>();
    final Design design;
    private final Set<Integer> removed = new TreeSet<>();
    private final List<GhostLine> stray = new ArrayList<>();
    private final double firstEnergyEv;
    private final double shiftEv;
    private LinearFit fit;

    private SurveyModelFit(Templates templates, Whitening whitening, double firstEnergyEv, double shiftEv) {
        this.templates = templates;
        this.design = new Design(templates.grid.counts, whitening);
        this.firstEnergyEv = firstEnergyEv;
        this.shiftEv = shiftEv;
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
                templates, Discrepancy.first(grid, firstEnergy), firstEnergy, shiftEv);
        for (Member m : members) first.add(m, false);
        first.refit();
        return first;
    }

    /** The same members with departures that follow from this fit, and with what it found of their amounts. */
    SurveyModelFit reweighted() {
        return reweighted(new double[0], shiftEv);
    }

    /** The same once more, departures enlarged where this fit leaves more than it should. */
    SurveyModelFit sobered() {
        double[] residual = design.residual(fit.curve()).values();
        return reweighted(Discrepancy.excess(templates.grid, residual), shiftEv);
    }

    /** The same at another shift. */
    SurveyModelFit at(double newShiftEv) {
        return reweighted(new double[0], newShiftEv);
    }

    private SurveyModelFit reweighted(double[] excess, double newShiftEv) {
        int n = templates.grid.channels;
        double[] lines = new double[n];
        double[] groups = new double[n];
        double[] unsure = new double[n];
        double[] model = fit.curve();
        for (int e = 0; e < members.size(); e++) {
            double amount = active(e) ? amount(e) : 0;
            if (amount > 0) templates.heights(members.get(e).atom(), meanOffset(e), amount, lines, groups, unsure);
        }
        for (int i = 0; i < design.size(); i++) {
            Design.Column c = design.column(i);
            if (c.kind() == Design.Kind.AUGER) c.curve().addTo(groups, fit.x[i]);
        }
        double[] total = design.background(model);
        for (int i = 0; i < n; i++) total[i] += model[i];
        Whitening whitening = Discrepancy.of(
                templates.grid, SHALLOWEST_EV - newShiftEv, total, lines, groups, unsure, templates.gaussianEv + 0.6, excess);
        SurveyModelFit next = new SurveyModelFit(templates, whitening, SHALLOWEST_EV - newShiftEv, newShiftEv);
        for (int e = 0; e < members.size(); e++) {
            if (!active(e)) continue;
            Member m = members.get(e);
            double amount = amount(e);
            if (!(amount > 0)) continue;
            next.add(new Member(m.atom(), meanOffset(e), amount, m.significance()), true);
        }
        next.refit();
        if (!stray.isEmpty()) next.addGhosts(stray, 0);
        return next;
    }

    /** Adds an element's columns; the fit is not renewed. */
    void add(Member member, boolean deviations) {
        int owner = members.size();
        members.add(member);
        Atom atom = member.atom();
        double u = member.offsetEv();
        List<Integer> states = new ArrayList<>();
        for (double offset : stateOffsets(member)) {
            int c = design.add(
                    Design.Kind.STATE,
                    owner,
                    states.size(),
                    offset,
                    member.clear() ? templates.photo(atom, offset) : templates.whole(atom, offset));
            if (c >= 0) states.add(c);
        }
        if (member.clear()) addAuger(member, owner, states);
        if (member.strong()) {
            double amount = Math.max(member.amount(), 1e-12);
            for (int j = 0; j < LOSSES.length; j++) {
                int c = design.add(
                        Design.Kind.LOSS, owner, j, u, templates.losses(atom, u, LOSSES[j], LOSS_WIDTHS[j]));
                if (c >= 0) design.expect(c, 0, LOSS_DEVIATION * shakeUp(atom, j) * amount);
            }
            design.add(Design.Kind.TAIL, owner, 0, u, templates.tail(atom, u));
        }
        if (deviations) addDeviations(member, owner);
    }

    private static double shakeUp(Atom atom, int loss) {
        int z = atom.element().z();
        boolean open = (z >= 21 && z <= 29) || (z >= 57 && z <= 71);
        return open && loss < 2 ? 3 : 1;
    }

    private void addAuger(Member member, int owner, List<Integer> states) {
        List<Integer> tied = new ArrayList<>();
        for (int j = 0; j < AUGER_OFFSETS.length; j++) {
            int c = design.add(
                    Design.Kind.AUGER,
                    owner,
                    j,
                    member.offsetEv() + AUGER_OFFSETS[j],
                    templates.auger(member.atom(), member.offsetEv() + AUGER_OFFSETS[j]));
            if (c >= 0) tied.add(c);
        }
        if (tied.isEmpty() || states.isEmpty()) return;
        int[] indices = new int[tied.size() + states.size()];
        double[] factors = new double[indices.length];
        for (int k = 0; k < indices.length; k++) {
            boolean isAuger = k < tied.size();
            indices[k] = isAuger ? tied.get(k) : states.get(k - tied.size());
            factors[k] = isAuger ? 1 : -1;
        }
        design.expectZero(indices, factors, AUGER_DEVIATION * Math.max(member.amount(), 1e-12));
    }

    private void addDeviations(Member member, int owner) {
        List<AtomLine> lines = member.atom().lines();
        for (int l = 1; l < lines.size(); l++) {
            AtomLine line = lines.get(l);
            if (!templates.inside(line.bindingEv(), member.offsetEv())) continue;
            Curve curve = templates.line(line, member.offsetEv());
            double expected = member.amount() * Math.sqrt(design.white(curve).square());
            if (expected < WEAKEST_DEVIATING) continue;
            int c = design.add(Design.Kind.LINE, owner, l, member.offsetEv(), curve);
            double share = line.regular() ? AREA_DEVIATION : IRREGULAR_DEVIATION;
            if (c >= 0) design.expect(c, 0, share * member.amount());
        }
    }

    private double[] stateOffsets(Member member) {
        double u = member.offsetEv();
        if (!member.clear()) return new double[] {u};
        double spacing = Math.max(0.65, 0.42 * templates.gaussianEv);
        double low = Math.max(u - 3.2, member.atom().lowestEv() - shiftEv - 0.7);
        double high = Math.min(u + 5.5, member.atom().highestEv() - shiftEv + 0.7);
        if (member.symbol().equals("C")) {
            low = u - 3.2;
            high = member.atom().highestEv() - shiftEv + 0.7;
        }
        int below = Math.max(0, (int) Math.floor((u - low) / spacing));
        int above = Math.max(0, (int) Math.floor((high - u) / spacing));
        double[] offsets = new double[below + above + 1];
        for (int k = 0; k < offsets.length; k++) offsets[k] = u + (k - below) * spacing;
        return offsets;
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

    /** What the likelihood would lose without an element's peaks, everything else found anew: twice its logarithm. */
    double evidence(int owner) {
        return fit.lossWithout(i -> {
            Design.Column c = design.column(i);
            return c.owner() == owner && c.kind() != Design.Kind.TAIL;
        });
    }

    /** Number of an element among the members; -1 where it is not in the model. */
    int owner(String symbol) {
        for (int e = 0; e < members.size(); e++) if (active(e) && members.get(e).symbol().equals(symbol)) return e;
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

    double shiftEv() {
        return shiftEv;
    }

    /** Standard deviation of the sum of an element's states. */
    double amountDeviation(int owner) {
        int[] states = java.util.stream.IntStream.range(0, design.size())
                .filter(i -> design.column(i).owner() == owner && design.column(i).kind() == Design.Kind.STATE)
                .toArray();
        double[] ones = new double[states.length];
        java.util.Arrays.fill(ones, 1);
        return Math.sqrt(Math.max(0, fit.variance(states, ones)));
    }

    /** Everything that an element contributes. */
    double[] elementCurve(int owner) {
        double[] sum = new double[templates.grid.channels];
        for (int i = 0; i < design.size(); i++) {
            if (design.column(i).owner() == owner && fit.x[i] != 0) design.column(i).curve().addTo(sum, fit.x[i]);
        }
        return sum;
    }

    /** Adds lines excited by stray radiation where the likelihood gains enough by them; the fit is renewed. */
    boolean addGhosts(List<GhostLine> ghosts, double leastGain) {
        List<Atom> atoms = new ArrayList<>();
        List<Double> amounts = new ArrayList<>();
        List<Double> offsets = new ArrayList<>();
        for (int e = 0; e < members.size(); e++) {
            if (!active(e) || !(amount(e) > 0)) continue;
            atoms.add(members.get(e).atom());
            amounts.add(amount(e));
            offsets.add(meanOffset(e));
        }
        boolean added = false;
        for (GhostLine ghost : ghosts) {
            if (ghost.apparentShiftEv() == 0) continue;
            Curve curve = templates.ghost(atoms, amounts, offsets, ghost.apparentShiftEv());
            if (curve.isEmpty()) continue;
            Hunt.Base base = new Hunt.Base(design, fit.passive, c -> true);
            Design.White white = design.white(curve);
            double push = white.dot(design.residual(fit.curve()));
            double[] z = base.factor.forward(base.couplings(white));
            double free = white.square();
            for (double v : z) free -= v * v;
            double share = push / free;
            if (push <= 0 || !(free > 0) || push * share < leastGain || share > LARGEST_GHOST) continue;
            design.add(Design.Kind.GHOST, -1, 0, ghost.apparentShiftEv(), curve);
            stray.add(ghost);
            refit();
            added = true;
        }
        return added;
    }

    List<GhostLine> stray() {
        return List.copyOf(stray);
    }

    /** A line by the fitted states, its area as the tables have it. */
    double[] lineCurve(int owner, AtomLine line) {
        double[] sum = new double[templates.grid.channels];
        for (int i = 0; i < design.size(); i++) {
            Design.Column c = design.column(i);
            if (c.owner() != owner || c.kind() != Design.Kind.STATE || fit.x[i] == 0) continue;
            templates.line(line, c.offsetEv()).addTo(sum, fit.x[i]);
        }
        return sum;
    }

    /** The Auger group as the tables have it for the fitted amount. */
    double[] augerCurve(int owner) {
        double[] sum = new double[templates.grid.channels];
        templates.auger(members.get(owner).atom(), meanOffset(owner)).addTo(sum, amount(owner));
        return sum;
    }

    /** The Auger group as fitted. */
    double[] fittedAuger(int owner) {
        Member member = members.get(owner);
        if (!member.clear()) return augerCurve(owner);
        double[] sum = new double[templates.grid.channels];
        for (int i = 0; i < design.size(); i++) {
            Design.Column c = design.column(i);
            if (c.owner() == owner && c.kind() == Design.Kind.AUGER) c.curve().addTo(sum, fit.x[i]);
        }
        return sum;
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

    double meanOffset(int owner) {
        double sum = 0;
        double moment = 0;
        for (int i = 0; i < design.size(); i++) {
            Design.Column c = design.column(i);
            if (c.owner() != owner || c.kind() != Design.Kind.STATE) continue;
            sum += fit.x[i];
            moment += fit.x[i] * c.offsetEv();
        }
        return sum > 0 ? moment / sum : members.get(owner).offsetEv();
    }
}
