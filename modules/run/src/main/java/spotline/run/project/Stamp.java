package spotline.run.project;

import static java.util.Objects.requireNonNull;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Optional;

/**
 * What a saved project says of its saving. The caller has the clock.
 *
 * @param saved when
 * @param sourceDate a time that stands for every time in the file, so that the same content gives the same bytes
 */
public record Stamp(String programVersion, OffsetDateTime saved, Optional<Instant> sourceDate) {
    /** The earliest time that a zip entry can have. */
    private static final LocalDateTime FIXED = LocalDateTime.of(1980, 1, 1, 0, 0);

    public Stamp {
        requireNonNull(programVersion, "programVersion");
        requireNonNull(saved, "saved");
    }

    OffsetDateTime told() {
        return sourceDate.map(s -> s.atOffset(ZoneOffset.UTC)).orElse(saved);
    }

    LocalDateTime ofEntries() {
        return sourceDate
                .map(s -> LocalDateTime.ofInstant(s, ZoneOffset.UTC))
                .filter(t -> t.isAfter(FIXED))
                .orElse(FIXED);
    }
}
