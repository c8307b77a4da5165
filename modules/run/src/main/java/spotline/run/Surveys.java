package spotline.run;

import spotline.spectra.Spectrum;
import spotline.spectra.Transmission;

/** What a spectrum says of itself, for treatments of one file without a holder run. */
public final class Surveys {
    private Surveys() {}

    /** The transmission recorded beside the intensity, else flat. Errors: {@link IllegalArgumentException} unless above 0. */
    public static Transmission recordedTransmission(Spectrum spectrum, double photonEnergyEv) {
        return TransmissionSource.RECORDED_OR_FLAT.of(spectrum, photonEnergyEv);
    }
}
