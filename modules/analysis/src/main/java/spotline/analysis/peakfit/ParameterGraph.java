package spotline.analysis.peakfit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import spotline.analysis.peakfit.ParameterRule.EqualTo;
import spotline.analysis.peakfit.ParameterRule.Fixed;
import spotline.analysis.peakfit.ParameterRule.Free;
import spotline.analysis.peakfit.ParameterRule.OffsetFrom;
import spotline.analysis.peakfit.ParameterRule.Own;
import spotline.analysis.peakfit.ParameterRule.RatioTo;
import spotline.numerics.shape.LineShape;

/**
 * From the free numbers of a fit, its slots, to the values of all shape parameters, and back for derivatives.
 *
 * <p>Each value is {@code ratio * leader's value + offset}, where ratio and offset are constants or slots and most values
 * have no leader. A ratio that is free makes it a product of two slots, which is why the ties are followed here.
 */
final class ParameterGraph {
    /**
     * One free number.
     *
     * @param start empty: to be guessed
     * @param value index of the shape parameter whose rule it stands in
     */
    record Slot(String name, OptionalDouble start, double min, double max, Role role, int value) {}

    /** What a slot is to its shape parameter. */
    enum Role {
        VALUE,
        RATIO,
        OFFSET
    }

    private static final int NONE = -1;

    private final List<Member> members;
    private final int[] first; // value index of each member's first parameter
    private final List<Slot> slots = new ArrayList<>();
    private final int[] leader;
    private final int[] ratioSlot;
    private final int[] offsetSlot;
    private final double[] ratio;
    private final double[] offset;
    private final int[] order; // leaders first

    ParameterGraph(List<Member> members) {
        this.members = members;
        first = new int[members.size()];
        Map<String, Integer> index = new HashMap<>();
        int count = 0;
        for (int m = 0; m < first.length; m++) {
            first[m] = count;
            for (String parameter : members.get(m).shape().parameterNames()) {
                index.put(key(members.get(m).name(), parameter), count++);
            }
        }
        leader = filled(count);
        ratioSlot = filled(count);
        offsetSlot = filled(count);
        ratio = new double[count];
        offset = new double[count];
        for (Member member : members) {
            member.rules().forEach((parameter, rule) -> place(member.name(), parameter, rule, index));
        }
        order = order(count);
    }

    private static int[] filled(int count) {
        int[] filled = new int[count];
        Arrays.fill(filled, NONE);
        return filled;
    }

    private static String key(String component, String parameter) {
        return component + "\n" + parameter;
    }

    private static int indexOf(Map<String, Integer> index, String component, String parameter) {
        Integer at = index.get(key(component, parameter));
        if (at == null) throw new IllegalStateException("no parameter " + parameter + " of " + component);
        return at;
    }

    private void place(String component, String parameter, ParameterRule rule, Map<String, Integer> index) {
        int v = indexOf(index, component, parameter);
        String name = component + " " + parameter;
        if (rule instanceof Own own) {
            offset(v, own, name, Role.VALUE);
        } else if (rule instanceof EqualTo equal) {
            leader[v] = indexOf(index, equal.component(), parameter);
            ratio[v] = 1;
        } else if (rule instanceof OffsetFrom from) {
            leader[v] = indexOf(index, from.component(), parameter);
            ratio[v] = 1;
            offset(v, from.offset(), name + " less that of " + from.component(), Role.OFFSET);
        } else if (rule instanceof RatioTo to) {
            leader[v] = indexOf(index, to.component(), parameter);
            if (constant(to.ratio()).isPresent()) {
                ratio[v] = constant(to.ratio()).getAsDouble();
            } else {
                ratioSlot[v] = add(v, (Free) to.ratio(), name + " over that of " + to.component(), Role.RATIO);
            }
        }
    }

    private void offset(int v, Own own, String name, Role role) {
        if (constant(own).isPresent()) offset[v] = constant(own).getAsDouble();
        else offsetSlot[v] = add(v, (Free) own, name, role);
    }

    private static OptionalDouble constant(Own own) {
        if (own instanceof Fixed fixed) return OptionalDouble.of(fixed.value());
        Free free = (Free) own;
        return free.held() ? OptionalDouble.of(free.min()) : OptionalDouble.empty();
    }

    private int add(int v, Free free, String name, Role role) {
        double min = role == Role.RATIO ? Math.max(0, free.min()) : free.min();
        slots.add(new Slot(name, free.start(), min, free.max(), role, v));
        return slots.size() - 1;
    }

    private int[] order(int count) {
        int[] ordered = new int[count];
        boolean[] done = new boolean[count];
        int at = 0;
        while (at < count) {
            int before = at;
            for (int v = 0; v < count; v++) {
                if (done[v] || (leader[v] != NONE && !done[leader[v]])) continue;
                done[v] = true;
                ordered[at++] = v;
            }
            if (at == before) throw new IllegalStateException("ties in a circle");
        }
        return ordered;
    }

    List<Member> members() {
        return members;
    }

    List<Slot> slots() {
        return slots;
    }

    int values() {
        return leader.length;
    }

    /** Value index of a member's first shape parameter, its position. */
    int first(int member) {
        return first[member];
    }

    /** Whether a shape parameter has a slot of its own or follows one; false for constants. */
    boolean moves(int value) {
        if (ratioSlot[value] != NONE || offsetSlot[value] != NONE) return true;
        return leader[value] != NONE && moves(leader[value]);
    }

    /** Value that another follows, or -1. */
    int leaderOf(int value) {
        return leader[value];
    }

    /** Slot of what is added to the leader's value, or of the value itself where it has no leader; or -1. */
    int offsetSlot(int value) {
        return offsetSlot[value];
    }

    /** The slot in this parameter's own rule: itself, or the ratio or offset of its tie; -1 where there is none. */
    int numberOf(int value) {
        return offsetSlot[value] != NONE ? offsetSlot[value] : ratioSlot[value];
    }

    /** Slots that the shapes' sum is linear in, all of them together: areas that are free themselves. */
    boolean isArea(int slot) {
        Slot s = slots.get(slot);
        return s.role() == Role.VALUE && parameterOf(s.value()) == LineShape.AREA;
    }

    /** Which parameter of its shape a value is. */
    int parameterOf(int value) {
        return value - first[memberOf(value)];
    }

    int memberOf(int value) {
        int m = Arrays.binarySearch(first, value);
        return m >= 0 ? m : -m - 2;
    }

    void expand(double[] slotValues, double[] to) {
        for (int v : order) {
            double r = ratioSlot[v] == NONE ? ratio[v] : slotValues[ratioSlot[v]];
            double o = offsetSlot[v] == NONE ? offset[v] : slotValues[offsetSlot[v]];
            to[v] = leader[v] == NONE ? o : r * to[leader[v]] + o;
        }
    }

    /**
     * Turns derivatives by values into derivatives by slots.
     *
     * @param byValue one row a value; overwritten
     * @param bySlot one row a slot; the first {@code slots().size()} are written
     */
    void pullBack(double[] slotValues, double[] values, double[][] byValue, double[][] bySlot, int points) {
        for (int k = 0; k < slots.size(); k++) Arrays.fill(bySlot[k], 0, points, 0);
        for (int i = order.length - 1; i >= 0; i--) {
            int v = order[i];
            if (leader[v] != NONE) {
                double r = ratioSlot[v] == NONE ? ratio[v] : slotValues[ratioSlot[v]];
                add(byValue[v], r, byValue[leader[v]], points);
                if (ratioSlot[v] != NONE) add(byValue[v], values[leader[v]], bySlot[ratioSlot[v]], points);
            }
            if (offsetSlot[v] != NONE) add(byValue[v], 1, bySlot[offsetSlot[v]], points);
        }
    }

    private static void add(double[] row, double factor, double[] to, int points) {
        if (factor == 0) return;
        for (int i = 0; i < points; i++) to[i] += factor * row[i];
    }

    /** Derivative of one quantity by all slots from its derivative by all values. */
    double[] gradient(double[] slotValues, double[] values, double[] byValue) {
        double[][] rows = new double[byValue.length][1];
        for (int v = 0; v < rows.length; v++) rows[v][0] = byValue[v];
        double[][] bySlot = new double[slots.size()][1];
        pullBack(slotValues, values, rows, bySlot, 1);
        double[] gradient = new double[bySlot.length];
        for (int k = 0; k < gradient.length; k++) gradient[k] = bySlot[k][0];
        return gradient;
    }
}
