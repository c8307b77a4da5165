package spotline.analysis.calibration;

import java.util.Optional;
import java.util.OptionalDouble;
import spotline.core.Estimate;

/**
 * A reference line where it was measured.
 *
 * @param line {@code "Au 4f7/2"}
 * @param spectra it was measured in, one a repeat
 * @param measuredEv mean binding energy of the maximum, eV
 * @param repeatabilityEv standard deviation of one measurement, eV; empty with fewer than two
 * @param reference energy of the line with its standard uncertainty, eV
 * @param use what the line serves for
 * @param fwhmEv eV; empty where the scan does not hold both half heights
 * @param intensity net area above a straight line, counts eV per second of a channel; empty where the time is not known
 */
public record MeasuredReference(
        String line,
        String spectra,
        Estimate measuredEv,
        OptionalDouble repeatabilityEv,
        Estimate reference,
        Use use,
        OptionalDouble fwhmEv,
        Optional<Estimate> intensity) {
    /** What a reference line serves for. */
    public enum Use {
        /** Fixes the low end of the scale. */
        LOW,
        /** Fixes the high end. */
        HIGH,
        /** Tells whether the scale is linear between them. */
        CHECK
    }

    /** Measured less reference, eV. */
    public Estimate deviationEv() {
        return measuredEv.minus(reference);
    }
}
