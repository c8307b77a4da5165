package spotline.analysis.identify;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spotline.reference.GhostLine;

/** Structure that all elements of a model make together: plasmons, and lines repeated by stray radiation. */
final class CommonStructure {
    /** Stray radiation stronger than this share of the source would be a source of its own. */
    private static final double LARGEST_GHOST = 0.08;

    private static final double LOWEST_PLASMON_EV = 6;
    private static final double HIGHEST_PLASMON_EV = 28;
    private static final double PLASMON_STEP_EV = 0.8;
    private static final double PLASMON_WIDTH_EV = 2.5;

    private CommonStructure() {}

    /** A loss that lines of all strong elements repeat, the one that gains most; empty where none gains enough. */
    static Optional<Plasmon> plasmon(SurveyModelFit model, double leastGain) {
        Optional<Plasmon> best = Optional.empty();
        double most = leastGain;
        Design.White residual = model.design.residual(model.fit().curve());
        Hunt.Base base = new Hunt.Base(model.design, model.fit().passive, c -> true);
        for (double energy = LOWEST_PLASMON_EV; energy <= HIGHEST_PLASMON_EV; energy += PLASMON_STEP_EV) {
            double[] sum = new double[model.templates.grid.channels];
            for (int e = 0; e < model.members.size(); e++) {
                Member m = model.members.get(e);
                if (!model.active(e) || !m.strong()) continue;
                model.templates
                        .losses(m.emitter(), model.meanOffset(e), energy, PLASMON_WIDTH_EV)
                        .addTo(sum, model.amount(e));
            }
            double gain = base.added(model.design.white(sum), residual).gain();
            if (gain <= most) continue;
            most = gain;
            best = Optional.of(new Plasmon(energy, PLASMON_WIDTH_EV));
        }
        return best;
    }

    /** Lines of all elements as a stray X-ray line would excite them; empty where the model gains too little by it. */
    static Optional<Curve> ghost(SurveyModelFit model, GhostLine ghost, double leastGain) {
        if (ghost.apparentShiftEv() == 0) return Optional.empty();
        List<Atom> atoms = new ArrayList<>();
        List<Double> amounts = new ArrayList<>();
        List<Double> offsets = new ArrayList<>();
        for (int e = 0; e < model.members.size(); e++) {
            if (!model.active(e) || !(model.amount(e) > 0)) continue;
            atoms.add(model.members.get(e).atom());
            amounts.add(model.amount(e));
            offsets.add(model.meanOffset(e));
        }
        Curve curve = model.templates.ghost(atoms, amounts, offsets, ghost.apparentShiftEv());
        if (curve.isEmpty()) return Optional.empty();
        Hunt.Base base = new Hunt.Base(model.design, model.fit().passive, c -> true);
        Hunt.Added added = base.added(
                model.design.white(curve), model.design.residual(model.fit().curve()));
        boolean stray = added.gain() >= leastGain && added.amount() > 0 && added.amount() <= LARGEST_GHOST;
        return stray ? Optional.of(curve) : Optional.empty();
    }
}
