package spotline.report.html;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import spotline.core.Decimal;

/** The settings in force; where spots differ, each value with its spots. */
final class SettingsSection {
    private SettingsSection() {}

    static void write(Markup page, SortedMap<String, JsonNode> treatments) {
        page.open("section", "id", "settings").element("h2", "Settings");
        page.element("p", "The treatment of every spot in full: defaults with what the holder run laid over them.");
        Map<String, SortedMap<String, String>> bySetting = new LinkedHashMap<>();
        treatments.forEach((spot, treatment) -> gather(bySetting, spot, "", treatment));
        Map<String, List<String>> byStep = new LinkedHashMap<>();
        bySetting.forEach((setting, values) -> byStep.computeIfAbsent(step(setting), s -> new ArrayList<>())
                .add(setting.substring(Math.min(setting.length(), step(setting).length() + 1)) + " "
                        + text(values, treatments.size())));
        Tables.begin(page, "settings", List.of("Step", "Settings"));
        byStep.forEach((step, settings) -> {
            page.open("tr").element("th", step, "scope", "row").open("td");
            for (String setting : settings)
                page.element("span", setting.strip(), "class", "setting").text(" ");
            page.close().end();
        });
        Tables.end(page);
        page.end();
    }

    private static String step(String setting) {
        int dot = setting.indexOf('.');
        return dot < 0 ? setting : setting.substring(0, dot);
    }

    private static void gather(
            Map<String, SortedMap<String, String>> bySetting, String spot, String path, JsonNode node) {
        if (path.equals("peakFit.models") && !node.isEmpty()) {
            List<String> lines = new ArrayList<>();
            node.fieldNames().forEachRemaining(lines::add);
            String models = String.join(", ", lines) + ": bounds and ties with each peak fit, in full in result.json";
            bySetting.computeIfAbsent(path, p -> new TreeMap<>()).put(spot, models);
            return;
        }
        if (node.isObject() && !node.isEmpty()) {
            for (Map.Entry<String, JsonNode> field : node.properties()) {
                gather(
                        bySetting,
                        spot,
                        path.isEmpty() ? field.getKey() : path + "." + field.getKey(),
                        field.getValue());
            }
            return;
        }
        String value = node.isFloatingPointNumber()
                ? Decimal.text(node.doubleValue())
                : node.isTextual() ? node.textValue() : node.toString();
        bySetting.computeIfAbsent(path, p -> new TreeMap<>()).put(spot, value);
    }

    private static String text(SortedMap<String, String> bySpot, int spots) {
        Map<String, List<String>> byValue = new LinkedHashMap<>();
        for (Map.Entry<String, String> entry : bySpot.entrySet()) {
            byValue.computeIfAbsent(entry.getValue(), v -> new ArrayList<>()).add(entry.getKey());
        }
        if (byValue.size() == 1 && bySpot.size() == spots)
            return byValue.keySet().iterator().next();
        return byValue.entrySet().stream()
                .map(e -> e.getKey() + " (spot " + String.join(", ", e.getValue()) + ")")
                .collect(Collectors.joining("; "));
    }
}
