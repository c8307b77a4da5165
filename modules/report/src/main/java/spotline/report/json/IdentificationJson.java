package spotline.report.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.NullNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import java.util.Optional;
import spotline.analysis.identify.ElementSeen;
import spotline.analysis.identify.Evidence;
import spotline.analysis.identify.Feature;
import spotline.analysis.identify.HeaderDoubt;
import spotline.analysis.identify.Identification;
import spotline.analysis.identify.LineSeen;
import spotline.analysis.identify.QuickShare;
import spotline.analysis.identify.ScanProposal;
import spotline.analysis.identify.SurveyPeak;

/** What a survey shows, with the evidence; the model's curves are left out. */
final class IdentificationJson {
    private IdentificationJson() {}

    /** Null where no survey was searched. */
    static JsonNode of(Optional<Identification> found) {
        if (found.isEmpty()) return NullNode.getInstance();
        Identification identification = found.get();
        ObjectNode node = JsonTree.object();
        node.set("workingShiftEv", JsonTree.number(identification.shiftEv()));
        identification.detail().ifPresent(d -> {
            node.set("shiftLowEv", JsonTree.number(d.shiftLowEv()));
            node.set("shiftHighEv", JsonTree.number(d.shiftHighEv()));
            node.put("shiftReason", d.shiftReason());
        });
        node.set("elements", JsonTree.list(identification.elements(), IdentificationJson::element));
        if (identification.detail().isEmpty()) {
            node.set("unassigned", JsonTree.list(identification.unassigned(), IdentificationJson::peak));
            return node;
        }
        Identification.Detail detail = identification.detail().get();
        node.set("unassigned", JsonTree.list(detail.features(), IdentificationJson::feature));
        node.set("headerDoubts", JsonTree.list(detail.doubts(), IdentificationJson::doubt));
        node.set("quickComposition", JsonTree.list(detail.composition(), IdentificationJson::share));
        node.set("proposedNarrowScans", JsonTree.list(detail.proposals(), IdentificationJson::proposal));
        node.set("reducedMisfit", JsonTree.number(detail.reducedMisfit()));
        return node;
    }

    private static JsonNode element(ElementSeen seen) {
        ObjectNode node = JsonTree.object()
                .put("element", seen.element())
                .put("verdict", seen.verdict().word());
        node.set("significance", JsonTree.number(seen.significance()));
        node.set("lines", JsonTree.list(seen.lines(), IdentificationJson::line));
        Evidence evidence = seen.evidence();
        node.set("likelihoodGain", JsonTree.number(evidence.likelihoodGain()));
        node.set("missing", JsonTree.list(evidence.missing(), IdentificationJson::missing));
        node.set("overlaps", JsonTree.list(evidence.overlaps(), JsonTree::text));
        node.set("alternatives", JsonTree.list(evidence.alternatives(), IdentificationJson::alternative));
        node.set("reasons", JsonTree.list(evidence.reasons(), JsonTree::text));
        return node;
    }

    private static JsonNode line(LineSeen line) {
        ObjectNode node = JsonTree.object().put("line", line.line());
        node.set("measuredEv", JsonTree.number(line.energyEv()));
        node.set("significance", JsonTree.number(line.significance()));
        node.set("ratioToExpected", JsonTree.number(line.ratioToExpected()));
        return node;
    }

    private static JsonNode missing(Evidence.LineMissing line) {
        ObjectNode node = JsonTree.object().put("line", line.line());
        node.set("expectedEv", JsonTree.number(line.energyEv()));
        node.set("expectedSignificance", JsonTree.number(line.expectedSignificance()));
        node.set("significance", JsonTree.number(line.significance()));
        return node;
    }

    private static JsonNode alternative(Evidence.Alternative alternative) {
        ObjectNode node = JsonTree.object().put("explanation", alternative.explanation());
        node.set("likelihoodGain", JsonTree.number(alternative.likelihoodGain()));
        return node;
    }

    private static ObjectNode peak(SurveyPeak peak) {
        ObjectNode node = JsonTree.object();
        node.set("measuredEv", JsonTree.number(peak.energyEv()));
        node.set("significance", JsonTree.number(peak.significance()));
        return node;
    }

    private static JsonNode feature(Feature feature) {
        ObjectNode node = peak(feature.peak());
        node.set("explanations", JsonTree.list(feature.explanations(), JsonTree::text));
        return node;
    }

    private static JsonNode doubt(HeaderDoubt doubt) {
        ObjectNode node = JsonTree.object();
        node.put("kind", doubt.kind().name().toLowerCase(Locale.ROOT).replace('_', ' '));
        node.set("photonEnergyEv", JsonTree.number(doubt.photonEnergyEv()));
        node.set("explainedAsGiven", JsonTree.number(doubt.asGiven()));
        node.set("explainedAsSuggested", JsonTree.number(doubt.asSuggested()));
        node.put("sentence", doubt.sentence());
        return node;
    }

    private static JsonNode share(QuickShare share) {
        ObjectNode node = JsonTree.object().put("element", share.element()).put("line", share.line());
        node.set("atomicPercent", JsonTree.number(share.atomicPercent().value()));
        node.set("standardUncertainty", JsonTree.number(share.atomicPercent().standardUncertainty()));
        return node;
    }

    private static JsonNode proposal(ScanProposal proposal) {
        ObjectNode node = JsonTree.object().put("element", proposal.element()).put("line", proposal.line());
        node.set("windowLowEv", JsonTree.number(proposal.window().lowEv()));
        node.set("windowHighEv", JsonTree.number(proposal.window().highEv()));
        node.set("relativeUncertainty", JsonTree.number(proposal.relativeUncertainty()));
        node.set("seconds", JsonTree.number(proposal.seconds()));
        return node;
    }
}
