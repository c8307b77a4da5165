package spotline.analysis.identify;

import java.util.List;

/**
 * An element that a survey shows.
 *
 * @param significance of its strongest line, in standard deviations of counting and of what the model may be wrong by
 */
public record ElementSeen(
        String element, Verdict verdict, List<LineSeen> lines, double significance, Evidence evidence) {
    public ElementSeen {
        lines = List.copyOf(lines);
    }

    /** An element without a record of the evidence. */
    public ElementSeen(String element, Verdict verdict, List<LineSeen> lines, double significance) {
        this(element, verdict, lines, significance, Evidence.NONE);
    }
}
