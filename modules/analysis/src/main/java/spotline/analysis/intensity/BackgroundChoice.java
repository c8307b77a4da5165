package spotline.analysis.intensity;

import spotline.analysis.background.Subtraction;
import spotline.core.Estimate;
import spotline.core.Outcome;

/**
 * What the choice of a background adds to an area's uncertainty: the difference to the treatment's other background in the
 * same window, as the whole width of a rectangular distribution. Half of its variance is common to all lines, because
 * backgrounds take alike much from each and that cancels in atomic fractions; half is the line's own.
 *
 * <p>Source: GUM (JCGM 100:2008) 4.3.7; the halving is common practice, no source.
 */
final class BackgroundChoice {
    private BackgroundChoice() {}

    /** @param factor on the area, to which the contribution is added */
    static Estimate with(Estimate factor, Subtraction taken, Outcome<Subtraction> other, String key) {
        double area = taken.netArea().value();
        if (other.result().isEmpty() || !(area > 0)) return factor;
        double relative = (other.result().get().netArea().value() - area) / area;
        double part = factor.value() * relative / Math.sqrt(24);
        return factor.with("background/choice", part).with("background/" + key, part);
    }
}
