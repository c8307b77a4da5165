package spotline.report.plain;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import spotline.core.Finding;

/**
 * What a finding means to the person whose sample it is.
 *
 * @param sentence empty where the page tells it in words of its own
 */
public record PlainFinding(Topic topic, String sentence) {
    /** What a finding bears on. */
    public enum Topic {
        AMOUNTS,
        BONDING,
        MOUNT,
        SAID
    }

    private static final String TABLE = "/spotline/report/plain-findings.txt";
    private static final Map<String, PlainFinding> BY_RULE = read();

    /** Of a rule without a sentence of its own. */
    private static final PlainFinding OTHER = new PlainFinding(
            Topic.AMOUNTS,
            "A check of the measurement raised a doubt that only the analyst can judge; the full report names it.");

    public static PlainFinding of(Finding finding) {
        return ofRule(finding.rule()).orElse(OTHER);
    }

    /** Empty for a rule without a sentence of its own. */
    public static Optional<PlainFinding> ofRule(String rule) {
        return Optional.ofNullable(BY_RULE.get(rule));
    }

    private static Map<String, PlainFinding> read() {
        Map<String, PlainFinding> plain = new HashMap<>();
        try (InputStream in = Objects.requireNonNull(PlainFinding.class.getResourceAsStream(TABLE), TABLE)) {
            for (String line : new String(in.readAllBytes(), StandardCharsets.UTF_8).split("\n", -1)) {
                if (line.isBlank() || line.startsWith("#")) continue;
                String[] cells = line.split("\\|", 3);
                Topic topic = Topic.valueOf(cells[1].strip().toUpperCase(Locale.ROOT));
                PlainFinding finding = new PlainFinding(topic, cells[2].strip());
                for (String rule : cells[0].strip().split(" +", -1)) plain.put(rule, finding);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return Map.copyOf(plain);
    }
}
