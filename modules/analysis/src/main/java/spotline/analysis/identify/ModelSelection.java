package spotline.analysis.identify;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import spotline.core.Work;

/**
 * Lets elements enter and leave the model of a survey by evidence: an element enters when the likelihood gains more than
 * a penalty by it, and leaves when less than that would be lost without it.
 */
final class ModelSelection {
    /** Twice the gain in log-likelihood that an element must bring. */
    static final double ENTER = 20;

    static final double STAY = 18;
    static final double RARE_PENALTY = 40;
    static final double DECLARED_BONUS = 4;
    private static final double UNCOMMON_PENALTY = 10;
    private static final double EVERYWHERE_BONUS = 10;
    /** What nearly every surface that has met air carries. */
    static final Set<String> EVERYWHERE = Set.of("C", "O");
    /** Met in most laboratories every week (common practice, no source). */
    private static final Set<String> COMMON = Set.of(
            "Li", "B", "N", "F", "Na", "Mg", "Al", "Si", "P", "S", "Cl", "K", "Ca", "Ti", "V", "Cr", "Mn", "Fe", "Co",
            "Ni", "Cu", "Zn", "Ga", "As", "Br", "Zr", "Mo", "Ag", "In", "Sn", "I", "Ba", "W", "Pt", "Au", "Pb");

    private static final int MOST_ROUNDS = 8;
    private static final int MOST_EXCHANGES = 3;
    /** Elements seen more clearly than this are not put in question. */
    private static final double EXCHANGEABLE = 500;

    private static final double MARGIN = 6;
    /** What is seen this clearly stays although a line of it is missing: the tables may be wrong. */
    private static final double CONTRADICTED_STAYS = 800;
    /** What an element must bring besides where its main line lies under another's: that one's area may be wrong. */
    private static final double OVERLAP_PENALTY = 30;
    /** Two elements may enter in one round if their best lines lie this far apart, eV. */
    private static final double APART = 60;

    private ModelSelection() {}

    /** How much more an element must gain than one of middling frequency. */
    static double penalty(Atom atom, Set<String> declared) {
        double penalty = atom.rare() ? RARE_PENALTY : COMMON.contains(atom.symbol()) ? 0 : UNCOMMON_PENALTY;
        if (EVERYWHERE.contains(atom.symbol())) penalty = -EVERYWHERE_BONUS;
        return penalty - (declared.contains(atom.symbol()) ? DECLARED_BONUS : 0);
    }

    static boolean common(String symbol) {
        return COMMON.contains(symbol) || EVERYWHERE.contains(symbol);
    }

    /** @param hunt for the width and the shift of the model */
    static SurveyModelFit grow(SurveyModelFit start, Hunt hunt, Set<String> declared, Work work) {
        SurveyModelFit model = start;
        for (int round = 0; round < MOST_ROUNDS; round++) {
            work.check();
            List<Hunt.Gain> gains = gains(model, hunt, declared);
            if (gains.isEmpty()) break;
            boolean strong = false;
            List<Double> taken = new ArrayList<>();
            for (Hunt.Gain gain : gains) {
                Atom atom = gain.candidate().atom();
                double at = atom.main().bindingEv() + gain.candidate().offsetEv();
                if (gain.gain() < 0.3 * gains.get(0).gain()) break;
                if (taken.stream().anyMatch(t -> Math.abs(t - at) < APART)) continue;
                taken.add(at);
                Member member = new Member(
                        new Emitter(atom, Hunt.USUAL_BURIAL),
                        gain.candidate().offsetEv(),
                        gain.amount(),
                        Math.sqrt(gain.gain()));
                strong |= member.clear();
                model.add(member, true);
                if (taken.size() == 3) break;
            }
            model.refit();
            if (strong) model = model.sobered();
            model = prune(model, declared);
        }
        model = prune(model.sobered(), declared);
        return prune(exchanged(model, hunt, declared), declared);
    }

    /** Elements that came first give way where another does better in their place. */
    private static SurveyModelFit exchanged(SurveyModelFit start, Hunt hunt, Set<String> declared) {
        SurveyModelFit model = start;
        for (int round = 0; round < MOST_EXCHANGES; round++) {
            boolean changed = false;
            for (int e = 0; e < model.members.size() && !changed; e++) {
                if (!model.active(e)) continue;
                Atom atom = model.members.get(e).atom();
                boolean contradicted = model.contradicted(e);
                double own = contradicted ? 0 : model.evidence(e) - penalty(atom, declared);
                if (own > EXCHANGEABLE) continue;
                int owner = e;
                SurveyModelFit now = model;
                Hunt.Base base = new Hunt.Base(
                        model.design,
                        model.fit().passive,
                        c -> now.design.column(c).owner() != owner);
                List<Hunt.Gain> gains = hunt.gains(
                        base,
                        base.residual(),
                        Math.max(ENTER, own + MARGIN) - DECLARED_BONUS - EVERYWHERE_BONUS,
                        a -> a != atom && !now.holds(a));
                gains.removeIf(g -> g.gain() - penalty(g.candidate().atom(), declared) < Math.max(ENTER, own + MARGIN));
                if (gains.isEmpty() && contradicted && model.evidence(e) < CONTRADICTED_STAYS) {
                    model.remove(e);
                    model.refit();
                    changed = true;
                }
                if (gains.isEmpty()) continue;
                Hunt.Gain best = gains.get(0);
                model.remove(e);
                model.add(
                        new Member(
                                new Emitter(best.candidate().atom(), Hunt.USUAL_BURIAL),
                                best.candidate().offsetEv(),
                                best.amount(),
                                Math.sqrt(best.gain())),
                        true);
                model.refit();
                changed = true;
            }
            if (!changed) return model;
            model = model.sobered();
        }
        return model;
    }

    private static List<Hunt.Gain> gains(SurveyModelFit model, Hunt hunt, Set<String> declared) {
        Design design = model.design;
        LinearFit fit = model.fit();
        Design.White residual = design.residual(fit.curve());
        Hunt.Base base = new Hunt.Base(design, fit.passive, column -> true);
        List<Hunt.Gain> gains = new ArrayList<>(
                hunt.gains(base, residual, ENTER - DECLARED_BONUS - EVERYWHERE_BONUS, atom -> !model.holds(atom)));
        gains.removeIf(g -> g.gain() < ENTER + penalty(g.candidate().atom(), declared));
        return gains;
    }

    private static SurveyModelFit prune(SurveyModelFit model, Set<String> declared) {
        while (true) {
            int weakest = -1;
            double least = 0;
            for (int e = 0; e < model.members.size(); e++) {
                if (!model.active(e)) continue;
                double spare =
                        model.evidence(e) - STAY - penalty(model.members.get(e).atom(), declared);
                if (spare > least && spare < OVERLAP_PENALTY && model.underAnother(e)) spare -= OVERLAP_PENALTY;
                if (spare < least) {
                    least = spare;
                    weakest = e;
                }
            }
            if (weakest < 0) return model;
            model.remove(weakest);
            model.refit();
        }
    }
}
