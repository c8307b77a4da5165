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
    private static final double AREA_DEVIATION = 0.22;

    /** The valence band is not modelled, eV. */
    private static final double SHALLOWEST_EV = 11.5;

    private static final double IRREGULAR_DEVIATION = 0.8;
    /** Stray radiation stronger than this share of the source would be a source of its own. */
    private static final double LARGEST_GHOST = 0.08;

    private static final double AUGER_DEVIATION = 0.6;
    private static final double LOSS_DEVIATION = 0.12;
    /** Lines expected with less than this many standard deviations get no deviation of their own. */
    private static final double WEAKEST_DEVIATING = 2.5;

    private static final double PLASMON_DEVIATION = 0.15;
    private static final double NEAR_STATE_EV = 1.8;
    private static final double FAR_STATE_EV = 3.2;
    /** Carbonate, above hydrocarbon: only fluorine takes carbon higher, eV. */
    private static final double HIGHEST_CARBON = 4.8;

    private static final double USUAL_BURIAL = 0.2;
    private static final double PLAIN = 9;
    private static final double MISSING_SHARE = 0.33;
    private static final double LEAST_RATIO = 0.08;
    private static final double BURIAL_DEVIATION = 0.5;
    private static final double LEAST_BURIAL = -0.4;
    private static final double LARGEST_BURIAL = 2;
    /** Areas of lines scatter by this against cross sections, share. */
    private static final double LINE_SCATTER = 0.15;

    private static final double[] LOSSES = {4.5, 7.5, 11, 15, 19.5, 25};
    private static final double[] LOSS_WIDTHS = {3, 3.5, 4.5, 5, 6, 7};
    /** Behind C 1s aromatic shake-up lies at 6.6 eV and plasmons at over 20 eV; between them lies K 2p. */
    private static final double CARBON_SHAKE_UP = 7;

    private static final double CARBON_LOSS = 14;
    private static final double[] AUGER_OFFSETS = {-5, -2, 1, 4, 8};

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
    private LinearFit fit;

    private SurveyModelFit(
            Templates templates, Whitening whitening, double[] excess, double firstEnergyEv, double shiftEv) {
        this.templates = templates;
        this.design = new Design(templates.grid.counts, whitening);
        this.excess = excess;
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
                templates, Discrepancy.first(grid, firstEnergy), new double[0], firstEnergy, shiftEv);
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
        double[] more = Discrepancy.excess(templates.grid, residual);
        for (int i = 0; i < more.length; i++) {
            more[i] = Math.max(1, more[i] * (excess.length > 0 ? excess[i] : 1));
        }
        return reweighted(more, shiftEv);
    }

    /** The same at another shift. */
    SurveyModelFit at(double newShiftEv) {
        return reweighted(excess, newShiftEv);
    }

    private SurveyModelFit reweighted(double[] newExcess, double newShiftEv) {
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
                newExcess);
        SurveyModelFit next =
                new SurveyModelFit(templates, whitening, newExcess, SHALLOWEST_EV - newShiftEv, newShiftEv);
        next.plasmons.addAll(plasmons);
        for (int e = 0; e < members.size(); e++) {
            if (!active(e)) continue;
            Member m = members.get(e);
            double amount = amount(e);
            if (!(amount > 0)) continue;
            Emitter emitter = new Emitter(m.atom(), burial(e));
            double significance = Math.max(m.significance(), countingSignificance(emitter, meanOffset(e), amount));
            next.add(new Member(emitter, meanOffset(e), amount, significance), true);
        }
        next.refit();
        if (!stray.isEmpty()) next.addGhosts(stray, 0);
        return next;
    }

    /**
     * How deep an element lies, from how its lines of different kinetic energy depart from the tables: weighted straight
     * line of their logarithms, held back by what is usual.
     */
    private double burial(int owner) {
        Member member = members.get(owner);
        double amount = amount(owner);
        double before = member.emitter().burial();
        if (!member.clear() || !(amount > 0)) return before;
        double photon = templates.grid.photonEv;
        double main = Emitter.depth(photon - member.atom().main().bindingEv());
        double top = (USUAL_BURIAL - before) / (BURIAL_DEVIATION * BURIAL_DEVIATION);
        double bottom = 1 / (BURIAL_DEVIATION * BURIAL_DEVIATION);
        for (int i = 0; i < design.size(); i++) {
            Design.Column c = design.column(i);
            if (c.owner() != owner || c.kind() != Design.Kind.LINE) continue;
            AtomLine line = member.atom().lines().get(c.part());
            double ratio = Math.max(LEAST_RATIO, 1 + fit.x[i] / amount);
            if (!line.regular()) continue;
            double u = Math.sqrt(fit.variance(new int[] {i}, new double[] {1})) / (amount * ratio);
            double lever = Emitter.depth(photon - line.bindingEv()) - main;
            double w = 1 / (u * u + LINE_SCATTER * LINE_SCATTER);
            top -= w * lever * Math.log(ratio);
            bottom += w * lever * lever;
        }
        return Math.max(LEAST_BURIAL, Math.min(LARGEST_BURIAL, before + top / bottom));
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

    /** Adds an element's columns; the fit is not renewed. */
    void add(Member member, boolean deviations) {
        int owner = members.size();
        members.add(member);
        Emitter emitter = member.emitter();
        double u = member.offsetEv();
        List<Integer> states = new ArrayList<>();
        for (double offset : stateOffsets(member)) {
            int c = design.add(
                    Design.Kind.STATE,
                    owner,
                    states.size(),
                    offset,
                    member.clear() ? templates.photo(emitter, offset) : templates.whole(emitter, offset));
            if (c < 0) continue;
            states.add(c);
            double deviation = stateDeviation(offset - u);
            if (deviations && member.clear() && deviation < 1) design.expect(c, 0, deviation * member.amount());
        }
        if (member.clear()) addAuger(member, owner, states);
        if (member.strong()) {
            double amount = Math.max(member.amount(), 1e-12);
            for (int j = 0; j < LOSSES.length; j++) {
                if (member.symbol().equals("C") && LOSSES[j] > CARBON_SHAKE_UP && LOSSES[j] < CARBON_LOSS) continue;
                int c = design.add(
                        Design.Kind.LOSS, owner, j, u, templates.losses(emitter, u, LOSSES[j], LOSS_WIDTHS[j]));
                if (c >= 0) design.expect(c, 0, LOSS_DEVIATION * shakeUp(member.atom(), j) * amount);
            }
            for (Plasmon p : plasmons) {
                int c = design.add(
                        Design.Kind.LOSS,
                        owner,
                        LOSSES.length,
                        u,
                        templates.losses(emitter, u, p.energyEv(), p.widthEv()));
                if (c >= 0) design.expect(c, 0, PLASMON_DEVIATION * amount);
            }
            design.add(Design.Kind.TAIL, owner, 0, u, templates.tail(emitter, u));
        }
        if (deviations) addDeviations(member, owner);
    }

    /** Share of an element that a state this far from the main one may hold. */
    private static double stateDeviation(double distanceEv) {
        double d = Math.abs(distanceEv);
        if (d < NEAR_STATE_EV) return 1;
        return d < FAR_STATE_EV ? 0.4 : 0.12;
    }

    /** A loss that all lines share: a volume plasmon. */
    record Plasmon(double energyEv, double widthEv) {}

    /** Looks for one loss that lines of all strong elements repeat; true where it was found and will be in the next fit. */
    boolean findPlasmon(double leastGain) {
        Plasmon best = null;
        double most = leastGain;
        Design.White residual = design.residual(fit.curve());
        Hunt.Base base = new Hunt.Base(design, fit.passive, c -> true);
        for (double energy = 6; energy <= 28; energy += 0.8) {
            double[] sum = new double[templates.grid.channels];
            for (int e = 0; e < members.size(); e++) {
                Member m = members.get(e);
                if (!active(e) || !m.strong()) continue;
                templates.losses(m.emitter(), meanOffset(e), energy, 2.5).addTo(sum, amount(e));
            }
            Design.White white = design.white(sum);
            double push = white.dot(residual);
            if (push <= 0) continue;
            double[] z = base.factor.forward(base.couplings(white));
            double free = white.square();
            for (double v : z) free -= v * v;
            if (!(free > 0) || push * push / free <= most) continue;
            most = push * push / free;
            best = new Plasmon(energy, 2.5);
        }
        if (best == null) return false;
        plasmons.add(best);
        return true;
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
                    templates.auger(member.emitter(), member.offsetEv() + AUGER_OFFSETS[j]));
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
            Curve curve = templates.line(member.emitter(), line, member.offsetEv());
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
            boolean fluorine = members.stream().anyMatch(m -> m.symbol().equals("F"));
            high = (fluorine ? member.atom().highestEv() : HIGHEST_CARBON) - shiftEv + 0.7;
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
                    boolean here = Math.abs(member.bindingEv() + meanOffset(e) - at) < 1.2 * templates.gaussianEv;
                    if (here && amount(e) * templates.area(other, member) > 0.3 * own) return true;
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
        double[] sum = new double[templates.grid.channels];
        for (int i = 0; i < design.size(); i++) {
            if (design.column(i).owner() == owner && fit.x[i] != 0)
                design.column(i).curve().addTo(sum, fit.x[i]);
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
