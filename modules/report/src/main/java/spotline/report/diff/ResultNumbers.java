package spotline.report.diff;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;

/** The reported numbers of a result file, each by what it is of. */
public final class ResultNumbers {
    /** A number; its uncertainty where it is known. */
    public record Reported(double value, OptionalDouble standardUncertainty) {}

    /**
     * A number that is not the same on both sides; empty where a side does not have it.
     *
     * @param combined difference over the root of the sum of both variances; empty where an uncertainty is not known
     */
    public record Moved(String what, OptionalDouble before, OptionalDouble after, OptionalDouble combined) {}

    private ResultNumbers() {}

    /** @param result as {@code result.json} has it */
    public static Map<String, Reported> of(JsonNode result) {
        Map<String, Reported> numbers = new LinkedHashMap<>();
        for (JsonNode spot : result.path("spots")) {
            String where = "spot " + spot.path("spot").asText() + ": ";
            put(numbers, where + "shift, eV", spot.at("/charge/shiftEv"), spot.at("/charge/standardUncertainty"));
            for (JsonNode row : spot.path("composition")) {
                JsonNode percent = row.path("atomicPercent");
                put(
                        numbers,
                        where + row.path("element").asText() + ", at.%",
                        percent.path("value"),
                        percent.path("standardUncertainty"));
            }
            for (JsonNode intensity : spot.path("intensities")) {
                JsonNode area = intensity.path("area");
                put(
                        numbers,
                        where + intensity.path("line").asText() + " area, "
                                + intensity.path("basis").asText(),
                        area.path("value"),
                        area.path("standardUncertainty"));
            }
            for (JsonNode peak : spot.path("peaks")) {
                JsonNode position = peak.path("measuredPosition");
                put(
                        numbers,
                        where + peak.path("line").asText() + " "
                                + peak.path("peak").asText() + " position, eV",
                        position.path("value"),
                        position.path("standardUncertainty"));
            }
        }
        return numbers;
    }

    private static void put(Map<String, Reported> numbers, String what, JsonNode value, JsonNode u) {
        if (!value.isNumber()) return;
        numbers.putIfAbsent(
                what,
                new Reported(
                        value.doubleValue(),
                        u.isNumber() ? OptionalDouble.of(u.doubleValue()) : OptionalDouble.empty()));
    }

    /** Numbers that differ by more than 1e-9 of themselves, in the order they stand in. */
    public static List<Moved> moved(Map<String, Reported> before, Map<String, Reported> after) {
        Set<String> all = new LinkedHashSet<>(before.keySet());
        all.addAll(after.keySet());
        List<Moved> moved = new ArrayList<>();
        for (String what : all) {
            Reported a = before.get(what);
            Reported b = after.get(what);
            if (a == null || b == null) {
                moved.add(new Moved(
                        what,
                        a == null ? OptionalDouble.empty() : OptionalDouble.of(a.value()),
                        b == null ? OptionalDouble.empty() : OptionalDouble.of(b.value()),
                        OptionalDouble.empty()));
            } else if (Math.abs(b.value() - a.value()) > 1e-9 * Math.max(Math.abs(a.value()), Math.abs(b.value()))) {
                moved.add(new Moved(what, OptionalDouble.of(a.value()), OptionalDouble.of(b.value()), combined(a, b)));
            }
        }
        return moved;
    }

    private static OptionalDouble combined(Reported a, Reported b) {
        if (a.standardUncertainty().isEmpty() || b.standardUncertainty().isEmpty()) return OptionalDouble.empty();
        double u = Math.hypot(
                a.standardUncertainty().getAsDouble(), b.standardUncertainty().getAsDouble());
        return u > 0 ? OptionalDouble.of((b.value() - a.value()) / u) : OptionalDouble.empty();
    }
}
