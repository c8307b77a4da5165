package spotline.analysis.intensity;

import spotline.reference.Line;

/**
 * A line to be measured, placed on a spectrum's measured scale.
 *
 * @param line what the area stands for: a whole doublet or one member
 * @param lowEv lowest measured binding energy at which any state of the line may have its (first) peak
 * @param highEv highest
 * @param expectedEv where the first peak is expected
 * @param splittingEv from the first peak to the doublet partner inside the area; 0 for a single line
 */
public record LineTarget(Line line, double lowEv, double highEv, double expectedEv, double splittingEv) {
    public LineTarget {
        if (!(lowEv <= expectedEv && expectedEv <= highEv)) {
            throw new IllegalArgumentException(
                    line + " is expected at " + expectedEv + " eV, outside " + lowEv + " to " + highEv + " eV");
        }
        if (splittingEv < 0) throw new IllegalArgumentException("splitting must not be below 0 eV, was " + splittingEv);
    }
}
