package spotline.report.json;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.NullNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Optional;
import spotline.core.Finding;
import spotline.holder.AreaMm;
import spotline.holder.DeclaredTransmission;
import spotline.holder.HolderRunFile;
import spotline.holder.Instrument;
import spotline.report.facts.MethodFacts;
import spotline.run.RunResult;
import spotline.run.SampleComposition;

/**
 * The whole run as one record: results, settings, where each came from.
 *
 * <p>It holds no time of its own making, so that the same treatment of the same files gives the same bytes.
 */
public final class ResultJson {
    public static final String FILE = "result.json";
    public static final String FORMAT = "spotline-result/1";

    private static final ObjectMapper MAPPER = new ObjectMapper();

    private ResultJson() {}

    public static byte[] of(RunResult result) {
        DefaultPrettyPrinter printer = new DefaultPrettyPrinter();
        printer.indentObjectsWith(new DefaultIndenter("  ", "\n"));
        printer.indentArraysWith(new DefaultIndenter("  ", "\n"));
        try {
            String text = MAPPER.writer(printer).writeValueAsString(tree(result));
            return (text + "\n").getBytes(StandardCharsets.UTF_8);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a tree in memory could not be written", e);
        }
    }

    private static ObjectNode tree(RunResult result) {
        ObjectNode root = JsonTree.object().put("format", FORMAT);
        root.set("programVersion", JsonTree.text(result.programVersion()));
        root.put("seed", result.seed());
        root.set("holderRun", holderRun(result.plan().file()));
        root.set(
                "files",
                JsonTree.list(
                        result.files().entrySet(),
                        file -> JsonTree.object().put("name", file.getKey()).put("sha256", file.getValue())));
        root.set("steps", JsonTree.list(MethodFacts.steps(result), JsonTree::text));
        root.put("sensitivityFactors", MethodFacts.FACTORS);
        root.set("samples", JsonTree.list(result.samples(), ResultJson::sample));
        root.set(
                "spots",
                JsonTree.list(
                        result.spots(),
                        spot -> SpotJson.of(spot, result.plan().spot(spot.spot()), result.treatments())));
        root.set("findings", JsonTree.list(result.findings(), ResultJson::finding));
        root.set("checks", ChecksJson.checks(result.ruleStates()));
        root.set("causes", ChecksJson.causes(result.led()));
        return root;
    }

    private static ObjectNode holderRun(HolderRunFile file) {
        ObjectNode node = JsonTree.object();
        node.set("title", JsonTree.text(file.title()));
        node.set("date", JsonTree.text(file.date().map(LocalDate::toString)));
        node.set("operator", JsonTree.text(file.operator()));
        node.set("holderTemplate", JsonTree.text(file.holderTemplate()));
        node.set("instrument", instrument(file.instrument()));
        node.set("silence", JsonTree.list(file.silence(), silence -> {
            ObjectNode entry = JsonTree.object().put("rule", silence.rule());
            entry.set("spot", JsonTree.text(silence.spot()));
            return entry.put("reason", silence.reason());
        }));
        return node;
    }

    private static ObjectNode instrument(Instrument instrument) {
        ObjectNode node = JsonTree.object();
        node.set("name", JsonTree.text(instrument.name()));
        node.put("source", instrument.excitation().source().word());
        node.set("photonEnergyEv", JsonTree.number(instrument.excitation().photonEnergyEv()));
        Optional<Boolean> monochromated = instrument.excitation().monochromated();
        node.put("monochromated", monochromated.orElse(null));
        node.set(
                "analysisAreaMm",
                instrument.analysisArea().<JsonNode>map(ResultJson::area).orElse(NullNode.getInstance()));
        node.set("emissionAngleDeg", JsonTree.number(instrument.emissionAngleDeg()));
        node.set("sourceAnalyserAngleDeg", JsonTree.number(instrument.sourceAnalyserAngleDeg()));
        node.put("chargeNeutraliser", instrument.chargeNeutraliser().word());
        node.set("transmission", transmission(instrument.transmission()));
        node.set("energyCalibration", JsonTree.text(instrument.energyCalibration()));
        return node;
    }

    /** As a holder run has it. */
    private static JsonNode transmission(DeclaredTransmission declared) {
        if (declared instanceof DeclaredTransmission.PowerLaw law)
            return JsonTree.object().put("power", law.power());
        if (declared instanceof DeclaredTransmission.FromFile file)
            return JsonTree.object().put("file", file.file());
        if (declared instanceof DeclaredTransmission.Unknown) return NullNode.getInstance();
        return JsonTree.text(declared instanceof DeclaredTransmission.Flat ? "flat" : "as-recorded");
    }

    private static JsonNode area(AreaMm area) {
        ObjectNode node = JsonTree.object();
        node.set("x", JsonTree.number(area.x()));
        node.set("y", JsonTree.number(area.y()));
        return node;
    }

    private static ObjectNode sample(SampleComposition sample) {
        ObjectNode node = JsonTree.object().put("sample", sample.sample());
        node.set("spots", JsonTree.list(sample.spots(), JsonTree::text));
        node.set("elements", JsonTree.list(sample.elements(), mean -> {
            ObjectNode entry = JsonTree.object().put("element", mean.element());
            entry.set("atomicPercent", JsonTree.number(mean.atomicPercent()));
            entry.set("standardUncertainty", JsonTree.number(mean.standardUncertainty()));
            return entry;
        }));
        return node;
    }

    static JsonNode finding(Finding finding) {
        ObjectNode node =
                JsonTree.object().put("severity", finding.severity().word()).put("rule", finding.rule());
        node.set("spot", JsonTree.text(finding.spot()));
        node.set("sample", JsonTree.text(finding.sample()));
        node.set("spectrum", JsonTree.text(finding.spectrum()));
        return node.put("message", finding.message());
    }
}
