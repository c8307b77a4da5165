package spotline.run.findings;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import spotline.core.Decimal;
import spotline.run.DefaultTreatment;

/**
 * The list of checks in the documents is made from the rules. To write it anew, give the tests
 * {@code -Dspotline.documents=write}.
 */
class RuleDocsTest {
    private static final Path DOCUMENT = Path.of("docs/checks.md");

    private static String document() {
        StringBuilder out = new StringBuilder("""
                # The checks

                What every run is held to. `stop` withholds the numbers of its spot; a check raises findings up to its severity.
                Limits of the rules' own stand under `findings.limits` in a treatment, and can be set for a holder, a family or a
                spot; the others stand where the setting says, or are fixed. A check whose inputs are missing says "not checked".
                Findings are silenced in the holder run, with a reason; a `stop` stays one.

                This page is made from the rules by `RuleDocsTest`.

                | No. | check | rule | severity | also raises | limits |
                |---|---|---|---|---|---|
                """);
        for (Rule rule : RuleBook.standard().rules()) {
            out.append("| ")
                    .append(rule.number())
                    .append(" | ")
                    .append(rule.title())
                    .append(" | `")
                    .append(rule.id())
                    .append("` | ")
                    .append(rule.severity().word())
                    .append(" | ")
                    .append(new TreeSet<>(rule.adopted())
                            .stream().map(id -> "`" + id + "`").collect(Collectors.joining(", ")))
                    .append(" | ")
                    .append(rule.limits().stream().map(RuleDocsTest::limit).collect(Collectors.joining("; ")))
                    .append(" |\n");
        }
        return out.toString();
    }

    private static String limit(Limit limit) {
        String value = Double.isNaN(limit.value()) ? "not set" : Decimal.text(limit.value());
        String where = limit.setting().isEmpty() ? "fixed" : "`" + limit.setting() + "`";
        return (limit.name() + " " + value + " " + limit.unit()).strip() + " (" + where + "; " + limit.source() + ")";
    }

    @Test
    void theListInTheDocumentsIsThatOfTheRules() throws IOException {
        if ("write".equals(System.getProperty("spotline.documents"))) {
            Files.createDirectories(DOCUMENT.getParent());
            Files.writeString(DOCUMENT, document());
        }
        assertThat(DOCUMENT).hasContent(document());
    }

    @Test
    void everyLimitOfTheRulesOwnIsASettingWithItsDefaultAndADescription() throws IOException {
        JsonNode defaults = DefaultTreatment.json();
        String name = "/spotline/schema/treatment-1.schema.json";
        JsonNode schema;
        try (InputStream in = RuleDocsTest.class.getResourceAsStream(name)) {
            schema = new ObjectMapper().readTree(Objects.requireNonNull(in, name));
        }
        JsonNode described = schema.at("/properties/findings/properties/limits/properties");
        List<Limit> own = RuleBook.standard().rules().stream()
                .flatMap(r -> r.limits().stream())
                .filter(Limit::isOwn)
                .distinct()
                .toList();
        assertThat(own).extracting(Limit::name).doesNotHaveDuplicates();
        TreeSet<String> names = new TreeSet<>();
        described.fieldNames().forEachRemaining(names::add);
        assertThat(own.stream().map(Limit::name)).containsExactlyInAnyOrderElementsOf(names);
        for (Limit limit : own) {
            assertThat(described.at("/" + limit.name() + "/description").asText())
                    .as(limit.name())
                    .isNotBlank();
            assertThat(defaults.at(limit.pointer()).asDouble(Double.NaN))
                    .as(limit.name())
                    .isEqualTo(Double.valueOf(limit.value()));
        }
    }

    @Test
    void everyLimitElsewhereInTheTreatmentIsWhatTheDefaultsSay() {
        JsonNode defaults = DefaultTreatment.json();
        for (Rule rule : RuleBook.standard().rules()) {
            for (Limit limit : rule.limits()) {
                if (limit.isOwn() || limit.inPlan() || limit.setting().isEmpty()) continue;
                assertThat(defaults.at(limit.pointer()).asDouble(Double.NaN))
                        .as("%s of %s", limit.setting(), rule.id())
                        .isEqualTo(Double.valueOf(limit.value()));
            }
        }
    }
}
