package spotline.run.project;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spotline.core.Place;
import spotline.core.ReadException;
import spotline.run.document.Checkpoint;
import spotline.run.document.History;
import spotline.run.document.HistoryRecord;
import spotline.run.document.RunDocument;

/** A history as JSON; the document as it is now stands beside it, in a file of its own. */
final class HistoryJson {
    static final String FORMAT = "spotline-history/1";

    private HistoryJson() {}

    static ObjectNode of(History history) {
        HistoryRecord record = history.record();
        ObjectNode node = JsonNodeFactory.instance.objectNode().put("format", FORMAT);
        node.set("first", record.first().tree());
        node.putArray("edits");
        for (HistoryRecord.Node step : record.edits()) {
            ObjectNode entry = node.withArray("edits").addObject();
            entry.put("number", step.number()).put("after", step.after());
            entry.set("edit", EditJson.of(step.edit()));
        }
        node.put("done", record.done());
        node.putArray("undone");
        record.undone().forEach(n -> node.withArray("undone").add(n));
        node.putArray("checkpoints");
        record.checkpoints().forEach(c -> node.withArray("checkpoints").add(EditJson.of(c)));
        record.report().ifPresent(c -> node.set("report", EditJson.of(c)));
        node.put("lastNumber", record.lastNumber());
        return node;
    }

    /** Errors: {@link ReadException} when it is no history of the document. */
    static History read(String name, ObjectNode json, RunDocument document) throws ReadException {
        if (!(json.path("first") instanceof ObjectNode first)) {
            throw new ReadException(Place.pointer(name, "/first"), "no first document", "a holder run");
        }
        try {
            List<HistoryRecord.Node> edits = new ArrayList<>();
            for (JsonNode step : json.path("edits")) {
                edits.add(new HistoryRecord.Node(
                        step.path("number").asLong(), step.path("after").asLong(), EditJson.edit(step.path("edit"))));
            }
            List<Long> undone = new ArrayList<>();
            json.path("undone").forEach(n -> undone.add(n.asLong()));
            List<Checkpoint> checkpoints = new ArrayList<>();
            json.path("checkpoints").forEach(c -> checkpoints.add(EditJson.checkpoint(c)));
            Optional<Checkpoint> report =
                    json.has("report") ? Optional.of(EditJson.checkpoint(json.path("report"))) : Optional.empty();
            return History.of(new HistoryRecord(
                    RunDocument.of(document.name(), first, document.seed()),
                    document,
                    edits,
                    json.path("done").asLong(),
                    undone,
                    checkpoints,
                    report,
                    json.path("lastNumber").asLong()));
        } catch (IllegalArgumentException e) {
            throw new ReadException(Place.file(name), String.valueOf(e.getMessage()), "a history of the document");
        }
    }
}
