package spotline.report.json;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Arrays;
import java.util.List;
import spotline.core.Finding;
import spotline.holder.check.PlanRule;

/** The mounting checks as data: every rule with its state, then what was found. */
public final class PlanJson {
    public static final String FORMAT = "spotline-plan-check/1";

    private PlanJson() {}

    /** @param findings of the mounting checks */
    public static String of(List<Finding> findings) {
        ObjectNode root = JsonTree.object().put("format", FORMAT);
        root.set("rules", JsonTree.list(Arrays.asList(PlanRule.values()), rule -> {
            boolean fired = findings.stream().anyMatch(f -> f.rule().equals(rule.id()));
            return JsonTree.object()
                    .put("rule", rule.id())
                    .put("severity", rule.severity().word())
                    .put("state", fired ? "fired" : "passed");
        }));
        root.set("findings", JsonTree.list(findings, ResultJson::finding));
        return root.toPrettyString() + "\n";
    }
}
