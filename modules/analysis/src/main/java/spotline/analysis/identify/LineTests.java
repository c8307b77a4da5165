package spotline.analysis.identify;

import java.util.ArrayList;
import java.util.List;
import spotline.numerics.linear.Cholesky;

/**
 * Each line of one element on its own: how much of it the survey shows, the element's other lines held as fitted and
 * everything else found anew.
 */
final class LineTests {
    /** Lines expected with less than this say nothing either way. */
    private static final double LEAST_EXPECTED = 1;
    /** Members of a doublet this many line widths apart are lines of their own. */
    private static final double RESOLVED = 1.2;

    /**
     * @param line one member alone where a survey resolves the doublet; the main line for the Auger group
     * @param energyEv measured binding energy
     * @param significance standard deviations it stands out by
     * @param expected standard deviations it should stand out by
     * @param independent share of it that no other element's columns can make
     */
    record Test(
            AtomLine line, boolean auger, double energyEv, double significance, double expected, double independent) {
        double ratio() {
            return expected > 0 ? significance / expected : Double.NaN;
        }
    }

    private LineTests() {}

    static List<Test> of(SurveyModelFit model, int owner) {
        Design design = model.design;
        double[] x = model.fit().x;
        Hunt.Base base = new Hunt.Base(design, model.fit().passive, c -> {
            Design.Column column = design.column(c);
            return column.owner() != owner || column.kind() == Design.Kind.TAIL || column.kind() == Design.Kind.LOSS;
        });
        double[] own = new double[model.templates.grid.channels];
        for (int i = 0; i < design.size(); i++) {
            Design.Column c = design.column(i);
            boolean kept = c.kind() == Design.Kind.TAIL || c.kind() == Design.Kind.LOSS;
            if (c.owner() == owner && !kept && x[i] != 0) c.curve().addTo(own, x[i]);
        }
        Atom atom = model.members.get(owner).atom();
        List<Test> tests = new ArrayList<>();
        double offset = model.topOffset(owner);
        for (int l = 0; l < atom.lines().size(); l++) {
            AtomLine whole = atom.lines().get(l);
            int part = l;
            double deviation = 0;
            for (int i = 0; i < design.size(); i++) {
                Design.Column c = design.column(i);
                if (c.owner() == owner && c.kind() == Design.Kind.LINE && c.part() == part) deviation = x[i];
            }
            double amount = model.amount(owner);
            for (AtomLine line : whole.shown(RESOLVED * model.templates.gaussianEv)) {
                if (!model.templates.inside(line.bindingEv(), offset)) continue;
                double[] nominal = model.lineCurve(owner, line);
                double[] fitted = nominal.clone();
                for (int i = 0; i < fitted.length; i++) fitted[i] *= 1 + deviation / amount;
                test(model, base, own, nominal, fitted, line, false, line.bindingEv() + offset)
                        .ifAbove(LEAST_EXPECTED, tests);
            }
        }
        if (!atom.auger().isEmpty()) {
            double[] nominal = model.augerCurve(owner);
            AugerBranch branch = mainBranch(atom);
            double energy = model.templates.grid.photonEv - branch.kineticEv() + offset;
            double[] fitted = model.fittedAuger(owner);
            boolean any = false;
            for (double v : fitted) any |= v != 0;
            test(model, base, own, any ? fitted : nominal, fitted, atom.main(), true, energy)
                    .ifAbove(LEAST_EXPECTED, tests);
        }
        return tests;
    }

    static AugerBranch mainBranch(Atom atom) {
        AugerBranch best = atom.auger().get(0);
        for (AugerBranch b : atom.auger()) {
            if (b.holes() / b.widthEv() > best.holes() / best.widthEv()) best = b;
        }
        return best;
    }

    private record Outcome(Test test) {
        void ifAbove(double least, List<Test> to) {
            if (test.expected() >= least || test.significance() >= 3) to.add(test);
        }
    }

    private static Outcome test(
            SurveyModelFit model,
            Hunt.Base base,
            double[] own,
            double[] nominal,
            double[] fitted,
            AtomLine line,
            boolean auger,
            double energy) {
        Design design = model.design;
        int n = own.length;
        double[] others = new double[n];
        for (int i = 0; i < n; i++) others[i] = own[i] - fitted[i];
        Design.White white = design.white(nominal);
        double square = white.square();
        if (!(square > 0)) return new Outcome(new Test(line, auger, energy, 0, 0, 0));
        // Everything but the element, found anew on the survey less the element's other lines.
        Design.White fixed = design.white(others);
        double[] right = new double[base.kept.length];
        for (int k = 0; k < right.length; k++) {
            right[k] = design.right(base.kept[k])
                    - design.column(base.kept[k]).white().dot(fixed);
        }
        double[] h = base.couplings(white);
        double[] solved = base.factor.solve(right);
        double push = design.rightOf(white) - white.dot(fixed) - Cholesky.dot(h, solved, h.length);
        double[] z = base.factor.forward(h);
        double free = square - Cholesky.dot(z, z, z.length);
        if (!(free > 1e-9 * square)) return new Outcome(new Test(line, auger, energy, 0, 0, 0));
        double root = Math.sqrt(free);
        return new Outcome(new Test(line, auger, energy, push / root, root, free / square));
    }
}
