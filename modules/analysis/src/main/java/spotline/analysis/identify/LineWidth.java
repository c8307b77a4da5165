package spotline.analysis.identify;

import java.util.ArrayList;
import java.util.List;

/**
 * The Gaussian width of a survey's lines, from how its strongest ones answer to two filters.
 *
 * <p>Units: eV, full width. Errors: a usual width where no line stands out.
 *
 * <p>Source: the gain of {@link FilteredSurvey}, solved for the width; derived, closed form.
 */
final class LineWidth {
    private static final double USUAL = 2;
    private static final double NARROW = 1.6;
    private static final double WIDE = 3.2;
    private static final double NARROWEST = 0.8;
    /** Wider lines are doublets or several states, which the model brings along. */
    private static final double WIDEST = 3.2;

    private static final double CLEAR = 12;
    private static final int MOST = 8;

    private LineWidth() {}

    static double of(SurveyGrid grid) {
        FilteredSurvey narrow = new FilteredSurvey(grid, NARROW);
        FilteredSurvey wide = new FilteredSurvey(grid, WIDE);
        List<Integer> tops = new ArrayList<>();
        for (int i = 2; i < grid.channels - 2; i++) {
            if (wide.response[i] < CLEAR * wide.deviation[i]) continue;
            if (wide.response[i] < wide.response[i - 1] || wide.response[i] <= wide.response[i + 1]) continue;
            tops.add(i);
        }
        tops.sort((a, b) -> Double.compare(wide.response[b] / wide.deviation[b], wide.response[a] / wide.deviation[a]));
        List<Double> widths = new ArrayList<>();
        for (int i : tops.subList(0, Math.min(MOST, tops.size()))) {
            double best = narrow.response[i];
            for (int k = i - 1; k <= i + 1; k++) best = Math.max(best, narrow.response[k]);
            double q = Math.pow(Math.max(1e-9, best / wide.response[i]), 2.0 / 3);
            double n2 = narrow.fwhmEv * narrow.fwhmEv;
            double w2 = wide.fwhmEv * wide.fwhmEv;
            double squared = n2 * w2 * (1 - q) / (q * w2 - n2);
            if (squared > 0 && squared < 40) widths.add(Math.sqrt(squared));
        }
        if (widths.isEmpty()) return USUAL;
        widths.sort(Double::compare);
        // Chemical states and doublets only ever widen a line.
        double low = widths.get((widths.size() - 1) / 3);
        return Math.max(NARROWEST, Math.min(WIDEST, low));
    }
}
