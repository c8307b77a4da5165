package spotline.demo;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.List;
import spotline.core.Decimal;

/** The holder-run file of the footbridge demonstration: which piece sits where, how it is mounted, what was measured. */
final class FootbridgeHolder {
    private FootbridgeHolder() {}

    static ObjectNode json(List<SpotPlan> spots) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.put("format", "spotline-holder-run/1");
        root.put("title", "Harbour footbridge, bearing parts (invented demonstration)");
        root.put("date", "2026-03-17");
        root.put("operator", "surface lab");
        root.putObject("holder").put("template", "flat-bar");
        instrument(root.putObject("instrument"));
        ArrayNode specimens = root.putArray("specimens");
        liner(specimens);
        primer(specimens);
        coupon(specimens);
        strip(specimens);
        pigment(specimens);
        ArrayNode places = root.putArray("spots");
        place(places, spots.get(0), "A", 13.5, 10.0);
        place(places, spots.get(1), "B", 31.0, 9.5);
        place(places, spots.get(2), "C", 48.0, 10.0);
        place(places, spots.get(3), "D", 70.0, 10.0);
        place(places, spots.get(4), "E", 87.0, 11.5);
        place(places, spots.get(5), "E", 91.0, 8.5);
        root.putObject("families")
                .putObject("fluoropolymer")
                .putObject("charge")
                .put("method", "sample-carbon")
                .put("referenceEv", decimal(292.0, 1))
                .put("referenceUncertaintyEv", decimal(0.2, 1))
                .put("reason", "CF2 carbon of the liner's own PTFE; invented demonstration");
        root.putObject("localRiskReview").put("by", "surface lab (invented)").put("date", "2026-03-16");
        return root;
    }

    private static void instrument(ObjectNode instrument) {
        instrument.put("name", "simulated spectrometer");
        instrument.putObject("excitation").put("source", "Al Ka").put("monochromated", true);
        instrument
                .putObject("analysisAreaMm")
                .put("x", decimal(InstrumentModel.ANALYSIS_WIDTH_X_MM, 1))
                .put("y", decimal(InstrumentModel.ANALYSIS_WIDTH_Y_MM, 1));
        instrument.put("emissionAngleDeg", decimal(Footbridge.INSTRUMENT.emissionAngleDeg(), 1));
        instrument.put("sourceAnalyserAngleDeg", decimal(InstrumentModel.SOURCE_ANALYSER_ANGLE_DEG, 1));
        instrument.put("chargeNeutraliser", "on");
        instrument.put("transmission", "as-recorded");
    }

    private static void liner(ArrayNode specimens) {
        ObjectNode specimen = specimen(specimens, "A", 14.0, 8.0, 6.0, 1.2);
        sample(specimen, "L-1", "liner chip", "bearing team", "solid", "insulator", "own", "C", "F", "O")
                .put("family", "fluoropolymer")
                .put("history", "Cut from the worn PTFE-filled liner of the north bearing; rinsed with water, dried.")
                .put("storage", "glass vial, two days")
                .put("hazards", "PTFE: never heat it strongly; local rules apply");
        mount(specimen, "carbon-tape", "isolated", "carbon tape");
    }

    private static void primer(ArrayNode specimens) {
        ObjectNode specimen = specimen(specimens, "B", 31.0, 6.0, 5.0, 0.6);
        sample(
                        specimen,
                        "P-1",
                        "primer flake",
                        "coatings team",
                        "film",
                        "mixed",
                        "adventitious",
                        "Zn",
                        "O",
                        "C",
                        "Si",
                        "Cl")
                .put("family", "paint")
                .put("history", "Loose flake of zinc-rich silicate primer from the bearing plate; years of sea air.")
                .put("storage", "aluminium foil, one week")
                .put("hazards", "paint flake: keep the dust down; local rules apply");
        mount(specimen, "carbon-tape", "isolated", "carbon tape");
    }

    private static void coupon(ArrayNode specimens) {
        ObjectNode specimen = specimen(specimens, "C", 48.0, 12.0, 10.0, 1.5);
        sample(
                        specimen,
                        "K-1",
                        "anodised coupon",
                        "coatings team",
                        "solid",
                        "insulator",
                        "adventitious",
                        "Al",
                        "O",
                        "C",
                        "S")
                .put("family", "oxide")
                .put("history", "Aluminium coupon, anodised in sulfuric acid and sealed in hot water.")
                .put("storage", "aluminium foil, three days")
                .put("hazards", "none known");
        mount(specimen, "adhesive-tape", "isolated", "adhesive tape");
    }

    private static void strip(ArrayNode specimens) {
        ObjectNode specimen = specimen(specimens, "D", 69.0, 14.0, 5.0, 0.5);
        sample(
                        specimen,
                        "S-1",
                        "contact strip",
                        "electrical team",
                        "foil",
                        "conductor",
                        "adventitious",
                        "Ag",
                        "C",
                        "O",
                        "S")
                .put("family", "metal")
                .put("history", "Silver-plated strip of the earthing contact, lightly tarnished.")
                .put("storage", "paper envelope, one week")
                .put("hazards", "none known");
        mount(specimen, "metal-clip", "grounded", "stainless steel clip at the left end")
                .put("resistanceOhm", decimal(0.4, 1));
    }

    private static void pigment(ArrayNode specimens) {
        ObjectNode specimen = specimen(specimens, "E", 89.0, 10.0, 10.0, 0.7);
        sample(
                        specimen,
                        "T-1",
                        "titanium dioxide pigment",
                        "coatings team",
                        "powder",
                        "insulator",
                        "adventitious",
                        "Ti",
                        "O",
                        "C")
                .put("family", "oxide")
                .put(
                        "history",
                        "Pigment of the new top coat, as delivered; pressed onto the slip, loose grains blown off.")
                .put("storage", "screw-cap jar, one month")
                .put("hazards", "fine powder: avoid dust; local rules apply");
        mount(specimen, "cover-slip", "isolated", "glass cover slip");
    }

    private static ObjectNode specimen(
            ArrayNode specimens, String id, double xMm, double widthMm, double heightMm, double thicknessMm) {
        ObjectNode specimen = specimens.addObject();
        specimen.put("id", id);
        specimen.putObject("centreMm").put("x", decimal(xMm, 1)).put("y", decimal(10, 1));
        specimen.putObject("outlineMm").put("width", decimal(widthMm, 1)).put("height", decimal(heightMm, 1));
        specimen.put("rotationDeg", decimal(0, 1));
        specimen.put("thicknessMm", decimal(thicknessMm, 1));
        return specimen;
    }

    private static ObjectNode sample(
            ObjectNode specimen,
            String id,
            String name,
            String owner,
            String form,
            String conductivity,
            String carbon,
            String... expected) {
        ObjectNode sample = specimen.putObject("sample");
        sample.put("id", id).put("name", name).put("owner", owner).put("form", form);
        sample.put("conductivity", conductivity).put("carbon", carbon);
        ArrayNode elements = sample.putArray("expectedElements");
        for (String element : expected) elements.add(element);
        return sample;
    }

    private static ObjectNode mount(ObjectNode specimen, String method, String state, String material) {
        ObjectNode mount = specimen.putObject("mount").put("method", method).put("electricalState", state);
        mount.putArray("materials").add(material);
        return mount;
    }

    private static void place(ArrayNode spots, SpotPlan plan, String specimen, double xMm, double yMm) {
        ObjectNode spot = spots.addObject().put("id", plan.id()).put("specimen", specimen);
        spot.put("xMm", decimal(xMm, 1)).put("yMm", decimal(yMm, 1));
        spot.putArray("spectra").addObject().put("file", plan.file());
    }

    private static BigDecimal decimal(double value, int decimals) {
        return new BigDecimal(Decimal.fixed(value, decimals));
    }
}
