package spotline.report.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.NullNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.function.Function;
import spotline.analysis.charge.ChargeEvidence;
import spotline.analysis.charge.ChargeEvidence.AugerParameterSeen;
import spotline.analysis.charge.ChargeEvidence.Candidate;
import spotline.analysis.charge.ChargeEvidence.Position;
import spotline.analysis.charge.ChargeEvidence.Rigidity;
import spotline.analysis.charge.ChargeEvidence.SiblingLine;
import spotline.analysis.charge.ChargeEvidence.TwoPotentials;
import spotline.analysis.charge.ChargeEvidence.UnmovedLine;
import spotline.analysis.charge.ChargeEvidence.Width;
import spotline.analysis.charge.ChargeReference;
import spotline.analysis.charge.Drift;
import spotline.analysis.charge.FermiEdge;
import spotline.analysis.charge.ReferenceLineFit;
import spotline.core.Estimate;
import spotline.reference.AugerParameter;

/** The energy reference of a spot in the record: the decision, and all that speaks for and against it. */
final class ChargeJson {
    private ChargeJson() {}

    static JsonNode of(ChargeReference charge) {
        ObjectNode node = JsonTree.object().put("method", charge.method().word());
        node.set("referenceLine", JsonTree.text(charge.referenceLine()));
        node.set("referenceEv", JsonTree.number(charge.referenceEv()));
        node.set("measuredEv", JsonTree.number(charge.measuredEv()));
        node.set("shiftEv", JsonTree.number(charge.shiftEv()));
        node.set("measurementU", JsonTree.number(charge.measurementU()));
        node.set("referenceU", JsonTree.number(charge.referenceU()));
        node.set("standardUncertainty", JsonTree.number(charge.standardUncertainty()));
        node.put("verdict", charge.verdict().word());
        node.set("sentence", JsonTree.text(charge.sentence()));
        node.put("energyScale", charge.scale());
        node.set("fit", optional(charge.fit(), ChargeJson::fit));
        node.set("evidence", evidence(charge.evidence()));
        return node;
    }

    private static <T> JsonNode optional(Optional<T> value, Function<T, JsonNode> each) {
        return value.map(each).orElse(NullNode.getInstance());
    }

    private static JsonNode fit(ReferenceLineFit fit) {
        ObjectNode node = JsonTree.object().put("line", fit.line()).put("spectrum", fit.spectrum());
        node.set("reducedChiSquare", JsonTree.number(fit.reducedChiSquare()));
        node.set("components", JsonTree.list(fit.components(), component -> {
            ObjectNode entry = JsonTree.object().put("name", component.name()).put("shape", component.shape());
            entry.set("position", SpotJson.estimate(component.position()));
            entry.set("fwhm", SpotJson.estimate(component.fwhm()));
            entry.set("area", SpotJson.estimate(component.area()));
            return entry;
        }));
        return node;
    }

    private static JsonNode evidence(ChargeEvidence evidence) {
        ObjectNode node = JsonTree.object();
        node.set("declared", JsonTree.list(evidence.declared(), JsonTree::text));
        node.set("positions", JsonTree.list(evidence.positions(), ChargeJson::position));
        node.set("widths", JsonTree.list(evidence.widths(), ChargeJson::width));
        node.set("drift", optional(evidence.drift(), ChargeJson::drift));
        node.set("movedTogether", optional(evidence.rigidity(), ChargeJson::rigidity));
        node.set("twoPotentials", optional(evidence.shape(), ChargeJson::shape));
        node.set("secondReference", optional(evidence.check(), ChargeJson::candidate));
        node.set("otherReferences", JsonTree.list(evidence.candidates(), ChargeJson::candidate));
        node.set("siblingSpots", JsonTree.list(evidence.siblings(), ChargeJson::sibling));
        node.set("augerParameters", JsonTree.list(evidence.augerParameters(), ChargeJson::auger));
        node.set("unmovedMetalLines", JsonTree.list(evidence.unmoved(), ChargeJson::unmoved));
        node.set("fermiEdge", optional(evidence.fermiEdge(), ChargeJson::edge));
        return node;
    }

    private static JsonNode position(Position position) {
        ObjectNode node = JsonTree.object().put("line", position.line()).put("spectrum", position.spectrum());
        node.set("measured", SpotJson.estimate(position.measured()));
        node.set("shiftEv", JsonTree.number(position.shiftEv()));
        node.set("referenced", estimate(position.referenced()));
        node.set("fromReferenceLine", estimate(position.fromReferenceLine()));
        return node;
    }

    private static JsonNode estimate(Optional<Estimate> estimate) {
        return optional(estimate, SpotJson::estimate);
    }

    private static JsonNode width(Width width) {
        ObjectNode node = JsonTree.object()
                .put("line", width.line())
                .put("component", width.component())
                .put("spectrum", width.spectrum());
        node.set("passEnergyEv", JsonTree.number(width.passEnergyEv()));
        node.set("fwhm", SpotJson.estimate(width.fwhm()));
        node.set("narrowest", estimate(width.narrowest()));
        node.set("narrowestSpot", JsonTree.text(width.narrowestSpot()));
        node.set("extraEv", JsonTree.number(width.extraEv()));
        return node;
    }

    private static JsonNode drift(Drift drift) {
        ObjectNode node = JsonTree.object().put("line", drift.line());
        node.set("lastLessFirst", SpotJson.estimate(drift.changeEv()));
        node.set("slopeEvPerHour", estimate(drift.slopeEvPerHour()));
        node.set("scans", JsonTree.list(drift.scans(), scan -> {
            ObjectNode entry = JsonTree.object().put("spectrum", scan.spectrum());
            entry.set("middle", JsonTree.text(scan.middle().map(OffsetDateTime::toString)));
            entry.set("position", SpotJson.estimate(scan.position()));
            return entry;
        }));
        return node;
    }

    private static JsonNode rigidity(Rigidity rigidity) {
        ObjectNode node = JsonTree.object().put("together", rigidity.together());
        node.set("meanEv", JsonTree.number(rigidity.meanEv()));
        node.set("largestDepartureEv", JsonTree.number(rigidity.largestEv()));
        node.set("lines", JsonTree.list(rigidity.lines(), moved -> {
            ObjectNode entry = JsonTree.object().put("line", moved.line());
            entry.set("change", SpotJson.estimate(moved.changeEv()));
            return entry;
        }));
        return node;
    }

    private static JsonNode shape(TwoPotentials shape) {
        ObjectNode node = JsonTree.object().put("asked", shape.asked());
        node.set("separationEv", JsonTree.number(shape.separationEv()));
        node.set("separationU", JsonTree.number(shape.separationU()));
        node.set("share", JsonTree.number(shape.share()));
        node.set("devianceGain", JsonTree.number(shape.devianceGain()));
        node.set("widthGain", JsonTree.number(shape.widthGain()));
        return node;
    }

    private static JsonNode candidate(Candidate candidate) {
        ObjectNode node = JsonTree.object()
                .put("method", candidate.method().word())
                .put("line", candidate.line())
                .put("spectrum", candidate.spectrum());
        node.set("state", JsonTree.text(candidate.state()));
        node.set("measured", SpotJson.estimate(candidate.measured()));
        node.set("referenceEv", JsonTree.number(candidate.referenceEv()));
        node.set("referenceU", JsonTree.number(candidate.referenceU()));
        node.set("shiftEv", JsonTree.number(candidate.shiftEv()));
        node.set("standardUncertainty", JsonTree.number(candidate.standardUncertainty()));
        node.put("onlyStateNear", candidate.alone());
        node.set("source", JsonTree.text(candidate.source()));
        return node;
    }

    private static JsonNode sibling(SiblingLine sibling) {
        ObjectNode node = JsonTree.object().put("line", sibling.line()).put("spot", sibling.otherSpot());
        node.set("difference", SpotJson.estimate(sibling.differenceEv()));
        return node;
    }

    private static JsonNode auger(AugerParameterSeen seen) {
        ObjectNode node = JsonTree.object()
                .put("line", seen.line().toString())
                .put("transition", seen.transition())
                .put("spectrum", seen.spectrum());
        node.set("parameter", SpotJson.estimate(seen.parameter()));
        node.set("measuredBinding", SpotJson.estimate(seen.bindingEv()));
        node.set("measuredKinetic", SpotJson.estimate(seen.kineticEv()));
        node.set("referencedBindingEv", JsonTree.number(seen.referencedBindingEv()));
        node.set("referencedKineticEv", JsonTree.number(seen.referencedKineticEv()));
        node.set("nearestState", JsonTree.text(seen.nearest().map(AugerParameter::state)));
        node.set("listed", JsonTree.list(seen.listed(), listed -> {
            ObjectNode entry = JsonTree.object().put("state", listed.state());
            entry.set("bindingEv", JsonTree.number(listed.bindingEv()));
            entry.set("kineticEv", JsonTree.number(listed.augerKineticEv()));
            entry.set("parameterEv", JsonTree.number(listed.modifiedAugerParameterEv()));
            entry.put("source", listed.source());
            return entry;
        }));
        return node;
    }

    private static JsonNode unmoved(UnmovedLine unmoved) {
        ObjectNode node =
                JsonTree.object().put("line", unmoved.line().toString()).put("spectrum", unmoved.spectrum());
        node.set("measuredEv", JsonTree.number(unmoved.measuredEv()));
        node.set("metalEv", JsonTree.number(unmoved.metalEv()));
        return node;
    }

    private static JsonNode edge(FermiEdge edge) {
        ObjectNode node = JsonTree.object().put("spectrum", edge.spectrum());
        node.set("position", SpotJson.estimate(edge.positionEv()));
        node.set("instrumentFwhm", SpotJson.estimate(edge.instrumentFwhmEv()));
        node.set("temperatureK", JsonTree.number(edge.temperatureK()));
        node.set("width1090Ev", JsonTree.number(edge.width1090Ev()));
        node.set("reducedChiSquare", JsonTree.number(edge.reducedChiSquare()));
        return node;
    }
}
