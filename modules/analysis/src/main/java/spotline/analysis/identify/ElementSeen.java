package spotline.analysis.identify;

import java.util.List;

/**
 * An element that a survey shows.
 *
 * @param significance of its strongest line
 */
public record ElementSeen(String element, Verdict verdict, List<LineSeen> lines, double significance) {
    public ElementSeen {
        lines = List.copyOf(lines);
    }
}
