package spotline.reference;

import java.util.OptionalDouble;

/**
 * A satellite of an unmonochromated source: every photoelectron line repeats at lower binding energy.
 *
 * @param xraySource "Al Ka"
 * @param line emission line: "K-alpha3"
 * @param displacementEv towards lower binding energy, eV
 * @param relativeHeight fraction of the K-alpha1,2 peak
 * @param otherDisplacementEv what the other commonly printed set says, eV; empty where only one set has the line
 * @param otherRelativeHeight likewise
 */
public record XraySatellite(
        String xraySource,
        String line,
        double displacementEv,
        double relativeHeight,
        OptionalDouble otherDisplacementEv,
        OptionalDouble otherRelativeHeight,
        String source) {}
