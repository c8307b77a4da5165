package spotline.analysis.identify;

/**
 * How deep an element lies, from how its lines of different kinetic energy depart from the tables: weighted straight line
 * of their logarithms, held back by what is usual.
 *
 * <p>Units: attenuation lengths of 1000 eV electrons. Source: exponential attenuation, derived.
 */
final class Burial {
    private static final double USUAL = 0.2;
    private static final double DEVIATION = 0.5;
    private static final double LEAST = -0.4;
    private static final double LARGEST = 2;
    /** Areas of lines scatter by this against cross sections, share. */
    private static final double LINE_SCATTER = 0.15;

    private static final double LEAST_RATIO = 0.08;

    private Burial() {}

    static double of(SurveyModelFit model, int owner) {
        Member member = model.members.get(owner);
        double amount = model.amount(owner);
        double before = member.emitter().burial();
        if (!member.clear() || !(amount > 0)) return before;
        double photon = model.templates.grid.photonEv;
        double main = Emitter.depth(photon - member.atom().main().bindingEv());
        double top = (USUAL - before) / (DEVIATION * DEVIATION);
        double bottom = 1 / (DEVIATION * DEVIATION);
        for (int i = 0; i < model.design.size(); i++) {
            Design.Column c = model.design.column(i);
            if (c.owner() != owner || c.kind() != Design.Kind.LINE) continue;
            AtomLine line = member.atom().lines().get(c.part());
            double ratio = Math.max(LEAST_RATIO, 1 + model.fit().x[i] / amount);
            if (!line.regular()) continue;
            double u = Math.sqrt(model.fit().variance(new int[] {i}, new double[] {1})) / (amount * ratio);
            double lever = Emitter.depth(photon - line.bindingEv()) - main;
            double w = 1 / (u * u + LINE_SCATTER * LINE_SCATTER);
            top -= w * lever * Math.log(ratio);
            bottom += w * lever * lever;
        }
        return Math.max(LEAST, Math.min(LARGEST, before + top / bottom));
    }
}
