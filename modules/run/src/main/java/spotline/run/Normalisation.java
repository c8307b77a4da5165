package spotline.run;

import spotline.analysis.intensity.Intensity;
import spotline.core.Estimate;

/** What an intensity is divided by before it meets a sensitivity factor: collection time and, once, transmission. */
final class Normalisation {
    private Normalisation() {}

    /** The whole line's intensity over time and, where the factors want it so, over transmission. */
    static Estimate of(LinkedSpectrum spectrum, Intensity intensity, boolean overTransmission) {
        return intensity.area().times(intensity.wholePerWindow()).times(scale(spectrum, intensity, overTransmission));
    }

    static double scale(LinkedSpectrum spectrum, Intensity intensity, boolean overTransmission) {
        double kinetic = spectrum.scan().photonEnergyEv() - intensity.peakEv();
        double response = overTransmission ? spectrum.transmission().at(kinetic) : 1;
        return 1 / (spectrum.scan().secondsPerChannel().orElse(1) * response);
    }
}
