package spotline.analysis.peakfit;

import java.util.List;
import spotline.reference.ReferenceData;
import spotline.reference.XraySource;

/**
 * A weaker line of an unmonochromated X-ray source: every component repeats at lower binding energy, in its own shape.
 *
 * @param displacementEv towards lower binding energy, eV
 * @param relativeArea of the component's area
 */
public record Satellite(double displacementEv, double relativeArea) {
    public Satellite {
        if (!Double.isFinite(displacementEv) || !(relativeArea >= 0) || Double.isInfinite(relativeArea)) {
            throw new IllegalArgumentException("a satellite needs a finite displacement and an area of 0 or more, was "
                    + displacementEv + " eV, " + relativeArea);
        }
    }

    /** Those of a source; none where it is monochromated or none are listed. */
    public static List<Satellite> of(XraySource source, ReferenceData reference) {
        return reference.satellites(source).stream()
                .map(s -> new Satellite(s.displacementEv(), s.relativeHeight()))
                .toList();
    }
}
