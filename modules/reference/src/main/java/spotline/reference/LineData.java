package spotline.reference;

import java.util.List;
import java.util.OptionalDouble;

/**
 * A photoelectron line as one X-ray source excites it.
 *
 * @param line the whole nl
 * @param members its components, j = l + 1/2 first; one for an s line
 * @param energy binding energy of the component with j = l + 1/2
 * @param kineticEv photon energy less binding energy, eV, on the scale of the Fermi level
 * @param relativeCrossSection of the whole nl, relative to C 1s at the same photon energy
 * @param naturalWidthEv FWHM of the component with j = l + 1/2, eV; empty where no table has it
 * @param nearThreshold the photon energy is too close to the edge for the cross section to be trusted
 */
public record LineData(
        Line line,
        List<Line> members,
        LevelEnergy energy,
        double kineticEv,
        double relativeCrossSection,
        OptionalDouble naturalWidthEv,
        boolean nearThreshold) {
    public LineData {
        members = List.copyOf(members);
    }
}
