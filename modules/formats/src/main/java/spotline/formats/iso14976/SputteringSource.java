package spotline.formats.iso14976;

import java.util.List;

/**
 * Item 37: the sputtering source of a depth profile.
 *
 * @param energy eV
 * @param beamCurrent nA
 * @param widthX micrometre
 * @param polarAngle of incidence, degree from upward z
 * @param azimuth degree clockwise from y
 * @param mode as the file gives it; the standard's words are {@code continuous} and {@code cyclic}
 */
public record SputteringSource(
        Real energy, Real beamCurrent, Real widthX, Real widthY, Real polarAngle, Real azimuth, String mode) {
    static final List<String> MODES = List.of("continuous", "cyclic");

    static final SputteringSource UNKNOWN = new SputteringSource(
            Real.UNKNOWN, Real.UNKNOWN, Real.UNKNOWN, Real.UNKNOWN, Real.UNKNOWN, Real.UNKNOWN, "continuous");

    public SputteringSource {
        Text.check("sputtering mode", mode);
    }
}
