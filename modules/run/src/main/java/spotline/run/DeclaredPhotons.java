package spotline.run;

import java.util.OptionalDouble;
import spotline.holder.ExcitationSource;
import spotline.holder.Instrument;
import spotline.reference.ReferenceData;
import spotline.reference.XraySource;

/**
 * The excitation that the holder run declares.
 *
 * @param photonEnergyEv as declared, or the declared source's own, eV
 */
record DeclaredPhotons(OptionalDouble photonEnergyEv, boolean monochromated) {
    static DeclaredPhotons of(Instrument.DeclaredExcitation excitation, ReferenceData reference) {
        boolean mono = excitation.monochromated().orElse(false);
        OptionalDouble energy = excitation.photonEnergyEv();
        if (energy.isEmpty() && excitation.source() != ExcitationSource.UNKNOWN) {
            energy = reference
                    .source(excitation.source().word(), mono)
                    .or(() -> reference.source(excitation.source().word(), false))
                    .map(XraySource::photonEnergyEv)
                    .map(OptionalDouble::of)
                    .orElse(OptionalDouble.empty());
        }
        return new DeclaredPhotons(energy, mono);
    }
}
