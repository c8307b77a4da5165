package spotline.report.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import spotline.run.Led;
import spotline.run.RuleOutcome;

/** The rules of a run as data. */
final class ChecksJson {
    private ChecksJson() {}

    static JsonNode checks(List<RuleOutcome> outcomes) {
        return JsonTree.list(outcomes, outcome -> {
            ObjectNode node = JsonTree.object()
                    .put("number", outcome.number())
                    .put("rule", outcome.id())
                    .put("title", outcome.title())
                    .put("severity", outcome.severity().word())
                    .put("state", outcome.state().word());
            node.set("spots", JsonTree.list(outcome.where(), JsonTree::text));
            node.set("notChecked", JsonTree.list(outcome.notChecked().entrySet(), e -> {
                ObjectNode entry = JsonTree.object();
                entry.set("spot", JsonTree.text(e.getKey()));
                return entry.put("why", e.getValue());
            }));
            node.set("limits", JsonTree.list(outcome.limits(), limit -> {
                ObjectNode entry = JsonTree.object().put("name", limit.name());
                entry.set("value", JsonTree.number(limit.value()));
                return entry.put("unit", limit.unit()).put("source", limit.source());
            }));
            return node;
        });
    }

    static JsonNode causes(List<Led> causes) {
        return JsonTree.list(causes, led -> {
            ObjectNode node = JsonTree.object();
            node.set("leader", ResultJson.finding(led.leader()));
            node.set("followers", JsonTree.list(led.followers(), ResultJson::finding));
            return node;
        });
    }
}
