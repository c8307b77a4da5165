package spotline.report.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.NullNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.OffsetDateTime;
import java.util.Map;
import java.util.Optional;
import spotline.analysis.intensity.Intensity;
import spotline.analysis.quantify.Quantified;
import spotline.analysis.quantify.StateShare;
import spotline.analysis.quantify.UncertaintyBudget;
import spotline.analysis.quantify.UncertaintySource;
import spotline.core.Estimate;
import spotline.holder.SpectrumRole;
import spotline.holder.Spot;
import spotline.report.facts.RowState;
import spotline.report.facts.Spectra;
import spotline.run.FittedPeak;
import spotline.run.LinkedSpectrum;
import spotline.run.MeasuredIntensity;
import spotline.run.SpotResult;

/** One spot in the record. */
final class SpotJson {
    private SpotJson() {}

    static ObjectNode of(SpotResult spot, Optional<Spot> declared, Map<String, JsonNode> treatments) {
        ObjectNode node = JsonTree.object().put("spot", spot.spot());
        node.set("sample", JsonTree.text(spot.sample()));
        node.set("electricalState", JsonTree.text(spot.electricalState()));
        node.set("declared", declared.<JsonNode>map(SpotJson::declared).orElse(NullNode.getInstance()));
        node.set("spectra", JsonTree.list(spot.spectra(), SpotJson::spectrum));
        node.set("identification", IdentificationJson.of(spot.identification()));
        node.set("charge", ChargeJson.of(spot.charge()));
        node.set("intensities", JsonTree.list(spot.intensities(), measured -> intensity(spot, measured)));
        node.set("peaks", JsonTree.list(spot.peaks(), peak -> peak(spot, peak)));
        node.set("composition", JsonTree.list(spot.composition(), row -> row(spot, row)));
        node.set("variants", JsonTree.list(spot.variants(), variant -> {
            ObjectNode entry = JsonTree.object().put("variant", variant.name());
            entry.set("composition", JsonTree.list(variant.rows(), row -> row(spot, row)));
            return entry;
        }));
        node.set("states", JsonTree.list(spot.states(), SpotJson::state));
        node.set("findings", JsonTree.list(spot.findings(), ResultJson::finding));
        JsonNode treatment = treatments.get(spot.spot());
        node.set("treatment", treatment == null ? NullNode.getInstance() : JsonTree.settings(treatment));
        return node;
    }

    /** What of the record enters numbers or how they are judged. */
    private static ObjectNode declared(Spot spot) {
        ObjectNode node = JsonTree.object().put("purpose", spot.purpose().word());
        node.put("mount", spot.mount().method().word());
        node.set("materials", JsonTree.list(spot.mount().materials(), JsonTree::text));
        spot.sample().ifPresent(sample -> {
            node.put("form", sample.form().word());
            node.put("conductivity", sample.conductivity().word());
            node.put("carbon", sample.carbon().word());
            node.set("expectedElements", JsonTree.list(sample.expectedElements(), JsonTree::text));
        });
        return node;
    }

    private static JsonNode spectrum(LinkedSpectrum spectrum) {
        ObjectNode node = JsonTree.object().put("label", spectrum.label());
        node.put("file", spectrum.source().file());
        node.set("sha256", JsonTree.text(spectrum.source().sha256()));
        node.put("block", spectrum.source().block());
        node.put("line", spectrum.source().line());
        node.set("step", JsonTree.text(spectrum.source().step()));
        node.set("region", JsonTree.text(spectrum.region()));
        node.put("survey", spectrum.survey());
        node.set(
                "role",
                JsonTree.text(
                        spectrum.role() == SpectrumRole.UNKNOWN
                                ? ""
                                : spectrum.role().word()));
        node.set("time", JsonTree.text(spectrum.time().map(OffsetDateTime::toString)));
        node.set("photonEnergyEv", JsonTree.number(spectrum.scan().photonEnergyEv()));
        node.set("passEnergyEv", JsonTree.number(spectrum.scan().passEnergyEv()));
        node.set("secondsPerChannel", JsonTree.number(spectrum.scan().secondsPerChannel()));
        node.put("countsKnown", spectrum.scan().countsKnown());
        node.put("channels", spectrum.scan().channels());
        node.set("lowEv", JsonTree.number(spectrum.scan().range().lowEv()));
        node.set("highEv", JsonTree.number(spectrum.scan().range().highEv()));
        node.set("stepEv", JsonTree.number(spectrum.scan().stepEv()));
        node.put("transmission", spectrum.transmission().describe());
        return node;
    }

    private static JsonNode intensity(SpotResult spot, MeasuredIntensity measured) {
        Intensity intensity = measured.intensity();
        ObjectNode node = JsonTree.object()
                .put("line", intensity.line().toString())
                .put("spectrum", intensity.spectrum())
                .put("basis", measured.basis().word());
        node.set("peakEv", JsonTree.number(intensity.peakEv()));
        node.set("fwhmEv", JsonTree.number(intensity.fwhmEv()));
        node.set("windowLowEv", JsonTree.number(intensity.window().lowEv()));
        node.set("windowHighEv", JsonTree.number(intensity.window().highEv()));
        node.put("background", intensity.background());
        node.set("area", estimate(intensity.area()));
        node.put("areaUnit", Spectra.areaUnit(spot, intensity.spectrum()));
        node.put("detected", intensity.detected());
        node.set("criticalLevel", JsonTree.number(intensity.criticalLevel()));
        node.set("detectionLimit", JsonTree.number(intensity.detectionLimit()));
        node.set("transmissionApplied", JsonTree.text(measured.transmissionApplied()));
        return node;
    }

    private static JsonNode peak(SpotResult spot, FittedPeak peak) {
        ObjectNode node = JsonTree.object()
                .put("spectrum", peak.spectrum())
                .put("line", peak.line())
                .put("peak", peak.peak())
                .put("shape", peak.shape());
        node.set("measuredPosition", estimate(peak.measuredPosition()));
        node.set("referencedPositionEv", JsonTree.number(peak.referencedEv()));
        node.set("fwhm", estimate(peak.fwhm()));
        node.set("area", estimate(peak.area()));
        node.put("areaUnit", Spectra.areaUnit(spot, peak.spectrum()));
        node.set("reducedChiSquare", JsonTree.number(peak.reducedChiSquare()));
        return node;
    }

    private static JsonNode state(StateShare state) {
        ObjectNode node = JsonTree.object()
                .put("element", state.element())
                .put("line", state.line())
                .put("state", state.state());
        node.set("atomicPercent", state.atomicPercent().map(SpotJson::estimate).orElse(NullNode.getInstance()));
        node.set("fractionOfElement", estimate(state.fractionOfElement()));
        return node;
    }

    private static JsonNode row(SpotResult spot, Quantified row) {
        ObjectNode node = JsonTree.object().put("element", row.element());
        node.set("atomicPercent", row.atomicPercent().map(SpotJson::estimate).orElse(NullNode.getInstance()));
        node.set("statisticalUncertainty", JsonTree.number(row.statisticalU()));
        node.set("budget", row.budget().map(SpotJson::budget).orElse(NullNode.getInstance()));
        node.set("line", JsonTree.text(row.line()));
        node.set("spectrum", JsonTree.text(row.spectrum()));
        node.put("basis", row.basis().word());
        node.put("belowDetection", row.belowDetection());
        node.set("detectionLimit", JsonTree.number(row.detectionLimit()));
        node.set("withheldBecause", JsonTree.text(RowState.of(spot, row).reason()));
        return node;
    }

    /** Every group of sources, whether it contributes or not: at.%, the squares add up to that of the whole. */
    private static JsonNode budget(UncertaintyBudget budget) {
        ObjectNode node = JsonTree.object();
        for (UncertaintySource group : UncertaintySource.values()) {
            node.set(group.field(), JsonTree.number(budget.part(group)));
        }
        return node;
    }

    /** Value, standard uncertainty, and what each source contributes to it. */
    static JsonNode estimate(Estimate estimate) {
        ObjectNode node = JsonTree.object();
        node.set("value", JsonTree.number(estimate.value()));
        node.set("standardUncertainty", JsonTree.number(estimate.standardUncertainty()));
        ObjectNode contributions = JsonTree.object();
        for (String source : estimate.sources()) {
            contributions.set(source, JsonTree.number(estimate.contribution(source)));
        }
        node.set("contributions", contributions);
        return node;
    }
}
