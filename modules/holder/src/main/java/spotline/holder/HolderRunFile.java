package spotline.holder;

import static java.util.Objects.requireNonNull;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A holder-run file as it is written. What it leaves out is not known: an empty optional or an {@code UNKNOWN}.
 *
 * @param holderTemplate name of a shipped template, or a file relative to this one
 * @param treatment merge patch (RFC 7396) over the defaults, empty when there is none; copied in and out
 * @param planCheck thresholds of the mounting checks that differ from the defaults, empty when none do; copied in and out
 * @param families merge patches by sample family, in the file's order; copied in and out
 */
public record HolderRunFile(
        String format,
        Optional<String> title,
        Optional<LocalDate> date,
        Optional<String> operator,
        Optional<String> holderTemplate,
        Instrument instrument,
        List<Specimen> specimens,
        List<SpotEntry> spots,
        ObjectNode treatment,
        Map<String, ObjectNode> families,
        List<Silence> silence,
        Optional<LocalRiskReview> localRiskReview,
        StagePlan stage,
        ObjectNode planCheck) {
    /** The one format written, and the newest read. */
    public static final String FORMAT = "spotline-holder-run/1";

    public HolderRunFile {
        requireNonNull(format, "format");
        requireNonNull(holderTemplate, "holderTemplate");
        requireNonNull(instrument, "instrument");
        requireNonNull(localRiskReview, "localRiskReview");
        requireNonNull(stage, "stage");
        planCheck = planCheck.deepCopy();
        specimens = List.copyOf(specimens);
        spots = List.copyOf(spots);
        treatment = treatment.deepCopy();
        families = copy(families);
        silence = List.copyOf(silence);
    }

    @Override
    public ObjectNode treatment() {
        return treatment.deepCopy();
    }

    @Override
    public ObjectNode planCheck() {
        return planCheck.deepCopy();
    }

    @Override
    public Map<String, ObjectNode> families() {
        return copy(families);
    }

    private static Map<String, ObjectNode> copy(Map<String, ObjectNode> patches) {
        Map<String, ObjectNode> copy = new LinkedHashMap<>();
        for (Map.Entry<String, ObjectNode> patch : patches.entrySet()) {
            copy.put(patch.getKey(), patch.getValue().deepCopy());
        }
        return copy;
    }
}
