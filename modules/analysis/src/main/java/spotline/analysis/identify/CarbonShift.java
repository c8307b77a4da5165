package spotline.analysis.identify;

import java.util.Optional;
import spotline.numerics.linear.NonNegativeLeastSquares;

/**
 * The shift that puts hydrocarbon where it belongs: the C 1s envelope as hydrocarbon, its oxygen-bonded groups at fixed
 * distances above it, usual shares of these expected beforehand. It is looked for wherever the other elements let the
 * scale lie, everything else in the model found anew.
 *
 * <p>Units: eV. Errors: empty where no envelope stands out.
 *
 * <p>Source: distances of the groups and their usual shares: chemistry tables and common practice, from memory; 284.8 eV
 * is the default reference of adventitious-carbon referencing.
 */
final class CarbonShift {
    static final double HYDROCARBON_EV = 284.8;
    private static final double[] GROUPS = {0, 1.5, 2.9, 4.2};
    private static final double[] SHARES = {1, 0.18, 0.08, 0.08};
    private static final double[] DEVIATIONS = {0, 0.15, 0.09, 0.09};
    /** Broadening of hydrocarbon beside the survey's other lines, eV: those tried. */
    private static final double[] BROADENINGS = {0, 0.6, 0.9, 1.2, 1.6};

    private static final double USUAL_BROADENING = 0.9;
    private static final double COARSE_STEP = 0.3;
    private static final double STEP = 0.1;
    private static final double REACH = 1.0;
    private static final double LEAST_GAIN = 12;
    /** Hydrocarbon itself scatters, and shares depart from the usual. */
    private static final double OWN_DEVIATION = 0.16;

    private final SurveyModelFit model;
    private final Templates templates;
    private final double area;
    private final Hunt.Base base;
    private final Design.White residual;

    /** @param gain of the likelihood by the envelope */
    record Placed(double shiftEv, double standardUncertaintyEv, double gain) {}

    private CarbonShift(SurveyModelFit model, Atom carbon) {
        this.model = model;
        this.templates = model.templates;
        this.area = templates.area(new Emitter(carbon), carbon.main());
        int owner = model.owner(carbon.symbol());
        Design design = model.design;
        base = new Hunt.Base(design, model.fit().passive, c -> design.column(c).owner() != owner);
        residual = base.residual();
    }

    private PeakShape shape(double broadeningEv) {
        return new PeakShape(Math.hypot(templates.gaussianEv, broadeningEv), 0.1);
    }

    /** @param low,high where the shift may lie by all other evidence */
    static Optional<Placed> of(SurveyModelFit model, Atom carbon, double low, double high) {
        return new CarbonShift(model, carbon).find(low, high);
    }

    private Optional<Placed> find(double low, double high) {
        double best = Double.NaN;
        double most = LEAST_GAIN;
        int steps = (int) Math.max(1, Math.ceil((high - low) / COARSE_STEP));
        for (int k = 0; k <= steps; k++) {
            double shift = low + k * (high - low) / steps;
            if (!templates.grid.holds(HYDROCARBON_EV - shift, 4)) continue;
            double gain = gain(shift);
            if (gain > most) {
                most = gain;
                best = shift;
            }
        }
        if (Double.isNaN(best)) return Optional.empty();
        Optional<Placed> placed = Optional.empty();
        for (double broadening : BROADENINGS) {
            Placed now = fine(best, Math.sqrt(most), shape(broadening));
            if (placed.isEmpty() || now.gain() > placed.get().gain()) placed = Optional.of(now);
        }
        return placed;
    }

    private Placed fine(double centre, double rootGain, PeakShape shape) {
        int n = (int) Math.round(2 * REACH / STEP) + 1;
        double[] gains = new double[n];
        int top = 0;
        for (int k = 0; k < n; k++) {
            gains[k] = freeGain(centre - REACH + k * STEP, rootGain, shape);
            if (gains[k] > gains[top]) top = k;
        }
        if (top == 0 || top == n - 1) return new Placed(centre, REACH, gains[top]);
        double curvature = (2 * gains[top] - gains[top - 1] - gains[top + 1]) / (STEP * STEP);
        double slope = (gains[top + 1] - gains[top - 1]) / (2 * STEP);
        double move = curvature > 0 ? Math.max(-STEP / 2, Math.min(STEP / 2, slope / curvature)) : 0;
        double u = Math.hypot(OWN_DEVIATION, Math.sqrt(2 / Math.max(2, curvature)));
        return new Placed(centre - REACH + top * STEP + move, u, gains[top]);
    }

    /** Gain by an envelope of usual shares. */
    private double gain(double shift) {
        double position = HYDROCARBON_EV - shift;
        PeakShape shape = shape(USUAL_BROADENING);
        double[] centres = new double[GROUPS.length];
        double[] areas = new double[GROUPS.length];
        for (int k = 0; k < GROUPS.length; k++) {
            centres[k] = position + GROUPS[k];
            areas[k] = area * SHARES[k];
        }
        return base.added(templates.peaks(shape, centres, areas), residual).gain();
    }

    /** Gain by an envelope whose shares may depart from the usual ones; {@code scale} as the root of its gain. */
    private double freeGain(double shift, double scale, PeakShape shape) {
        double position = HYDROCARBON_EV - shift;
        int n = GROUPS.length;
        double[][] z = new double[n][];
        Design.White[] columns = new Design.White[n];
        double[] g = new double[n];
        double[][] h = new double[n][n];
        for (int k = 0; k < n; k++) {
            Curve curve = templates.peak(shape, position + GROUPS[k], area);
            columns[k] = model.design.white(curve);
            g[k] = columns[k].dot(residual);
            z[k] = base.factor.forward(base.couplings(curve));
            for (int j = 0; j <= k; j++) {
                double sum = columns[k].dot(columns[j]);
                for (int i = 0; i < z[k].length; i++) sum -= z[k][i] * z[j][i];
                h[k][j] = sum;
                h[j][k] = sum;
            }
        }
        // Amount that a gain stands for, to give the expected shares their scale.
        double amount = Math.max(1e-12, scale / Math.sqrt(Math.max(1e-300, h[0][0])));
        for (int k = 1; k < n; k++) {
            double p = 1 / (DEVIATIONS[k] * amount * DEVIATIONS[k] * amount);
            h[k][k] += p;
            h[0][0] += p * SHARES[k] * SHARES[k];
            h[0][k] -= p * SHARES[k];
            h[k][0] -= p * SHARES[k];
        }
        for (int k = 0; k < n; k++) h[k][k] *= 1 + 1e-9;
        boolean[] all = {true, true, true, true};
        NonNegativeLeastSquares.Solution solution = NonNegativeLeastSquares.solve(h, g, new boolean[n], all);
        double gained = 0;
        for (int k = 0; k < n; k++) gained += solution.value(k) * g[k];
        return gained;
    }
}
