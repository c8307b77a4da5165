package spotline.run;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.analysis.charge.ChargeLimits;
import spotline.analysis.charge.ChargeMethod;
import spotline.analysis.charge.ChargeSettings;
import spotline.analysis.identify.IdentifySettings;
import spotline.analysis.intensity.DetectionRule;
import spotline.analysis.intensity.IntensitySettings;

/** Turns a merged treatment, already valid against its schema, into settings. */
final class TreatmentBinding {
    private TreatmentBinding() {}

    /** Errors: {@link IllegalArgumentException} that names every setting out of its range. */
    static Treatment bind(JsonNode json) {
        JsonNode identify = json.path("identify");
        JsonNode quantify = json.path("quantify");
        JsonNode limits = json.path("limits");
        return new Treatment(
                new IdentifySettings(
                        number(identify, "peakFwhmEv"),
                        number(identify, "minimumSignificance"),
                        number(identify, "lowestShiftEv"),
                        number(identify, "highestShiftEv"),
                        number(identify, "toleranceEv")),
                charge(json.path("charge"), number(limits, "spotAgreementEv")),
                intensity(json.path("narrow")),
                intensity(json.path("survey")),
                QuantifyBinding.factors(quantify),
                QuantifyBinding.prepare(json.path("prepare")),
                PeakFitBinding.bind(json.path("peakFit")),
                QuantifyBinding.quantify(quantify),
                new Limits(
                        number(limits, "photonEnergyAgreementEv"),
                        number(limits, "surveySpanEv"),
                        number(limits, "surveyNarrowRelative"),
                        number(limits, "spotAgreementEv")),
                LineSettings.of(json.path("lines")),
                json);
    }

    private static ChargeSettings charge(JsonNode json, double siblingSpreadEv) {
        OptionalDouble phi = optional(json, "workFunctionEv");
        OptionalDouble check = optional(json, "checkEv");
        OptionalDouble uncharged = optional(json, "unchargedFwhmEv");
        return new ChargeSettings(
                ChargeMethod.of(json.path("method").asText()).orElseThrow(),
                optional(json, "referenceEv"),
                optional(json, "referenceUncertaintyEv"),
                json.path("referenceLine").asText(""),
                optional(json, "shiftEv"),
                phi.isPresent()
                        ? Optional.of(new ChargeSettings.WorkFunction(
                                phi.getAsDouble(),
                                optional(json, "workFunctionUncertaintyEv").orElse(Double.NaN)))
                        : Optional.empty(),
                optional(json, "temperatureK").orElse(ChargeSettings.ROOM_TEMPERATURE_K),
                check.isPresent()
                        ? Optional.of(new ChargeSettings.SecondReference(
                                json.path("checkLine").asText(""),
                                check.getAsDouble(),
                                optional(json, "checkUncertaintyEv").orElse(Double.NaN)))
                        : Optional.empty(),
                uncharged.isPresent()
                        ? Optional.of(new ChargeSettings.UnchargedWidth(
                                uncharged.getAsDouble(),
                                optional(json, "unchargedFwhmUncertaintyEv").orElse(Double.NaN)))
                        : Optional.empty(),
                json.path("interpolateDrift").asBoolean(false),
                json.path("reason").asText(""),
                new ChargeLimits(
                        number(json, "conductorToleranceEv"),
                        number(json, "fermiEdgeToleranceEv"),
                        number(json, "largestMeasurementUEv"),
                        number(json, "widestReferenceFwhmEv"),
                        number(json, "largestWidthExcessEv"),
                        number(json, "largestDriftEv"),
                        number(json, "largestReducedChiSquare"),
                        number(json, "largestMisfit"),
                        number(json, "leastCarbonAtPercent"),
                        siblingSpreadEv));
    }

    private static IntensitySettings intensity(JsonNode json) {
        return new IntensitySettings(
                BackgroundBinding.of(json.path("background")),
                BackgroundBinding.of(json.path("fallback")),
                DetectionRule.of(json.path("detection").asText())
                        .orElseThrow(() -> new IllegalArgumentException("the treatment has no rule \"detection\"")),
                number(json, "searchFwhmEv"),
                number(json, "minimumSignificance"),
                number(json, "lowMarginFwhm"),
                number(json, "highMarginFwhm"),
                number(json, "smallestMarginEv"),
                number(json, "stateReachEv"));
    }

    private static double number(JsonNode json, String field) {
        JsonNode value = json.path(field);
        if (!value.isNumber()) throw new IllegalArgumentException("the treatment has no number \"" + field + "\"");
        return value.doubleValue();
    }

    private static OptionalDouble optional(JsonNode json, String field) {
        JsonNode value = json.path(field);
        return value.isNumber() ? OptionalDouble.of(value.doubleValue()) : OptionalDouble.empty();
    }
}
