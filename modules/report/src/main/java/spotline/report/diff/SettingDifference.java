package spotline.report.diff;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;

/** A place where two trees of settings say different things; empty where one says nothing. */
public record SettingDifference(String pointer, Optional<JsonNode> before, Optional<JsonNode> after) {
    public static List<SettingDifference> of(JsonNode before, JsonNode after) {
        List<SettingDifference> differences = new ArrayList<>();
        compare("", Optional.of(before), Optional.of(after), differences);
        return differences;
    }

    private static void compare(
            String pointer, Optional<JsonNode> a, Optional<JsonNode> b, List<SettingDifference> to) {
        boolean objects =
                a.isPresent() && b.isPresent() && a.get().isObject() && b.get().isObject();
        boolean arrays = a.isPresent()
                && b.isPresent()
                && a.get().isArray()
                && b.get().isArray()
                && a.get().size() == b.get().size();
        if (objects) {
            TreeSet<String> names = new TreeSet<>();
            a.get().fieldNames().forEachRemaining(names::add);
            b.get().fieldNames().forEachRemaining(names::add);
            for (String name : names) {
                compare(
                        pointer + "/" + name.replace("~", "~0").replace("/", "~1"),
                        Optional.ofNullable(a.get().get(name)),
                        Optional.ofNullable(b.get().get(name)),
                        to);
            }
        } else if (arrays) {
            for (int i = 0; i < a.get().size(); i++) {
                compare(
                        pointer + "/" + i,
                        Optional.ofNullable(a.get().get(i)),
                        Optional.ofNullable(b.get().get(i)),
                        to);
            }
        } else if (!same(a, b)) {
            to.add(new SettingDifference(pointer, a, b));
        }
    }

    private static boolean same(Optional<JsonNode> a, Optional<JsonNode> b) {
        if (a.isEmpty() || b.isEmpty()) return a.isEmpty() && b.isEmpty();
        boolean numbers = a.get().isNumber() && b.get().isNumber();
        return numbers
                ? a.get().decimalValue().compareTo(b.get().decimalValue()) == 0
                : a.get().equals(b.get());
    }
}
