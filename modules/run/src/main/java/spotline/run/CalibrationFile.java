package spotline.run;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import spotline.analysis.calibration.CalibrationRecord;
import spotline.analysis.calibration.EnergyScale;
import spotline.core.Decimal;
import spotline.core.Place;
import spotline.core.ReadException;
import spotline.holder.json.CheckedJson;
import spotline.holder.json.JsonLimits;

/** A calibration record as a JSON file. */
public final class CalibrationFile {
    /** The one format written, and the newest read. */
    public static final String FORMAT = "spotline-calibration/1";

    private static final CheckedJson JSON =
            CheckedJson.of("spotline-calibration", 1, "/spotline/schema/calibration-1.schema.json", JsonLimits.DEFAULT);

    private CalibrationFile() {}

    /** Errors: {@link ReadException} with every fault of the file. */
    public static CalibrationRecord read(Path file) throws ReadException {
        ObjectNode json = JSON.read(file);
        List<CalibrationRecord.Line> lines = new ArrayList<>();
        for (JsonNode line : json.path("lines")) {
            lines.add(new CalibrationRecord.Line(
                    line.path("line").asText(),
                    line.path("referenceEv").doubleValue(),
                    line.path("measuredEv").doubleValue(),
                    optional(line, "measurementU"),
                    optional(line, "fwhmEv"),
                    optional(line, "intensity")));
        }
        try {
            return new CalibrationRecord(
                    LocalDate.parse(json.path("date").asText()),
                    LocalDate.parse(json.path("nextDue").asText()),
                    json.path("instrument").asText(""),
                    json.path("source").asText(),
                    json.path("monochromated").asBoolean(),
                    json.path("photonEnergyEv").doubleValue(),
                    optional(json, "passEnergyEv"),
                    json.path("toleranceEv").doubleValue(),
                    json.path("a").doubleValue(),
                    json.path("bEv").doubleValue(),
                    optional(json, "standardUncertaintyEv"),
                    EnergyScale.Verdict.valueOf(json.path("verdict")
                            .asText()
                            .toUpperCase(Locale.ROOT)
                            .replace('-', '_')),
                    lines);
        } catch (IllegalArgumentException | java.time.DateTimeException e) {
            throw new ReadException(
                    Place.file(file.toString()), String.valueOf(e.getMessage()), "a calibration inside its limits");
        }
    }

    /** The record as text, a trailing line break included. */
    public static String text(CalibrationRecord record) {
        ObjectMapper mapper = new ObjectMapper();
        ObjectNode json = mapper.createObjectNode();
        json.put("format", FORMAT);
        json.put("date", record.date().toString());
        json.put("nextDue", record.nextDue().toString());
        if (!record.instrument().isEmpty()) json.put("instrument", record.instrument());
        json.put("source", record.source());
        json.put("monochromated", record.monochromated());
        json.put("photonEnergyEv", decimal(record.photonEnergyEv()));
        put(json, "passEnergyEv", record.passEnergyEv());
        json.put("toleranceEv", decimal(record.toleranceEv()));
        json.put("a", decimal(record.a()));
        json.put("bEv", decimal(record.bEv()));
        put(json, "standardUncertaintyEv", record.standardUncertaintyEv());
        json.put("verdict", word(record.verdict()));
        ArrayNode lines = json.putArray("lines");
        for (CalibrationRecord.Line line : record.lines()) {
            ObjectNode entry = lines.addObject();
            entry.put("line", line.line());
            entry.put("referenceEv", decimal(line.referenceEv()));
            entry.put("measuredEv", decimal(line.measuredEv()));
            put(entry, "measurementU", line.measurementU());
            put(entry, "fwhmEv", line.fwhmEv());
            put(entry, "intensity", line.intensity());
        }
        try {
            return mapper.writerWithDefaultPrettyPrinter().writeValueAsString(json) + "\n";
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a tree of plain values is always written", e);
        }
    }

    /** Of the file's bytes, lower-case hex. */
    static String sha256(Path file) throws ReadException {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(file)));
        } catch (IOException e) {
            throw new ReadException(Place.file(file.toString()), "a file that cannot be read", "a calibration record");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    static String word(EnergyScale.Verdict verdict) {
        return verdict.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static BigDecimal decimal(double value) {
        return new BigDecimal(Decimal.text(value));
    }

    private static void put(ObjectNode node, String field, OptionalDouble value) {
        if (value.isPresent()) node.put(field, decimal(value.getAsDouble()));
    }

    private static OptionalDouble optional(JsonNode node, String field) {
        JsonNode value = node.path(field);
        return value.isNumber() ? OptionalDouble.of(value.doubleValue()) : OptionalDouble.empty();
    }
}
