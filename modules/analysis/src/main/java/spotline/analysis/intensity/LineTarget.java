package spotline.analysis.intensity;

import java.util.List;
import java.util.Optional;
import spotline.reference.Line;

/**
 * A line to be measured, placed on a spectrum's measured scale.
 *
 * @param line what the area stands for: a whole doublet or one member
 * @param lowEv lowest measured binding energy at which any state of the line may have its (first) peak
 * @param highEv highest
 * @param expectedEv where the first peak is expected
 * @param splittingEv from the first peak to the doublet partner inside the area; 0 for a single line
 * @param foreignEv where lines of other elements known to be there are expected: a peak there is not of this line
 * @param widths natural widths, where they are known
 */
public record LineTarget(
        Line line,
        double lowEv,
        double highEv,
        double expectedEv,
        double splittingEv,
        List<Double> foreignEv,
        Optional<Widths> widths) {
    /**
     * Lorentzian widths of a line's members.
     *
     * @param firstEv full width at half maximum of the first peak, eV
     * @param partnerEv of the doublet partner inside the area, eV; that of the first peak where there is none
     * @param partnerRatio area of the partner over that of the first peak; 0 where there is none
     */
    public record Widths(double firstEv, double partnerEv, double partnerRatio) {
        public Widths {
            if (!(firstEv >= 0) || !(partnerEv >= 0) || !(partnerRatio >= 0)) {
                throw new IllegalArgumentException(
                        "widths and ratio must be 0 or more, were " + firstEv + ", " + partnerEv + ", " + partnerRatio);
            }
        }
    }

    /** How closely tabulated and measured positions of another element's line agree, eV. */
    private static final double FOREIGN_REACH = 2;

    public LineTarget {
        foreignEv = List.copyOf(foreignEv);
        if (!(lowEv <= expectedEv && expectedEv <= highEv)) {
            throw new IllegalArgumentException(
                    line + " is expected at " + expectedEv + " eV, outside " + lowEv + " to " + highEv + " eV");
        }
        if (splittingEv < 0) throw new IllegalArgumentException("splitting must not be below 0 eV, was " + splittingEv);
    }

    /** A target whose natural widths nobody knows. */
    public LineTarget(
            Line line, double lowEv, double highEv, double expectedEv, double splittingEv, List<Double> foreignEv) {
        this(line, lowEv, highEv, expectedEv, splittingEv, foreignEv, Optional.empty());
    }

    /** Share that the first peak has of a whole doublet, by the statistical weights of its members. */
    double firstMemberShare() {
        int l = line.orbital().l();
        return (l + 1.0) / (2 * l + 1);
    }

    /** Whether a peak is better explained by another element's line than by this one. */
    boolean foreign(double energyEv) {
        for (double f : foreignEv) {
            if (Math.abs(energyEv - f) < FOREIGN_REACH && Math.abs(energyEv - expectedEv) > FOREIGN_REACH) return true;
        }
        return false;
    }
}
