package spotline.formats.iso14976;

import java.util.Optional;

/**
 * Items 12 to 20: what excites the sample.
 *
 * @param characteristicEnergy eV
 * @param strength W for X-rays, nA for charged particles, equivalent current for neutrals
 * @param beamWidthX micrometre, at the sample in the plane normal to the beam
 * @param polarAngle of incidence, degree from upward z
 * @param azimuth degree clockwise from y
 */
public record AnalysisSource(
        String label,
        Optional<ProbeParticle> particle,
        Real characteristicEnergy,
        Real strength,
        Real beamWidthX,
        Real beamWidthY,
        Optional<FieldOfView> fieldOfView,
        Optional<Linescan> linescan,
        Real polarAngle,
        Real azimuth) {
    public static final AnalysisSource UNKNOWN = new AnalysisSource(
            "",
            Optional.empty(),
            Real.UNKNOWN,
            Real.UNKNOWN,
            Real.UNKNOWN,
            Real.UNKNOWN,
            Optional.empty(),
            Optional.empty(),
            Real.UNKNOWN,
            Real.UNKNOWN);

    public AnalysisSource {
        Text.check("analysis source label", label);
    }
}
