package spotline.report.html;

import java.util.List;
import java.util.Locale;
import spotline.core.Finding;
import spotline.report.facts.RuleFacts;
import spotline.run.Led;
import spotline.run.RuleOutcome;
import spotline.run.RunResult;

/** Every rule with its state and its limits, and what leads to what among the findings. */
final class ChecksSection {
    private ChecksSection() {}

    static void write(Markup page, RunResult result) {
        page.open("section", "id", "checks").element("h2", "Checks");
        page.element("p", summary(result.ruleStates()));
        causes(page, result.led());
        Tables.begin(page, "checks", List.of("#No.", "Check", "State", "Spots", "Not checked", "Limits", "Rule"));
        for (RuleOutcome rule : result.ruleStates()) {
            page.open("tr");
            Tables.number(page, String.valueOf(rule.number()));
            Tables.cell(page, rule.title());
            Tables.cell(page, rule.state().word());
            Tables.cell(page, String.join(", ", rule.where()));
            Tables.cell(page, RuleFacts.notChecked(rule));
            Tables.cell(page, RuleFacts.limits(rule));
            page.element("td", rule.id(), "class", "source").end();
        }
        Tables.end(page);
        page.end();
    }

    private static String summary(List<RuleOutcome> rules) {
        return String.format(
                Locale.ROOT,
                "%d checks: %d fired, %d silenced, %d passed, %d not checked. A check without its inputs says so.",
                rules.size(),
                count(rules, RuleOutcome.State.FIRED),
                count(rules, RuleOutcome.State.SILENCED),
                count(rules, RuleOutcome.State.PASSED),
                count(rules, RuleOutcome.State.NOT_CHECKED));
    }

    private static long count(List<RuleOutcome> rules, RuleOutcome.State state) {
        return rules.stream().filter(r -> r.state() == state).count();
    }

    private static void causes(Markup page, List<Led> causes) {
        if (causes.isEmpty()) return;
        page.element("p", "Findings that explain others:").open("ul");
        for (Led led : causes) {
            page.open("li").text(named(led.leader())).open("ul");
            for (Finding follower : led.followers()) page.element("li", named(follower));
            page.end().end();
        }
        page.end();
    }

    private static String named(Finding finding) {
        return finding.spot().isEmpty() ? finding.message() : "Spot " + finding.spot() + ": " + finding.message();
    }
}
