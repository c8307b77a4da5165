package spotline.run.findings;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.OptionalDouble;
import spotline.run.RunView;
import spotline.run.SpotView;

/** The thresholds in force at a spot. */
final class Limits {
    private final JsonNode treatment;
    private final JsonNode planCheck;

    private Limits(JsonNode treatment, JsonNode planCheck) {
        this.treatment = treatment;
        this.planCheck = planCheck;
    }

    static Limits at(RunView run, SpotView spot) {
        return new Limits(spot.treatment().json(), run.plan().file().planCheck());
    }

    double of(Limit limit) {
        if (limit.setting().isEmpty()) return limit.value();
        JsonNode set = (limit.inPlan() ? planCheck : treatment).at(limit.pointer());
        return set.isNumber() ? set.doubleValue() : limit.value();
    }

    /** One that a laboratory has to state; empty where it did not. */
    OptionalDouble stated(Limit limit) {
        double value = of(limit);
        return Double.isNaN(value) ? OptionalDouble.empty() : OptionalDouble.of(value);
    }
}
