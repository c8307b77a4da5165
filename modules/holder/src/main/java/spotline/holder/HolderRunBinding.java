package spotline.holder;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.holder.SpectrumEntry.OrdinateKind;
import spotline.holder.SpectrumEntry.PhotonEnergyOverride;
import spotline.holder.SpectrumEntry.Scale;
import spotline.holder.SpectrumEntry.TextColumns;

/** Makes the records out of a JSON object that the schema and the cross-checks have accepted. */
final class HolderRunBinding {
    private HolderRunBinding() {}

    static HolderRunFile bind(ObjectNode root) {
        Fields file = new Fields(root);
        return new HolderRunFile(
                file.mustText("format"),
                file.text("title"),
                file.date("date"),
                file.text("operator"),
                file.object("holder").flatMap(holder -> holder.text("template")),
                file.object("instrument").map(HolderRunBinding::instrument).orElse(Instrument.UNKNOWN),
                specimens(file),
                file.list("spots", HolderRunBinding::spot),
                file.patch("treatment"),
                families(root.path("families") instanceof ObjectNode node ? Optional.of(node) : Optional.empty()),
                file.list("silence", HolderRunBinding::silence),
                file.object("localRiskReview").map(HolderRunBinding::review));
    }

    private static Map<String, ObjectNode> families(Optional<ObjectNode> node) {
        Map<String, ObjectNode> families = new LinkedHashMap<>();
        node.ifPresent(present ->
                present.fieldNames().forEachRemaining(name -> families.put(name, new Fields(present).patch(name))));
        return families;
    }

    private static Instrument instrument(Fields fields) {
        return new Instrument(
                fields.text("name"),
                fields.object("excitation")
                        .map(HolderRunBinding::excitation)
                        .orElse(Instrument.DeclaredExcitation.UNKNOWN),
                fields.object("analysisAreaMm").map(area -> new AreaMm(area.mustNumber("x"), area.mustNumber("y"))),
                fields.number("emissionAngleDeg"),
                fields.number("sourceAnalyserAngleDeg"),
                fields.word("chargeNeutraliser", NeutraliserState.UNKNOWN),
                transmission(fields),
                fields.text("energyCalibration"));
    }

    private static Instrument.DeclaredExcitation excitation(Fields fields) {
        return new Instrument.DeclaredExcitation(
                fields.word("source", ExcitationSource.UNKNOWN),
                fields.number("photonEnergyEv"),
                fields.truth("monochromated"));
    }

    private static DeclaredTransmission transmission(Fields instrument) {
        Optional<Fields> declared = instrument.object("transmission");
        if (declared.isEmpty()) return new DeclaredTransmission.Unknown();
        Fields form = declared.get();
        if (form.node().isTextual()) {
            return form.node().asText().equals("flat")
                    ? new DeclaredTransmission.Flat()
                    : new DeclaredTransmission.AsRecorded();
        }
        OptionalDouble power = form.number("power");
        return power.isPresent()
                ? new DeclaredTransmission.PowerLaw(power.getAsDouble())
                : new DeclaredTransmission.FromFile(form.mustText("file"));
    }

    /** A specimen without an id cannot be named by a spot; it is called by its place in the list. */
    private static List<Specimen> specimens(Fields file) {
        List<Fields> entries = file.list("specimens", fields -> fields);
        List<Specimen> specimens = new ArrayList<>();
        for (int i = 0; i < entries.size(); i++) {
            specimens.add(specimen(entries.get(i), "number " + (i + 1)));
        }
        return specimens;
    }

    private static Specimen specimen(Fields fields, String placeName) {
        return new Specimen(
                fields.text("id").orElse(placeName),
                Optional.empty(),
                fields.object("centreMm").map(point -> new PointMm(point.mustNumber("x"), point.mustNumber("y"))),
                fields.object("outlineMm").map(HolderRunBinding::outline),
                fields.number("rotationDeg").orElse(0),
                fields.number("thicknessMm"),
                fields.object("sample").map(HolderRunBinding::sample),
                fields.object("mount").map(HolderRunBinding::mount).orElse(Mount.UNKNOWN));
    }

    private static Outline outline(Fields fields) {
        double width = fields.mustNumber("width");
        double height = fields.mustNumber("height");
        return fields.mustText("shape").equals("ellipse")
                ? new Outline.Ellipse(width, height)
                : new Outline.Rectangle(width, height);
    }

    private static Sample sample(Fields fields) {
        return new Sample(
                fields.text("id"),
                fields.mustText("name"),
                fields.text("owner"),
                fields.word("form", SampleForm.UNKNOWN),
                fields.text("family"),
                fields.word("conductivity", Conductivity.UNKNOWN),
                fields.word("carbon", CarbonOrigin.UNKNOWN),
                fields.texts("expectedElements"),
                fields.text("history"),
                fields.text("storage"),
                fields.text("hazards"),
                fields.text("notes"));
    }

    private static Mount mount(Fields fields) {
        return new Mount(
                fields.word("method", MountMethod.UNKNOWN),
                fields.word("electricalState", ElectricalState.UNKNOWN),
                fields.texts("materials"),
                fields.number("resistanceOhm"),
                fields.text("notes"));
    }

    private static SpotEntry spot(Fields fields) {
        Optional<Fields> mount = fields.object("mount");
        return new SpotEntry(
                fields.mustText("id"),
                fields.text("specimen"),
                fields.number("xMm"),
                fields.number("yMm"),
                fields.number("zMm"),
                fields.number("tiltDeg"),
                fields.number("emissionAngleDeg"),
                fields.object("sample").map(HolderRunBinding::sample),
                mount.map(HolderRunBinding::mount),
                mount.flatMap(present -> present.object("outlineMm")).map(HolderRunBinding::outline),
                mount.map(present -> present.number("thicknessMm")).orElse(OptionalDouble.empty()),
                fields.list("spectra", HolderRunBinding::spectrum),
                fields.patch("treatment"));
    }

    private static SpectrumEntry spectrum(Fields fields) {
        return new SpectrumEntry(
                fields.mustText("file"),
                fields.integers("blocks"),
                fields.word("role", SpectrumRole.UNKNOWN),
                fields.object("columns").map(HolderRunBinding::columns),
                fields.object("override")
                        .map(override -> new PhotonEnergyOverride(
                                override.mustNumber("photonEnergyEv"), override.mustText("reason"))));
    }

    private static TextColumns columns(Fields fields) {
        return new TextColumns(
                fields.integer("energy").orElseThrow(),
                fields.integer("ordinate").orElseThrow(),
                fields.word("scale", Scale.BINDING),
                fields.word("ordinateKind", OrdinateKind.UNKNOWN),
                fields.number("dwellSeconds"),
                fields.integer("scans"),
                fields.number("passEnergyEv"),
                fields.mustNumber("photonEnergyEv"));
    }

    private static Silence silence(Fields fields) {
        return new Silence(fields.mustText("rule"), fields.text("spot"), fields.mustText("reason"));
    }

    private static LocalRiskReview review(Fields fields) {
        return new LocalRiskReview(fields.mustText("by"), fields.date("date"));
    }
}
