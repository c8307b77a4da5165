package spotline.analysis.identify;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;
import org.jspecify.annotations.Nullable;
import spotline.numerics.linear.Cholesky;

/**
 * Further elements tried on a fitted model: the gain in likelihood that each would bring, everything in the model found
 * anew. Curves are computed once for one shift and width. Worked with by one thread.
 */
final class Hunt {
    /** Most elements lie under a little of what the air leaves. */
    static final double USUAL_BURIAL = 0.2;

    private final List<Candidate> candidates = new ArrayList<>();
    private @Nullable Design squaresOf;
    private double[] squares = new double[0];

    /** An element at an offset. */
    record Candidate(Atom atom, double offsetEv, Curve curve) {}

    /** @param gain twice that of the log-likelihood */
    record Added(double gain, double amount) {
        static final Added NOTHING = new Added(0, 0);
    }

    record Gain(Candidate candidate, double gain, double amount) {}

    Hunt(Templates templates, List<Atom> atoms, double shiftEv) {
        double step = Math.max(0.5, 0.35 * templates.gaussianEv);
        for (Atom atom : atoms) {
            int steps = (int) Math.max(1, Math.ceil((atom.highestEv() - atom.lowestEv()) / step));
            for (int k = 0; k <= steps; k++) {
                double offset = atom.lowestEv() + k * (atom.highestEv() - atom.lowestEv()) / steps - shiftEv;
                if (!templates.inside(atom.main().bindingEv(), offset)) continue;
                Curve curve = templates.whole(new Emitter(atom, USUAL_BURIAL), offset);
                if (!curve.isEmpty()) candidates.add(new Candidate(atom, offset, curve));
            }
        }
    }

    /** A column that others make up to this share brings nothing of its own. */
    private static final double LEAST_FREE = 1e-6;

    /** Factor of the normal equations of the columns that a fit solved for and that are kept. */
    static final class Base {
        final Design design;
        final int[] kept;
        final Cholesky factor;

        Base(Design design, int[] passive, IntPredicate keep) {
            this.design = design;
            this.kept = java.util.Arrays.stream(passive).filter(keep).toArray();
            this.factor = Cholesky.of(design.matrix(), kept);
        }

        /** Amplitudes of the kept columns alone, a value a kept column. */
        double[] solve() {
            double[] right = new double[kept.length];
            for (int k = 0; k < kept.length; k++) right[k] = design.right(kept[k]);
            return factor.solve(right);
        }

        /** Whitened counts less what the kept columns alone make of them. */
        Design.White residual() {
            double[] amounts = solve();
            double[] model = new double[design.channels()];
            for (int k = 0; k < amounts.length; k++)
                design.column(kept[k]).curve().addTo(model, amounts[k]);
            return design.residual(model);
        }

        /** What one more column would bring, every kept one found anew; nothing where it would have to be negative. */
        Added added(Design.White curve, Design.White residual) {
            double push = curve.dot(residual);
            return push > 0 ? added(push, curve.square(), couplings(curve)) : Added.NOTHING;
        }

        /** The same of a curve that is not whitened yet. */
        Added added(Curve curve, Design.White residual) {
            double push = residual.dot(curve);
            return push > 0 ? added(push, design.square(curve), couplings(curve)) : Added.NOTHING;
        }

        private Added added(double push, double own, double[] couplings) {
            double[] z = factor.forward(couplings);
            double free = own - Cholesky.dot(z, z, z.length);
            return free > LEAST_FREE * own ? new Added(push * push / free, push / free) : Added.NOTHING;
        }

        double[] couplings(Curve curve) {
            double[] h = new double[kept.length];
            for (int k = 0; k < kept.length; k++)
                h[k] = design.column(kept[k]).white().dot(curve);
            return h;
        }

        double[] couplings(Design.White curve) {
            double[] h = new double[kept.length];
            for (int k = 0; k < kept.length; k++)
                h[k] = design.column(kept[k]).white().dot(curve);
            return h;
        }
    }

    /**
     * Gains above a least one, the largest of each element, best first.
     *
     * @param residual whitened counts less model
     */
    List<Gain> gains(Base base, Design.White residual, double least, java.util.function.Predicate<Atom> wanted) {
        List<Gain> found = new ArrayList<>();
        Optional<Gain> best = Optional.empty();
        for (int c = 0; c < candidates.size(); c++) {
            Candidate candidate = candidates.get(c);
            if (wanted.test(candidate.atom())) {
                Curve curve = candidate.curve();
                double push = residual.dot(curve);
                double floor = Math.max(least, best.map(Gain::gain).orElse(0.0));
                // What the model takes away leaves at least a share; below it no gain can be had.
                double own = push > 0 ? square(c, base.design) : 0;
                if (push > 0 && push * push > 0.1 * floor * own) {
                    Added added = base.added(push, own, base.couplings(curve));
                    if (added.gain() > floor) best = Optional.of(new Gain(candidate, added.gain(), added.amount()));
                }
            }
            boolean last = c + 1 == candidates.size() || candidates.get(c + 1).atom() != candidate.atom();
            if (last) {
                best.ifPresent(found::add);
                best = Optional.empty();
            }
        }
        found.sort(Comparator.comparingDouble(Gain::gain).reversed());
        return found;
    }

    /** Square of a candidate's whitened curve, kept as long as the weights stay the same. */
    private double square(int candidate, Design design) {
        if (design != squaresOf) {
            squaresOf = design;
            squares = new double[candidates.size()];
        }
        if (squares[candidate] == 0) {
            squares[candidate] = design.square(candidates.get(candidate).curve());
        }
        return squares[candidate];
    }
}
