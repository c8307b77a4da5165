package spotline.spectra;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The header that all spectra of a set share. What the file does not say is empty, never a default.
 *
 * @param blockId name of the measurement in its file
 * @param sampleId name of the sample as the file gives it
 * @param technique {@code XPS}, {@code AES diff} ... as the standard spells it, empty when not known
 * @param time start of the measurement, with its offset
 * @param region species or region label ({@code "C"}, {@code "wide"}), and the transition label beside it ({@code "1s"})
 * @param emissionAngleDeg from the surface normal, degree
 * @param position of the analysis, with units, as far as the file has any
 * @param comments lines of comment, word for word
 * @param header every further header field, word for word, in file order
 */
public record Acquisition(
        String blockId,
        String sampleId,
        String technique,
        Optional<OffsetDateTime> time,
        Excitation excitation,
        Analyser analyser,
        Timing timing,
        String region,
        String transition,
        OptionalDouble emissionAngleDeg,
        List<HeaderField> position,
        List<String> comments,
        List<HeaderField> header) {
    public Acquisition {
        position = List.copyOf(position);
        comments = List.copyOf(comments);
        header = List.copyOf(header);
    }

    /** An acquisition of which nothing is known but its name. */
    public static Acquisition unknown(String blockId) {
        return new Acquisition(
                blockId,
                "",
                "",
                Optional.empty(),
                Excitation.UNKNOWN,
                Analyser.UNKNOWN,
                Timing.UNKNOWN,
                "",
                "",
                OptionalDouble.empty(),
                List.of(),
                List.of(),
                List.of());
    }

    /** Region and transition as one label: {@code "C 1s"}; the block's name where the file gives neither. */
    public String label() {
        String label = (region + " " + transition).strip();
        return label.isEmpty() ? blockId : label;
    }
}
