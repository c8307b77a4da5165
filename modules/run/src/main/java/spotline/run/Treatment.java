package spotline.run;

import com.fasterxml.jackson.databind.JsonNode;
import spotline.analysis.charge.ChargeSettings;
import spotline.analysis.identify.IdentifySettings;
import spotline.analysis.intensity.IntensitySettings;
import spotline.analysis.quantify.FactorSettings;

/**
 * The full settings of every step, resolved: no step sees a missing one.
 *
 * @param factors of computed sensitivity factors
 * @param json the same as data, for the record
 */
public record Treatment(
        IdentifySettings identify,
        ChargeSettings charge,
        IntensitySettings narrow,
        IntensitySettings survey,
        FactorSettings factors,
        PreparationSettings prepare,
        PeakFitSettings peakFit,
        QuantifySettings quantify,
        Limits limits,
        JsonNode json) {}
