package spotline.analysis.identify;

import java.util.List;
import spotline.reference.XraySatellite;

/**
 * How well the lines of one element fit a filtered survey at an offset: its gain in likelihood over "not there", robust
 * against lines that something else adds to.
 */
final class LineScore {
    /** Agreement beyond this many standard deviations counts by its logarithm only. */
    private static final double LINEAR_TO = 6;
    /** Areas of second lines are trusted to this share. */
    private static final double AREA_TOLERANCE = 0.35;

    private static final double IRREGULAR_TOLERANCE = 0.8;
    /** The filter is far narrower than such lines: they are explained, not asked for. */
    private static final double WIDEST = 6;

    private static final double[] BURIALS = {0, 0.35, 0.7, 1.2};
    private static final double LEAST_MAIN = 3;
    private static final double LOSS_REACH = 26;

    final Atom atom;
    final double[] binding;
    /** Expected response for one unit of amount. */
    final double[] expected;

    private final double[] tolerance;
    private final double[] slack;
    private final double[] widths;
    /** Depth of the line's electrons beside those of the main line, in attenuation lengths at 1000 eV. */
    private final double[] lever;

    private LineScore(
            Atom atom,
            double[] binding,
            double[] expected,
            double[] tolerance,
            double[] slack,
            double[] widths,
            double[] lever) {
        this.atom = atom;
        this.binding = binding;
        this.expected = expected;
        this.tolerance = tolerance;
        this.slack = slack;
        this.widths = widths;
        this.lever = lever;
    }

    /** @param missing part of the score lost to lines weaker than expected */
    record Match(double score, double amount, double significance, double missing, double burial) {
        static final Match NONE = new Match(0, 0, 0, 0, 0);
    }

    static LineScore of(Atom atom, Templates templates, FilteredSurvey survey) {
        int n = 0;
        for (AtomLine line : atom.lines()) n += line.members().size();
        double[] binding = new double[n];
        double[] expected = new double[n];
        double[] tolerance = new double[n];
        double[] slack = new double[n];
        double[] widths = new double[n];
        double[] lever = new double[n];
        double photon = templates.grid.photonEv;
        double mainDepth = Emitter.depth(photon - atom.main().bindingEv());
        int k = 0;
        for (AtomLine line : atom.lines()) {
            AtomLine.Member previous = null;
            for (AtomLine.Member m : line.members()) {
                double area = templates.area(m.crossSection(), m.bindingEv());
                PeakShape shape = templates.shape(m);
                if (previous != null && m.bindingEv() - previous.bindingEv() < 0.8 * survey.fwhmEv) {
                    // The filter sees the pair as one.
                    expected[k - 1] += area * survey.gain(shape.fwhmEv);
                    continue;
                }
                if (area == 0) continue;
                binding[k] = m.bindingEv();
                expected[k] = area * survey.gain(shape.fwhmEv);
                tolerance[k] = line.main() ? 0.1 : line.regular() ? AREA_TOLERANCE : IRREGULAR_TOLERANCE;
                slack[k] = line.main() && previous == null ? 0 : Math.min(2, 0.6 + 0.5 * line.spreadEv());
                widths[k] = shape.fwhmEv;
                lever[k] = Emitter.depth(photon - m.bindingEv()) - mainDepth;
                k++;
                previous = m;
            }
        }
        return new LineScore(
                atom,
                java.util.Arrays.copyOf(binding, k),
                java.util.Arrays.copyOf(expected, k),
                tolerance,
                slack,
                widths,
                lever);
    }

    /** @param response filtered survey, less what other elements explain */
    Match at(double offset, FilteredSurvey survey, double[] response) {
        return at(offset, 0, survey, response);
    }

    /** The burial that makes the most of the lines, stronger ones than expected counting against it too. */
    Match deep(double offset, FilteredSurvey survey, double[] response) {
        Match best = Match.NONE;
        double most = Double.NEGATIVE_INFINITY;
        for (double burial : BURIALS) {
            Match match = at(offset, burial, survey, response);
            double value = match.score() - excess(offset, match, survey, response);
            if (value > most) {
                most = value;
                best = match;
            }
        }
        return best;
    }

    private double excess(double offset, Match match, FilteredSurvey survey, double[] response) {
        double sum = 0;
        for (int l = 1; l < binding.length; l++) {
            int i = survey.grid.at(binding[l] + offset);
            if (i <= 0 || i >= response.length || widths[l] > WIDEST) continue;
            double t = tolerance[l] * expected(l, match.burial()) * match.amount();
            double gap =
                    (response[i] - expected(l, match.burial()) * match.amount()) / Math.hypot(survey.deviation[i], t);
            if (gap > 0) sum += 0.5 * robust(gap);
        }
        return sum;
    }

    private double expected(int l, double burial) {
        return burial == 0 ? expected[l] : expected[l] * Math.exp(-burial * lever[l]);
    }

    private Match at(double offset, double burial, FilteredSurvey survey, double[] response) {
        SurveyGrid grid = survey.grid;
        int n = binding.length;
        double weighted = 0;
        double norm = 0;
        double[] seen = new double[n];
        double[] deviation = new double[n];
        boolean mainInside = n > 0 && grid.holds(binding[0] + offset, 1.5);
        for (int l = 0; l < n; l++) {
            double centre = binding[l] + offset;
            if (!grid.holds(centre, 1.5) || widths[l] > WIDEST) {
                deviation[l] = -1;
                continue;
            }
            int from = Math.max(0, grid.at(centre - Math.max(slack[l], 0.5 * grid.step)));
            int to = Math.min(grid.channels - 1, grid.at(centre + Math.max(slack[l], 0.5 * grid.step)));
            int best = from;
            for (int i = from; i <= to; i++) if (response[i] > response[best]) best = i;
            seen[l] = response[best];
            deviation[l] = survey.deviation[best];
        }
        if (mainInside) {
            if (seen[0] < LEAST_MAIN * deviation[0]) return Match.NONE;
            norm = 1;
            weighted = seen[0] / expected[0];
        }
        // Amount by weights that allow for the tolerance of the areas.
        double amount = norm > 0 ? weighted : 0;
        for (int round = 0; round < 2; round++) {
            double top = 0;
            double bottom = 0;
            for (int l = 0; l < n; l++) {
                if (deviation[l] < 0) continue;
                double t = tolerance[l] * expected(l, burial) * amount;
                double w = 1 / (deviation[l] * deviation[l] + t * t);
                top += w * expected(l, burial) * seen[l];
                bottom += w * expected(l, burial) * expected(l, burial);
            }
            if (!(bottom > 0)) return Match.NONE;
            amount = top / bottom;
            if (!(amount > 0)) return Match.NONE;
        }
        double score = 0;
        double largest = 0;
        double missing = 0;
        for (int l = 0; l < n; l++) {
            if (deviation[l] < 0) continue;
            double z = seen[l] / deviation[l];
            double t = tolerance[l] * expected(l, burial) * amount;
            double gap = (seen[l] - expected(l, burial) * amount) / Math.hypot(deviation[l], t);
            double told = Math.min(z, expected(l, burial) * amount / deviation[l]);
            // A line stronger than expected is something else besides, not evidence against.
            double lack = gap < 0 ? robust(-gap) : 0;
            score += robust(Math.max(0, told)) - lack;
            missing += lack;
            largest = Math.max(largest, told);
        }
        return new Match(score, amount, largest, missing, burial);
    }

    static double robust(double z) {
        return z < LINEAR_TO ? z * z : LINEAR_TO * LINEAR_TO * (1 + 2 * Math.log(z / LINEAR_TO));
    }

    /** Takes an amount of the element out of a response. */
    void explain(
            double offset,
            double amount,
            double burial,
            FilteredSurvey survey,
            List<XraySatellite> satellites,
            double[] response) {
        for (int l = 0; l < binding.length; l++) {
            double centre = binding[l] + offset;
            double half = 0.9 * Math.max(survey.fwhmEv, widths[l]) + slack[l];
            double top = 1.4 * amount * expected(l, burial);
            explain(centre, half, top, survey.grid, response);
            explainLosses(centre + half, 0.06 * top, survey.grid, response);
            for (XraySatellite s : satellites) {
                explain(centre - s.displacementEv(), half + 0.5, 1.3 * top * s.relativeHeight(), survey.grid, response);
            }
        }
    }

    /** Shake-up and plasmons follow a line this far. */
    private static void explainLosses(double from, double top, SurveyGrid grid, double[] response) {
        int to = Math.min(grid.channels, grid.at(from + LOSS_REACH));
        for (int i = grid.at(from); i < to; i++) response[i] -= Math.max(0, Math.min(response[i], top));
    }

    private static void explain(double centre, double half, double top, SurveyGrid grid, double[] response) {
        int to = Math.min(grid.channels, grid.at(centre + half));
        for (int i = grid.at(centre - half); i < to; i++) {
            double t = (grid.energy[i] - centre) / half;
            response[i] -= Math.max(0, Math.min(response[i], top * (1 - t * t * t * t)));
        }
    }
}
