package spotline.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.OptionalDouble;
import spotline.analysis.identify.ElementSeen;
import spotline.analysis.identify.Evidence;
import spotline.analysis.identify.Feature;
import spotline.analysis.identify.HeaderDoubt;
import spotline.analysis.identify.Identification;
import spotline.analysis.identify.LineSeen;
import spotline.analysis.identify.QuickShare;
import spotline.analysis.identify.ScanProposal;
import spotline.core.Decimal;
import spotline.formats.Block;
import spotline.formats.SpectrumFile;

/** An identification as JSON; what is not known is null. */
final class IdentificationJson {
    private IdentificationJson() {}

    static ObjectNode of(SpectrumFile file, Block block, Identification result) {
        ObjectNode node = new ObjectMapper().createObjectNode();
        node.put("file", file.name());
        node.put("sha256", file.sha256());
        node.put("block", block.number());
        number(node, "shiftEv", result.shiftEv());
        result.detail().ifPresent(d -> {
            number(node, "shiftLowEv", d.shiftLowEv());
            number(node, "shiftHighEv", d.shiftHighEv());
            node.put("shiftReason", d.shiftReason());
        });
        ArrayNode elements = node.putArray("elements");
        for (ElementSeen e : result.elements()) elements.add(element(e));
        result.detail().ifPresent(d -> detail(node, d));
        return node;
    }

    private static ObjectNode element(ElementSeen e) {
        ObjectNode node = new ObjectMapper().createObjectNode();
        node.put("element", e.element());
        node.put("verdict", e.verdict().word());
        number(node, "significance", e.significance());
        number(node, "likelihoodGain", e.evidence().likelihoodGain());
        ArrayNode lines = node.putArray("lines");
        for (LineSeen line : e.lines()) {
            ObjectNode one = lines.addObject();
            one.put("line", line.line());
            number(one, "energyEv", line.energyEv());
            number(one, "significance", line.significance());
            number(one, "ratioToExpected", line.ratioToExpected());
        }
        ArrayNode missing = node.putArray("missing");
        for (Evidence.LineMissing m : e.evidence().missing()) {
            ObjectNode one = missing.addObject();
            one.put("line", m.line());
            number(one, "energyEv", m.energyEv());
            number(one, "expectedSignificance", m.expectedSignificance());
            number(one, "significance", m.significance());
        }
        ArrayNode overlaps = node.putArray("overlaps");
        e.evidence().overlaps().forEach(overlaps::add);
        ArrayNode alternatives = node.putArray("alternatives");
        for (Evidence.Alternative a : e.evidence().alternatives()) {
            ObjectNode one = alternatives.addObject();
            one.put("explanation", a.explanation());
            number(one, "likelihoodGain", a.likelihoodGain());
        }
        ArrayNode reasons = node.putArray("reasons");
        e.evidence().reasons().forEach(reasons::add);
        return node;
    }

    private static void detail(ObjectNode node, Identification.Detail d) {
        ArrayNode composition = node.putArray("composition");
        for (QuickShare share : d.composition()) {
            ObjectNode one = composition.addObject();
            one.put("element", share.element());
            one.put("line", share.line());
            number(one, "atomicPercent", share.atomicPercent().value());
            number(one, "standardUncertainty", share.atomicPercent().standardUncertainty());
        }
        ArrayNode unassigned = node.putArray("unassigned");
        for (Feature f : d.features()) {
            ObjectNode one = unassigned.addObject();
            number(one, "energyEv", f.peak().energyEv());
            number(one, "significance", f.peak().significance());
            ArrayNode explanations = one.putArray("explanations");
            f.explanations().forEach(explanations::add);
        }
        ArrayNode doubts = node.putArray("headerDoubts");
        for (HeaderDoubt doubt : d.doubts()) {
            ObjectNode one = doubts.addObject();
            one.put("sentence", doubt.sentence());
            number(one, "photonEnergyEv", doubt.photonEnergyEv());
        }
        ArrayNode proposals = node.putArray("proposedNarrowScans");
        for (ScanProposal p : d.proposals()) {
            ObjectNode one = proposals.addObject();
            one.put("line", p.line());
            number(one, "lowEv", p.window().lowEv());
            number(one, "highEv", p.window().highEv());
            number(one, "seconds", p.seconds());
            number(one, "relativeUncertainty", p.relativeUncertainty());
        }
    }

    private static void number(ObjectNode node, String name, OptionalDouble value) {
        number(node, name, value.orElse(Double.NaN));
    }

    private static void number(ObjectNode node, String name, double value) {
        if (Double.isFinite(value)) node.put(name, new BigDecimal(Decimal.text(value)));
        else node.putNull(name);
    }
}
