package spotline.formats.iso14976;

import java.util.List;
import java.util.Optional;

/**
 * Items 21 to 28: the analyser and how it looks at the sample.
 *
 * @param mode as the file gives it; the standard's words are FAT, FRR, {@code constant delta m} and {@code constant
 *     m/delta m}
 * @param passEnergyOrRatio pass energy (FAT, eV), retard ratio (FRR) or mass resolution
 * @param differentialWidth eV peak to peak; present in differential Auger blocks
 * @param workFunction eV; or acceptance energy of an atom or ion
 * @param targetBias V
 * @param analysisWidthX micrometre, in the plane normal to the take-off direction
 * @param takeOffPolar degree from upward z
 * @param takeOffAzimuth degree clockwise from y
 */
public record AnalyserSettings(
        String mode,
        Real passEnergyOrRatio,
        Optional<Real> differentialWidth,
        Real magnification,
        Real workFunction,
        Real targetBias,
        Real analysisWidthX,
        Real analysisWidthY,
        Real takeOffPolar,
        Real takeOffAzimuth) {
    static final List<String> MODES = List.of("FAT", "FRR", "constant delta m", "constant m/delta m");

    public static final AnalyserSettings UNKNOWN = new AnalyserSettings(
            "FAT",
            Real.UNKNOWN,
            Optional.empty(),
            Real.UNKNOWN,
            Real.UNKNOWN,
            Real.UNKNOWN,
            Real.UNKNOWN,
            Real.UNKNOWN,
            Real.UNKNOWN,
            Real.UNKNOWN);

    public AnalyserSettings {
        Text.check("analyser mode", mode);
    }

    /** Constant pass energy. */
    public static AnalyserSettings constantPassEnergy(double passEnergyEv) {
        return new AnalyserSettings(
                "FAT",
                Real.of(passEnergyEv),
                Optional.empty(),
                Real.UNKNOWN,
                Real.UNKNOWN,
                Real.UNKNOWN,
                Real.UNKNOWN,
                Real.UNKNOWN,
                Real.UNKNOWN,
                Real.UNKNOWN);
    }
}
