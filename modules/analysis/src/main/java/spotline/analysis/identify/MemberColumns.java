package spotline.analysis.identify;

import java.util.ArrayList;
import java.util.List;

/**
 * The columns that an element brings to the model of a survey: states, Auger group, losses, tail, and how far its second
 * lines depart from the tables. How many depends on how clearly it is seen.
 *
 * <p>Source: expected shares and deviations: common practice, no source.
 */
final class MemberColumns {
    /** Deviation of a second line's area from the tables, share. */
    private static final double AREA_DEVIATION = 0.22;

    private static final double IRREGULAR_DEVIATION = 0.8;
    private static final double AUGER_DEVIATION = 0.6;
    private static final double LOSS_DEVIATION = 0.12;
    private static final double PLASMON_DEVIATION = 0.15;
    /** Share of an element's lines that the common loss structure departs by at one energy from the tail's. */
    private static final double COMMON_LOSS_DEVIATION = 0.06;
    /** Tails of matter unlike that of the universal cross section, and of what is buried or lies on top. */
    private static final double TAIL_DEVIATION = 0.4;
    /** Logarithm of the factor that widths are tried with, and how many of it they may be off. */
    private static final double WIDTH_STEP = 0.1;

    private static final double WIDTH_DEVIATION = 2;
    /** Lines expected with less than this many standard deviations get no deviation of their own. */
    private static final double WEAKEST_DEVIATING = 2.5;

    private static final double STATES_BELOW = 3.2;
    private static final double STATES_ABOVE = 5.5;
    private static final double SHIFT_SLACK = 0.7;
    private static final double NARROWEST_SPACING = 0.65;
    /** Distance of neighbouring states in line widths: closer ones cannot be told apart. */
    private static final double SPACING = 0.42;

    private static final double NEAR_STATE_EV = 1.8;
    private static final double FAR_STATE_EV = 3.2;
    private static final double NEXT_STATE = 0.4;
    private static final double FAR_STATE = 0.12;
    /** Carbonate, above hydrocarbon: only fluorine takes carbon higher, eV. */
    private static final double HIGHEST_CARBON = 4.8;

    /** Shake-up, an element's own. */
    private static final int SHAKE_UPS = 2;

    private static final double[] LOSSES = {4.5, 7.5, 11, 15, 19.5, 25};
    private static final double[] LOSS_WIDTHS = {3, 3.5, 4.5, 5, 6, 7};
    /** Where the common loss structure is described, eV behind the lines; its last piece ends at the last one. */
    private static final double[] COMMON_LOSSES = {4, 7, 10, 13, 16, 19, 22.5, 26.5, 31, 36, 42, 50, 60, 72};

    private static final double COMMON_OVERLAP = 1.2;
    /** Behind C 1s aromatic shake-up lies at 6.6 eV and plasmons at over 20 eV; between them lies K 2p. */
    private static final double CARBON_SHAKE_UP = 7;

    private static final double CARBON_LOSS = 14;
    private static final double[] AUGER_OFFSETS = {-5, -2, 1, 4, 8};

    private final Design design;
    private final Templates templates;
    private final double shiftEv;
    private final boolean fluorine;

    /** @param fluorine whether it is in the model */
    MemberColumns(Design design, Templates templates, double shiftEv, boolean fluorine) {
        this.design = design;
        this.templates = templates;
        this.shiftEv = shiftEv;
        this.fluorine = fluorine;
    }

    /**
     * @param owner number of the element among the members
     * @param plasmons losses that its lines share with all others
     * @param deviations whether second lines may depart from the tables: the member's amount must be known for it
     */
    void add(Member member, int owner, List<Plasmon> plasmons, boolean deviations) {
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
        if (member.clear() && deviations) addWidth(member, owner);
        if (member.clear()) addAuger(member, owner, states);
        if (member.strong()) addLosses(member, owner, plasmons);
        if (deviations) addDeviations(member, owner);
    }

    private void addLosses(Member member, int owner, List<Plasmon> plasmons) {
        Emitter emitter = member.emitter();
        double u = member.offsetEv();
        double amount = Math.max(member.amount(), 1e-12);
        for (int j = 0; j < LOSSES.length; j++) {
            if (j >= SHAKE_UPS && !ownLosses(member)) break;
            if (member.symbol().equals("C") && LOSSES[j] > CARBON_SHAKE_UP && LOSSES[j] < CARBON_LOSS) continue;
            int c = design.add(Design.Kind.LOSS, owner, j, u, templates.losses(emitter, u, LOSSES[j], LOSS_WIDTHS[j]));
            if (c >= 0) design.expect(c, 0, LOSS_DEVIATION * shakeUp(member.atom(), j) * amount);
        }
        for (Plasmon p : plasmons) {
            int c = design.add(
                    Design.Kind.LOSS, owner, LOSSES.length, u, templates.losses(emitter, u, p.energyEv(), p.widthEv()));
            if (c >= 0) design.expect(c, 0, PLASMON_DEVIATION * amount);
        }
        int tail = design.add(Design.Kind.TAIL, owner, 0, u, templates.tail(emitter, u));
        if (tail >= 0 && member.amount() > 0) design.expect(tail, amount, TAIL_DEVIATION * amount);
    }

    /** Carbon mostly lies on top of the rest and has losses of its own. */
    private static boolean ownLosses(Member member) {
        return member.symbol().equals("C");
    }

    /** Departures of the loss structure from that of the tails: the same behind all lines from one matter. */
    void addCommonLosses(List<Member> members) {
        for (int j = 0; j + 1 < COMMON_LOSSES.length; j++) {
            double width = COMMON_OVERLAP * (COMMON_LOSSES[j + 1] - COMMON_LOSSES[j]);
            List<Member> strong =
                    members.stream().filter(m -> m.strong() && !ownLosses(m)).toList();
            int c = design.add(Design.Kind.COMMON_LOSS, -1, j, 0, templates.losses(strong, COMMON_LOSSES[j], width));
            if (c >= 0) design.expect(c, 0, COMMON_LOSS_DEVIATION);
        }
    }

    /** To first order; without it a line that is broader or narrower than most bends the background about it. */
    private void addWidth(Member member, int owner) {
        Curve curve = templates.broader(member.emitter(), member.offsetEv(), Math.exp(WIDTH_STEP));
        int c = design.add(Design.Kind.WIDTH, owner, 0, member.offsetEv(), curve);
        if (c >= 0) design.expect(c, 0, WIDTH_DEVIATION * member.amount());
    }

    /** Share of an element that a state this far from the main one may hold. */
    private static double stateDeviation(double distanceEv) {
        double d = Math.abs(distanceEv);
        if (d < NEAR_STATE_EV) return 1;
        return d < FAR_STATE_EV ? NEXT_STATE : FAR_STATE;
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
            double expected = member.amount() * Math.sqrt(design.square(curve));
            if (expected < WEAKEST_DEVIATING) continue;
            int c = design.add(Design.Kind.LINE, owner, l, member.offsetEv(), curve);
            double share = line.regular() ? AREA_DEVIATION : IRREGULAR_DEVIATION;
            if (c >= 0) design.expect(c, 0, share * member.amount());
        }
    }

    private double[] stateOffsets(Member member) {
        double u = member.offsetEv();
        if (!member.clear()) return new double[] {u};
        double spacing = Math.max(NARROWEST_SPACING, SPACING * templates.gaussianEv);
        double low = Math.max(u - STATES_BELOW, member.atom().lowestEv() - shiftEv - SHIFT_SLACK);
        double high = Math.min(u + STATES_ABOVE, member.atom().highestEv() - shiftEv + SHIFT_SLACK);
        if (member.symbol().equals("C")) {
            double lowest = member.atom().lowestEv() - shiftEv - SHIFT_SLACK;
            low = fluorine ? Math.min(u - STATES_BELOW, lowest) : u - STATES_BELOW;
            high = (fluorine ? member.atom().highestEv() : HIGHEST_CARBON) - shiftEv + SHIFT_SLACK;
        }
        int below = Math.max(0, (int) Math.floor((u - low) / spacing));
        int above = Math.max(0, (int) Math.floor((high - u) / spacing));
        double[] offsets = new double[below + above + 1];
        for (int k = 0; k < offsets.length; k++) offsets[k] = u + (k - below) * spacing;
        return offsets;
    }
}
