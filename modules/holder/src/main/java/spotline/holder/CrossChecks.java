package spotline.holder;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import spotline.core.Decimal;
import spotline.core.Place;
import spotline.core.ReadException;
import spotline.holder.json.Nearest;

/** What a schema cannot say of a holder-run file: names that must be unique or declared, and choices that exclude. */
final class CrossChecks {
    private final String file;
    private final List<ReadException> faults = new ArrayList<>();

    private CrossChecks(String file) {
        this.file = file;
    }

    /** @param root valid against the schema */
    static List<ReadException> faults(String file, ObjectNode root) {
        CrossChecks checks = new CrossChecks(file);
        checks.template(root.path("holder").path("template"));
        Set<String> specimens = checks.unique(root.path("specimens"), "/specimens", "specimen");
        Set<String> spots = checks.unique(root.path("spots"), "/spots", "spot");
        checks.spots(root.path("spots"), specimens);
        checks.silence(root.path("silence"), spots);
        checks.records(root.path("specimens"), "/specimens", spots);
        checks.records(root.path("spots"), "/spots", spots);
        checks.clearance(root.path("planCheck").path("clearance"));
        return checks.faults;
    }

    private void template(JsonNode template) {
        if (template.isMissingNode()) return;
        String name = template.asText();
        if (HolderTemplates.SHIPPED.contains(name) || HolderTemplates.namesFile(name)) return;
        fault(
                "/holder/template",
                "\"template\": " + quoted(name),
                "one of " + String.join(", ", HolderTemplates.SHIPPED) + ", or a .json file of the lab's own"
                        + meant(name, HolderTemplates.SHIPPED));
    }

    private Set<String> unique(JsonNode list, String pointer, String what) {
        Map<String, Integer> first = new HashMap<>();
        Set<String> ids = new LinkedHashSet<>();
        for (int i = 0; i < list.size(); i++) {
            if (!list.path(i).has("id")) continue;
            String id = list.path(i).path("id").asText();
            Integer before = first.putIfAbsent(id, i + 1);
            ids.add(id);
            if (before != null) {
                fault(
                        pointer + "/" + i + "/id",
                        "\"id\": " + quoted(id) + ", which " + what + " number " + before + " has too",
                        "an id of its own for each " + what);
            }
        }
        return ids;
    }

    private void spots(JsonNode spots, Set<String> specimens) {
        for (int i = 0; i < spots.size(); i++) {
            JsonNode spot = spots.path(i);
            String pointer = "/spots/" + i;
            if (spot.has("specimen")) {
                String name = spot.path("specimen").asText();
                if (!specimens.contains(name)) undeclared(pointer + "/specimen", "specimen", name, specimens);
                for (String field : List.of("sample", "mount", "transfer")) {
                    if (spot.has(field)) {
                        fault(
                                pointer + "/" + field,
                                "\"" + field + "\" beside \"specimen\": " + quoted(name),
                                "either a specimen or the spot's own sample and mount");
                    }
                }
            }
            spectra(spot.path("spectra"), pointer + "/spectra");
        }
    }

    private void spectra(JsonNode spectra, String pointer) {
        Map<String, Set<Integer>> taken = new HashMap<>();
        for (int i = 0; i < spectra.size(); i++) {
            JsonNode entry = spectra.path(i);
            String at = pointer + "/" + i;
            JsonNode columns = entry.path("columns");
            if (columns.has("energy")
                    && columns.path("energy").asInt()
                            == columns.path("ordinate").asInt()) {
                fault(
                        at + "/columns/ordinate",
                        "\"ordinate\": " + columns.path("ordinate").asInt() + ", the column of the energy too",
                        "a column of its own for the ordinate");
            }
            twice(entry, at, taken);
        }
    }

    /** A block linked twice to one spot would count as a replicate of itself. */
    private void twice(JsonNode entry, String at, Map<String, Set<Integer>> taken) {
        String name = entry.path("file").asText();
        Set<Integer> before = taken.get(name);
        Set<Integer> blocks = new HashSet<>();
        entry.path("blocks").forEach(block -> blocks.add(block.asInt()));
        if (before != null) {
            boolean all = before.isEmpty() || blocks.isEmpty();
            if (all || blocks.stream().anyMatch(before::contains)) {
                fault(
                        at + "/file",
                        "\"file\": " + quoted(name) + ", given before for this spot"
                                + (all ? "" : " with some of the same blocks"),
                        "each block of a file once a spot");
            }
            blocks.addAll(before);
        }
        taken.put(name, blocks);
    }

    private void silence(JsonNode silence, Set<String> spots) {
        for (int i = 0; i < silence.size(); i++) {
            JsonNode spot = silence.path(i).path("spot");
            if (!spot.isMissingNode() && !spots.contains(spot.asText())) {
                undeclared("/silence/" + i + "/spot", "spot", spot.asText(), spots);
            }
        }
    }

    private void records(JsonNode list, String pointer, Set<String> spots) {
        for (int i = 0; i < list.size(); i++) {
            JsonNode entry = list.path(i);
            String at = pointer + "/" + i;
            outline(entry.path("outlineMm"), at + "/outlineMm");
            JsonNode mount = entry.path("mount");
            outline(mount.path("outlineMm"), at + "/mount/outlineMm");
            outline(mount.path("tapePatchMm"), at + "/mount/tapePatchMm");
            JsonNode clips = mount.path("clips");
            for (int j = 0; j < clips.size(); j++) {
                outline(clips.path(j).path("outlineMm"), at + "/mount/clips/" + j + "/outlineMm");
            }
            JsonNode stability = entry.path("sample").path("stability");
            order(stability, at + "/sample/stability", "minC", "maxC");
            JsonNode control = entry.path("transfer").path("controlSpot");
            if (!control.isMissingNode() && !spots.contains(control.asText())) {
                undeclared(at + "/transfer/controlSpot", "controlSpot", "spot", control.asText(), spots);
            }
        }
    }

    private void outline(JsonNode outline, String pointer) {
        if (outline.isMissingNode()) return;
        if (!outline.path("shape").asText().equals("polygon")) {
            if (outline.has("cornersMm")) {
                fault(pointer + "/cornersMm", "corners of what is no polygon", "\"shape\": \"polygon\" beside them");
            }
            return;
        }
        for (String field : List.of("width", "height")) {
            if (outline.has(field)) {
                fault(pointer + "/" + field, "\"" + field + "\" of a polygon", "a polygon by its corners alone");
            }
        }
        if (!Shapes.polygon(TemplateBinding.points(outline.path("cornersMm"))).isValid()) {
            fault(pointer + "/cornersMm", "corners whose sides cross or touch", "corners in order around the area");
        }
    }

    private void clearance(JsonNode clearance) {
        order(clearance, "/planCheck/clearance", "stopMm", "cautionMm");
    }

    private void order(JsonNode object, String pointer, String low, String high) {
        if (!object.has(low) || !object.has(high)) return;
        double from = object.path(low).asDouble();
        double to = object.path(high).asDouble();
        if (from > to) {
            fault(
                    pointer,
                    "\"" + low + "\": " + Decimal.text(from) + " above \"" + high + "\": " + Decimal.text(to),
                    low + " at or below " + high);
        }
    }

    private void undeclared(String pointer, String what, String name, Set<String> declared) {
        undeclared(pointer, what, what, name, declared);
    }

    private void undeclared(String pointer, String field, String what, String name, Set<String> declared) {
        fault(
                pointer,
                "\"" + field + "\": " + quoted(name) + ", which is not declared",
                "the id of a declared " + what + meant(name, declared));
    }

    private static String meant(String name, Iterable<String> words) {
        List<String> list = new ArrayList<>();
        words.forEach(list::add);
        return Nearest.of(name, list)
                .map(near -> "; did you mean " + quoted(near) + "?")
                .orElse("");
    }

    private static String quoted(String text) {
        return TextNode.valueOf(text.length() > 60 ? text.substring(0, 60) + "..." : text)
                .toString();
    }

    private void fault(String pointer, String found, String expected) {
        faults.add(new ReadException(Place.pointer(file, pointer), found, expected));
    }
}
