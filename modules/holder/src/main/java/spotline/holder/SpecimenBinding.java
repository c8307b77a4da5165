package spotline.holder;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Makes specimens, samples and mounts out of JSON objects that the schema and the cross-checks have accepted. */
final class SpecimenBinding {
    private SpecimenBinding() {}

    /** A specimen without an id cannot be named by a spot; it is called by its place in the list. */
    static List<Specimen> specimens(Fields file) {
        List<Specimen> specimens = new ArrayList<>();
        for (Fields fields : file.entries("specimens")) {
            specimens.add(specimen(fields, "number " + (specimens.size() + 1)));
        }
        return specimens;
    }

    private static Specimen specimen(Fields fields, String placeName) {
        Optional<Mount> mount = mount(fields);
        return new Specimen(
                fields.text("id").orElse(placeName),
                Optional.empty(),
                fields.point("centreMm"),
                outline(fields, "outlineMm"),
                fields.number("rotationDeg").orElse(0),
                fields.number("thicknessMm"),
                sample(fields),
                mount.orElse(Mount.UNKNOWN),
                transfer(fields));
    }

    static Optional<Outline> outline(Fields parent, String name) {
        if (!parent.has(name)) return Optional.empty();
        Fields fields = parent.must(name);
        return Optional.of(
                switch (fields.mustText("shape")) {
                    case "polygon" ->
                        new Outline.Polygon(TemplateBinding.points(fields.node().path("cornersMm")));
                    case "ellipse" -> new Outline.Ellipse(fields.mustNumber("width"), fields.mustNumber("height"));
                    default -> new Outline.Rectangle(fields.mustNumber("width"), fields.mustNumber("height"));
                });
    }

    static Optional<Sample> sample(Fields parent) {
        if (!parent.has("sample")) return Optional.empty();
        Fields fields = parent.must("sample");
        List<Sensitivity> sensitivities = new ArrayList<>();
        for (String word : fields.texts("sensitivities")) sensitivities.add(Fields.choice(word, Sensitivity.AIR));
        return Optional.of(new Sample(
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
                fields.text("surface"),
                sensitivities,
                stability(fields),
                fields.number("resistivityOhmCm"),
                fields.number("filmThicknessUm"),
                fields.text("notes"),
                openingSentence(fields)));
    }

    private static Optional<OpeningSentence> openingSentence(Fields sample) {
        if (!sample.has("openingSentence")) return Optional.empty();
        Fields fields = sample.must("openingSentence");
        return Optional.of(new OpeningSentence(fields.truth("accepted").orElse(false), fields.text("by")));
    }

    private static StabilityLimits stability(Fields sample) {
        if (!sample.has("stability")) return StabilityLimits.UNKNOWN;
        Fields fields = sample.must("stability");
        return new StabilityLimits(fields.number("minC"), fields.number("maxC"), fields.text("basis"));
    }

    static Optional<Mount> mount(Fields parent) {
        if (!parent.has("mount")) return Optional.empty();
        Fields fields = parent.must("mount");
        List<Clip> clips = new ArrayList<>();
        for (Fields clip : fields.entries("clips")) clips.add(clip(clip));
        return Optional.of(new Mount(
                fields.word("method", MountMethod.UNKNOWN),
                fields.word("electricalState", ElectricalState.UNKNOWN),
                fields.texts("materials"),
                fields.number("resistanceOhm"),
                outline(fields, "tapePatchMm"),
                clips,
                fields.truth("strap"),
                fields.number("maxTemperatureC"),
                fields.text("seat"),
                powder(fields),
                fields.text("notes")));
    }

    private static Clip clip(Fields fields) {
        return new Clip(
                fields.text("name"),
                fields.text("material"),
                fields.point("centreMm"),
                outline(fields, "outlineMm"),
                fields.number("rotationDeg").orElse(0));
    }

    private static Optional<PowderRecord> powder(Fields mount) {
        if (!mount.has("powder")) return Optional.empty();
        Fields fields = mount.must("powder");
        return Optional.of(new PowderRecord(
                fields.word("quantity", PowderRecord.Quantity.UNKNOWN),
                fields.truth("looseGrainsRemoved"),
                fields.number("tapeShowing")));
    }

    static Optional<Transfer> transfer(Fields parent) {
        if (!parent.has("transfer")) return Optional.empty();
        Fields fields = parent.must("transfer");
        return Optional.of(new Transfer(
                fields.text("vessel"),
                fields.text("atmosphere"),
                fields.number("oxygenPpm"),
                fields.number("waterPpm"),
                fields.number("secondsInAir"),
                fields.number("arrivalPressureMbar"),
                fields.text("controlSpot")));
    }
}
