package spotline.analysis.identify;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;

/**
 * Which shift, and with it which elements, make the most of the lines of a survey: for every shift the elements that its
 * states allow are taken one by one, the one that gains most first, each explaining its lines to the others.
 */
final class ShiftSearch {
    static final double STEP = 0.5;
    /** Gain an element must bring to be taken. */
    private static final double LEAST_GAIN = 30;

    private static final double RARE_PENALTY = 60;
    private static final int MOST_ELEMENTS = 14;
    private static final double DECLARED_BONUS = 8;
    /** Hydrocarbon lies on nearly everything that has met air. */
    private static final double CARBON_BONUS = 45;

    private static final double LEAST_TOP = 4;
    /** What an explanation by one more element costs. */
    private static final double ELEMENT_COST = 60;
    /** Auger groups reach this far to either side of a branch, in its widths. */
    private static final double AUGER_REACH = 1.2;

    private final SurveyGrid grid;
    private final FilteredSurvey survey;
    private final Templates templates;
    private final List<LineScore> scores = new ArrayList<>();
    private final double[][] first;
    private final double lowestOffset;
    private final Set<String> declared;
    /** Channels where a line stands out. */
    private final List<Integer> tops = new ArrayList<>();

    /** What a shift explains. */
    record Found(double shiftEv, double score, List<Member> members, double explained) {}

    ShiftSearch(
            FilteredSurvey survey,
            Templates templates,
            List<Atom> atoms,
            Set<String> declared,
            double low,
            double high) {
        this.grid = survey.grid;
        this.survey = survey;
        this.templates = templates;
        this.declared = declared;
        for (Atom atom : atoms) scores.add(LineScore.of(atom, templates, survey));
        for (int i = 1; i + 1 < grid.channels; i++) {
            double r = survey.response[i];
            if (r < LEAST_TOP * survey.deviation[i]) continue;
            if (r >= survey.response[i - 1] && r > survey.response[i + 1]) tops.add(i);
        }
        // Offsets of every atom: its states less the shift.
        lowestOffset = STEP * Math.floor((-high - 5) / STEP);
        int offsets = (int) Math.ceil((-low + 12 - lowestOffset) / STEP) + 1;
        first = new double[atoms.size()][offsets];
        for (int a = 0; a < atoms.size(); a++) {
            for (int u = 0; u < offsets; u++) {
                first[a][u] = scores.get(a)
                        .at(lowestOffset + u * STEP, survey, survey.response)
                        .score();
            }
        }
    }

    /** Shifts that explain most, best first, no two within an eV of each other. */
    List<Found> best(double low, double high, int most) {
        List<Found> coarse = new ArrayList<>();
        for (double shift = STEP * Math.ceil(low / STEP); shift <= high + 1e-9; shift += STEP) coarse.add(at(shift));
        coarse.sort(Comparator.comparingDouble(Found::score).reversed());
        List<Found> best = new ArrayList<>();
        for (Found found : coarse) {
            if (best.stream().anyMatch(b -> Math.abs(b.shiftEv() - found.shiftEv()) < 1.1)) continue;
            best.add(found);
            if (best.size() == most) break;
        }
        return best;
    }

    Found at(double shift) {
        double[] response = survey.response.clone();
        boolean[] taken = new boolean[scores.size()];
        List<Integer> open = new ArrayList<>();
        for (int a = 0; a < scores.size(); a++) if (bestFirst(a, shift) > LEAST_GAIN) open.add(a);
        List<Member> members = new ArrayList<>();
        double spent = 0.15 * Math.abs(shift);
        while (members.size() < MOST_ELEMENTS) {
            int best = -1;
            double bestGain = LEAST_GAIN;
            double bestOffset = 0;
            double bestCost = 0;
            LineScore.Match bestMatch = LineScore.Match.NONE;
            for (int a : open) {
                if (taken[a]) continue;
                Atom atom = scores.get(a).atom;
                double penalty =
                        (atom.rare() ? RARE_PENALTY : 0) - (declared.contains(atom.symbol()) ? DECLARED_BONUS : 0);
                // What others explain can only lessen a gain.
                if (bestFirst(a, shift) - penalty <= bestGain) continue;
                for (int u = firstOffset(atom, shift); u <= lastOffset(atom, shift); u++) {
                    double offset = lowestOffset + u * STEP;
                    double cost = penalty + cost(atom, offset + shift);
                    if (first[a][u] - cost <= bestGain) continue;
                    LineScore.Match match = scores.get(a).at(offset, survey, response);
                    double gain = match.score() < LEAST_GAIN / 2 ? 0 : match.score() - cost;
                    if (gain > bestGain) {
                        bestGain = gain;
                        best = a;
                        bestOffset = offset;
                        bestMatch = match;
                        bestCost = cost;
                    }
                }
            }
            if (best < 0) break;
            taken[best] = true;
            LineScore score = scores.get(best);
            bestMatch = score.deep(bestOffset, survey, response);
            spent += ELEMENT_COST + bestMatch.missing() + bestCost;
            members.add(new Member(
                    new Emitter(score.atom, bestMatch.burial()),
                    bestOffset,
                    bestMatch.amount(),
                    bestMatch.significance()));
            score.explain(bestOffset, bestMatch.amount(), bestMatch.burial(), survey, templates.satellites(), response);
            explainAuger(new Emitter(score.atom, bestMatch.burial()), bestOffset, bestMatch.amount(), response);
        }
        double explained = explained(response);
        return new Found(shift, explained - spent, members, explained);
    }

    /** How much stands out of the survey in all, as a gain in likelihood. */
    double structure() {
        double sum = 0;
        for (int i : tops) sum += LineScore.robust(survey.response[i] / survey.deviation[i]);
        return sum;
    }

    double explainedShare(Found found) {
        double all = structure();
        return all > 0 ? Math.max(0, found.score()) / all : 0;
    }

    /** What the lines of the survey stood for, less what of them is left. */
    private double explained(double[] left) {
        double sum = 0;
        for (int i : tops) {
            double remains = 0;
            for (int k = Math.max(0, i - 1); k <= Math.min(grid.channels - 1, i + 1); k++) {
                remains = Math.max(remains, left[k] / survey.deviation[k]);
            }
            double was = survey.response[i] / survey.deviation[i];
            sum += LineScore.robust(was) - LineScore.robust(Math.min(was, remains));
        }
        return sum;
    }

    private int firstOffset(Atom atom, double shift) {
        return Math.max(0, (int) Math.ceil((atom.lowestEv() - shift - lowestOffset) / STEP - 1e-9));
    }

    private int lastOffset(Atom atom, double shift) {
        return Math.min(first[0].length - 1, (int) Math.floor((atom.highestEv() - shift - lowestOffset) / STEP + 1e-9));
    }

    private double bestFirst(int a, double shift) {
        double best = 0;
        Atom atom = scores.get(a).atom;
        for (int u = firstOffset(atom, shift); u <= lastOffset(atom, shift); u++) best = Math.max(best, first[a][u]);
        return best;
    }

    /** How unlikely a chemical shift is, in the units of a gain. */
    private static double cost(Atom atom, double chemicalShift) {
        if (atom.symbol().equals("C")) {
            double off = Math.abs(chemicalShift + 0.2);
            return Math.min(25, -CARBON_BONUS + 50 * Math.max(0, off - 0.35));
        }
        double off = Math.max(0, Math.max(-chemicalShift, chemicalShift - 2));
        return Math.min(6, 0.8 * off);
    }

    /** Broad branches bring narrower structure: what stands there is no line to build on. */
    private void explainAuger(Emitter emitter, double offset, double amount, double[] response) {
        for (AugerBranch b : emitter.atom().auger()) {
            double binding = grid.photonEv - b.kineticEv();
            double width = Math.hypot(templates.gaussianEv, b.widthEv());
            double top = 1.5 * amount * templates.area(emitter, b) * survey.gain(0.6 * width);
            double reach = AUGER_REACH * width + 2;
            int to = Math.min(grid.channels, grid.at(binding + offset + reach + 3));
            for (int i = grid.at(binding + offset - reach); i < to; i++) {
                response[i] -= Math.max(0, Math.min(response[i], top));
            }
        }
    }
}
