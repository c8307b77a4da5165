package spotline.run.project;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.DateTimeException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spotline.run.document.Change;
import spotline.run.document.Checkpoint;
import spotline.run.document.Edit;
import spotline.run.document.Operation;

/** Edits and operations as JSON. Errors of reading: {@link IllegalArgumentException}. */
final class EditJson {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private EditJson() {}

    static ObjectNode of(Edit edit) {
        ObjectNode node = NODES.objectNode().put("title", edit.title());
        for (Change change : edit.changes()) {
            ObjectNode entry = NODES.objectNode().put("pointer", change.pointer());
            change.before().ifPresent(before -> entry.set("before", before));
            change.after().ifPresent(after -> entry.set("after", after));
            node.withArray("changes").add(entry);
        }
        node.put("byHand", edit.byHand());
        if (!edit.who().isEmpty()) node.put("who", edit.who());
        if (!edit.why().isEmpty()) node.put("why", edit.why());
        when(node, edit.when());
        return node;
    }

    static Edit edit(JsonNode json) {
        List<Change> changes = new ArrayList<>();
        for (JsonNode change : json.path("changes")) {
            changes.add(new Change(
                    change.path("pointer").asText(),
                    Optional.ofNullable(change.get("before")),
                    Optional.ofNullable(change.get("after"))));
        }
        return new Edit(
                json.path("title").asText(),
                changes,
                json.path("byHand").asBoolean(),
                json.path("who").asText(""),
                json.path("why").asText(""),
                when(json));
    }

    static ObjectNode of(Operation operation) {
        ObjectNode node = NODES.objectNode();
        if (operation instanceof Operation.Apply apply) {
            node.put("do", "edit").set("edit", of(apply.edit()));
        } else if (operation instanceof Operation.Undo) {
            node.put("do", "undo");
        } else if (operation instanceof Operation.Redo) {
            node.put("do", "redo");
        } else if (operation instanceof Operation.Mark mark) {
            when(node.put("do", "checkpoint").put("name", mark.name()), mark.when());
        } else if (operation instanceof Operation.Back back) {
            node.put("do", "back").put("name", back.checkpoint());
        } else if (operation instanceof Operation.Reported reported) {
            when(node.put("do", "report"), reported.when());
        }
        return node;
    }

    static Operation operation(JsonNode json) {
        String word = json.path("do").asText();
        return switch (word) {
            case "edit" -> new Operation.Apply(edit(json.path("edit")));
            case "undo" -> new Operation.Undo();
            case "redo" -> new Operation.Redo();
            case "checkpoint" -> new Operation.Mark(json.path("name").asText(), when(json));
            case "back" -> new Operation.Back(json.path("name").asText());
            case "report" -> new Operation.Reported(when(json));
            default -> throw new IllegalArgumentException("the operation \"" + word + "\" is not known");
        };
    }

    static ObjectNode of(Checkpoint checkpoint) {
        ObjectNode node = NODES.objectNode().put("name", checkpoint.name()).put("edit", checkpoint.edit());
        when(node, checkpoint.when());
        return node;
    }

    static Checkpoint checkpoint(JsonNode json) {
        return new Checkpoint(json.path("name").asText(), json.path("edit").asLong(), when(json));
    }

    private static void when(ObjectNode node, Optional<OffsetDateTime> when) {
        when.ifPresent(w -> node.put("when", w.toString()));
    }

    private static Optional<OffsetDateTime> when(JsonNode json) {
        if (!json.has("when")) return Optional.empty();
        try {
            return Optional.of(OffsetDateTime.parse(json.path("when").asText()));
        } catch (DateTimeException e) {
            throw new IllegalArgumentException("\"when\" is no time with an offset", e);
        }
    }
}
