package spotline.report.figure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import spotline.analysis.identify.ElementSeen;
import spotline.analysis.identify.Identification;
import spotline.analysis.identify.LineSeen;
import spotline.analysis.identify.Verdict;
import spotline.report.text.Shown;

/**
 * Where the names of lines stand in a survey so that none covers another: the strongest line is placed first, a weaker
 * one beside it as far as it may move, and one without room keeps only its mark.
 */
final class LineLabels {
    /** Upright labels need this much from centre to centre, pixels. */
    private static final double PITCH = 13;
    /** A label may stand this far beside its line, pixels. */
    private static final double LARGEST_MOVE = 26;
    /** Names start this far from the ends of the axis, pixels. */
    private static final double EDGE = 7;

    /**
     * @param text empty when there was no room for it
     * @param energyEv of the line
     * @param placedEv where the text stands
     */
    record Label(String text, double energyEv, double placedEv) {}

    private record Line(String text, double energyEv, double significance) {}

    private LineLabels() {}

    static List<Label> of(Identification identification, double lowEv, double highEv, double evPerPixel) {
        List<Label> labels = new ArrayList<>();
        List<Double> taken = new ArrayList<>();
        for (Line line : lines(identification, lowEv, highEv)) {
            double placed =
                    free(line.energyEv(), taken, lowEv + EDGE * evPerPixel, highEv - EDGE * evPerPixel, evPerPixel);
            if (Double.isNaN(placed)) {
                labels.add(new Label("", line.energyEv(), line.energyEv()));
            } else {
                taken.add(placed);
                labels.add(new Label(line.text(), line.energyEv(), placed));
            }
        }
        return labels;
    }

    /** Strongest first; the members of a doublet under one name, at the stronger one. */
    private static List<Line> lines(Identification identification, double lowEv, double highEv) {
        Map<String, Line> strongest = new LinkedHashMap<>();
        for (ElementSeen element : identification.elements()) {
            for (LineSeen seen : element.lines()) {
                if (seen.energyEv() < lowEv || seen.energyEv() > highEv) continue;
                String doubt = element.verdict() == Verdict.PRESENT ? "" : "?";
                String name = Shown.label(seen.line().replaceFirst("([spdf])\\d/2$", "$1")) + doubt;
                strongest.merge(
                        name,
                        new Line(name, seen.energyEv(), seen.significance()),
                        (a, b) -> b.significance() > a.significance() ? b : a);
            }
        }
        return strongest.values().stream()
                .sorted(Comparator.comparingDouble(Line::significance)
                        .reversed()
                        .thenComparing(Line::text))
                .toList();
    }

    /** Not a number when no place is free. */
    private static double free(double wanted, List<Double> taken, double lowest, double highest, double evPerPixel) {
        for (double move = 0; move <= LARGEST_MOVE; move++) {
            for (int side = -1; side <= 1; side += 2) {
                double at = wanted + side * move * evPerPixel;
                boolean clear = at >= lowest
                        && at <= highest
                        && taken.stream().allMatch(other -> Math.abs(other - at) >= PITCH * evPerPixel);
                if (clear) return at;
            }
        }
        return Double.NaN;
    }
}
