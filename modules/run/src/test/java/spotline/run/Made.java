package spotline.run;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.analysis.charge.ChargeMethod;
import spotline.analysis.charge.ChargeReference;
import spotline.analysis.charge.ChargeVerdict;
import spotline.analysis.quantify.Basis;
import spotline.analysis.quantify.Quantified;
import spotline.core.Estimate;
import spotline.core.ReadException;
import spotline.holder.HolderPlan;
import spotline.holder.HolderRunReader;

/** Plans and results made up for tests. */
final class Made {
    private Made() {}

    /** Spots of one sample, or of as many as there are names. */
    static HolderPlan plan(String... sampleOfSpot) throws ReadException {
        StringBuilder spots = new StringBuilder();
        for (int i = 0; i < sampleOfSpot.length; i++) {
            spots.append(i == 0 ? "" : ",")
                    .append("{\"id\": \"")
                    .append(i + 1)
                    .append("\", \"sample\": {\"name\": \"")
                    .append(sampleOfSpot[i])
                    .append("\"}}");
        }
        String json = "{\"format\": \"spotline-holder-run/1\", \"spots\": [" + spots + "]}";
        return HolderPlan.of(HolderRunReader.read("made.json", json.getBytes(StandardCharsets.UTF_8)));
    }

    static Quantified row(String element, Estimate percent) {
        return new Quantified(
                element,
                element + " 1s",
                "made",
                Basis.NARROW,
                Optional.of(percent),
                OptionalDouble.empty(),
                false,
                OptionalDouble.empty());
    }

    static Quantified below(String element, double limit) {
        return new Quantified(
                element,
                element + " 1s",
                "made",
                Basis.NARROW,
                Optional.empty(),
                OptionalDouble.empty(),
                true,
                OptionalDouble.of(limit));
    }

    static SpotResult spot(String id, String sample, Quantified... rows) {
        OptionalDouble none = OptionalDouble.empty();
        return new SpotResult(
                id,
                sample,
                "unknown",
                List.of(),
                Optional.empty(),
                new ChargeReference(
                        ChargeMethod.NONE,
                        "",
                        none,
                        none,
                        none,
                        none,
                        none,
                        ChargeVerdict.FAILED,
                        "made",
                        Optional.empty()),
                List.of(),
                List.of(),
                List.of(rows),
                List.of(),
                List.of());
    }
}
