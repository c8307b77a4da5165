package spotline.holder;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spotline.core.ReadException;

class HolderRunReaderTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    static byte[] good() throws IOException {
        try (InputStream in = HolderRunReaderTest.class.getResourceAsStream("good-holder-run.json")) {
            return Objects.requireNonNull(in).readAllBytes();
        }
    }

    private static List<String> faults(String text) {
        ReadException first =
                catchThrowableOfType(ReadException.class, () -> HolderRunReader.read("h.json", text.getBytes(UTF_8)));
        assertThat(first).as("a fault in %s", text).isNotNull();
        List<String> all = new ArrayList<>(List.of(Objects.requireNonNull(first.getMessage())));
        first.others().forEach(other -> all.add(other.getMessage()));
        return all;
    }

    private static String file(String fields) {
        return "{ \"format\": \"spotline-holder-run/1\"" + (fields.isEmpty() ? "" : ", " + fields) + " }";
    }

    private static String spot(String fields) {
        return file("\"spots\": [ { \"id\": \"1\", " + fields + " } ]");
    }

    @Test
    void readsEveryFieldOfAGoodFile() throws Exception {
        HolderRunFile file = HolderRunReader.read("good.json", good());

        assertThat(file.format()).isEqualTo(HolderRunFile.FORMAT);
        assertThat(file.title()).contains("Gasket ageing, load 3 (invented)");
        assertThat(file.date()).contains(LocalDate.of(2026, 3, 4));
        assertThat(file.operator()).contains("demo analyst");
        assertThat(file.holderTemplate()).contains("flat-bar");
        assertThat(file.localRiskReview())
                .contains(
                        new LocalRiskReview("demo reviewer", Optional.of(LocalDate.of(2026, 3, 3)), Optional.empty()));
        Instrument instrument = file.instrument();
        assertThat(instrument.excitation().source()).isEqualTo(ExcitationSource.MAGNESIUM_KA);
        assertThat(instrument.excitation().photonEnergyEv()).hasValue(1253.6);
        assertThat(instrument.excitation().monochromated()).contains(false);
        assertThat(instrument.analysisArea()).contains(new AreaMm(0.4, 0.4));
        assertThat(instrument.sourceAnalyserAngleDeg()).hasValue(60);
        assertThat(instrument.chargeNeutraliser()).isEqualTo(NeutraliserState.OFF);
        assertThat(instrument.transmission()).isEqualTo(new DeclaredTransmission.PowerLaw(-0.5));

        Specimen gasket = file.specimens().get(0);
        assertThat(gasket.id()).isEqualTo("G1");
        assertThat(gasket.centre()).contains(new PointMm(14, 10));
        assertThat(gasket.outline()).contains(new Outline.Rectangle(10, 6));
        assertThat(gasket.rotationDeg()).isEqualTo(15);
        assertThat(gasket.thicknessMm()).hasValue(1.2);
        Sample sample = gasket.sample().orElseThrow();
        assertThat(sample.key()).isEqualTo("gasket-7");
        assertThat(sample.form()).isEqualTo(SampleForm.SOLID);
        assertThat(sample.conductivity()).isEqualTo(Conductivity.INSULATOR);
        assertThat(sample.carbon()).isEqualTo(CarbonOrigin.OWN);
        assertThat(sample.expectedElements()).containsExactly("C", "O", "Si");
        assertThat(sample.storage()).contains("glass vial");
        assertThat(gasket.mount().method()).isEqualTo(MountMethod.CARBON_TAPE);
        assertThat(gasket.mount().resistanceOhm()).hasValue(2e9);
        assertThat(gasket.mount().materials()).containsExactly("carbon tape");
        assertThat(file.specimens().get(1).outline()).contains(new Outline.Ellipse(6, 6));

        SpotEntry first = file.spots().get(0);
        assertThat(first.specimen()).contains("G1");
        assertThat(first.emissionAngleDeg()).hasValue(30);
        assertThat(first.spectra().get(0).blocks()).containsExactly(1, 3);
        assertThat(first.spectra().get(0).role()).isEqualTo(SpectrumRole.UNKNOWN);
        assertThat(first.spectra().get(1).role()).isEqualTo(SpectrumRole.LAST);
        assertThat(first.treatment()).isEqualTo(JSON.readTree("""
                { "charge": { "method": "sample-carbon", "reason": null } }"""));
        SpectrumEntry text = file.spots().get(1).spectra().get(0);
        SpectrumEntry.TextColumns columns = text.columns().orElseThrow();
        assertThat(columns.scale()).isEqualTo(SpectrumEntry.Scale.KINETIC);
        assertThat(columns.ordinateKind()).isEqualTo(SpectrumEntry.OrdinateKind.COUNTS_PER_SECOND);
        assertThat(columns.scans()).hasValue(5);
        assertThat(columns.photonEnergyEv()).isEqualTo(1253.6);
        assertThat(text.override().orElseThrow().photonEnergyEv()).isEqualTo(1486.6);
        assertThat(file.families().get("elastomer").at("/charge/method").asText())
                .isEqualTo("sample-carbon");
        assertThat(file.treatment().at("/charge/method").asText()).isEqualTo("none");
        assertThat(file.silence())
                .containsExactly(new Silence("spot-record", Optional.of("3"), "left empty on purpose"));
    }

    @Test
    void whatIsLeftOutIsNotKnown() throws Exception {
        HolderRunFile file = HolderRunReader.read(
                "h.json", spot("\"sample\": { \"name\": \"x\" }").getBytes(UTF_8));

        assertThat(file.instrument()).isEqualTo(Instrument.UNKNOWN);
        assertThat(file.holderTemplate()).isEmpty();
        assertThat(file.date()).isEmpty();
        assertThat(file.localRiskReview()).isEmpty();
        SpotEntry spot = file.spots().get(0);
        assertThat(spot.xMm()).isEmpty();
        assertThat(spot.mount()).isEmpty();
        assertThat(spot.sample()).contains(Sample.named("x"));
        assertThat(spot.treatment()).isEmpty();
        assertThat(HolderRunReader.read("h.json", file("").getBytes(UTF_8)).spots())
                .isEmpty();
    }

    @Test
    void aCopyOfAPatchCanBeChangedWithoutChangingTheRecord() throws Exception {
        HolderRunFile file = HolderRunReader.read("good.json", good());
        file.treatment().put("charge", "changed");
        file.families().get("elastomer").removeAll();
        file.spots().get(0).treatment().removeAll();

        assertThat(file).isEqualTo(HolderRunReader.read("good.json", good()));
    }

    /** Each row: what stands in the file's body, then the whole sentence that must come out. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            "spots": [{}]                        | h.json:/spots/0: no field "id", expected "id" to be given here
            "spots": {}                          | h.json:/spots: "spots": { }, expected a list [ ... ]
            "spots": [1]                         | h.json:/spots/0: 1 in "spots", expected an object { ... }
            "title": 7                           | h.json:/title: "title": 7, expected a text in double quotes
            "title": null                        | h.json:/title: "title": null, expected a text in double quotes
            "date": "2026-02-30"                 | h.json:/date: "date": "2026-02-30", expected a date of the calendar, such as 2026-05-12
            "date": "4.3.2026"                   | h.json:/date: "date": "4.3.2026", expected a date of the calendar, such as 2026-05-12
            "spots": [{"id": " "}]               | h.json:/spots/0/id: "id": " ", expected some text
            "titel": "x"                         | h.json:/titel: unknown field "titel", expected one of format, title, date, operator, holder, instrument, specimens, spots, treatment, families, silence, localRiskReview, stage, planCheck; did you mean "title"?
            "a/b": 1                             | h.json:/a~1b: unknown field "a/b", expected one of format, title, date, operator, holder, instrument, specimens, spots, treatment, families, silence, localRiskReview, stage, planCheck
            "holder": {"template": "flat-barr"}  | h.json:/holder/template: "template": "flat-barr", expected one of flat-bar, stub-end-bar, temperature-stage, cold-stub-bar, rotating-stage, or a .json file of the lab's own; did you mean "flat-bar"?
            "treatment": []                      | h.json:/treatment: "treatment": [ ], expected an object { ... }
            "families": {"a": 1}                 | h.json:/families/a: "a": 1, expected an object { ... }
            "silence": [{"rule": "r"}]           | h.json:/silence/0: no field "reason", expected "reason" to be given here
            "silence": [{"rule": "r", "reason": "x", "spot": "9"}] | h.json:/silence/0/spot: "spot": "9", which is not declared, expected the id of a declared spot
            "instrument": {"excitation": {"source": "Al K"}} | h.json:/instrument/excitation/source: "source": "Al K", expected one of Al Ka, Mg Ka, Ag La, Cr Ka, Ga Ka; did you mean "Al Ka"?
            "instrument": {"excitation": {"photonEnergyEv": 0}} | h.json:/instrument/excitation/photonEnergyEv: "photonEnergyEv": 0, expected a number above 0
            "instrument": {"excitation": {"monochromated": "yes"}} | h.json:/instrument/excitation/monochromated: "monochromated": "yes", expected true or false
            "instrument": {"emissionAngleDeg": 90} | h.json:/instrument/emissionAngleDeg: "emissionAngleDeg": 90, expected a number below 90
            "instrument": {"emissionAngleDeg": -1} | h.json:/instrument/emissionAngleDeg: "emissionAngleDeg": -1, expected a number of 0 or more
            "instrument": {"sourceAnalyserAngleDeg": 181} | h.json:/instrument/sourceAnalyserAngleDeg: "sourceAnalyserAngleDeg": 181, expected a number of 180 or less
            "instrument": {"analysisAreaMm": {"x": 0.7}} | h.json:/instrument/analysisAreaMm: no field "y", expected "y" to be given here
            "instrument": {"transmission": "linear"} | h.json:/instrument/transmission: "transmission": "linear", expected one of as-recorded, flat
            "instrument": {"transmission": 3}    | h.json:/instrument/transmission: "transmission": 3, expected as-recorded, flat, { "power": -0.5 } or { "file": "transmission.csv" }
            "instrument": {"transmission": {}}   | h.json:/instrument/transmission: "transmission": { }, expected either power or file
            "instrument": {"transmission": {"power": 1, "file": "a.csv"}} | h.json:/instrument/transmission: "transmission": { ... }, expected either power or file
            "specimens": [{"id": "A", "outlineMm": {"width": 0, "height": 1}}] | h.json:/specimens/0/outlineMm/width: "width": 0, expected a number above 0
            "specimens": [{"id": "A"}, {"id": "A"}] | h.json:/specimens/1/id: "id": "A", which specimen number 1 has too, expected an id of its own for each specimen
            "spots": [{"id": "1"}, {"id": "1"}]  | h.json:/spots/1/id: "id": "1", which spot number 1 has too, expected an id of its own for each spot
            "spots": [{"id": "1", "specimen": "B"}], "specimens": [{"id": "A"}] | h.json:/spots/0/specimen: "specimen": "B", which is not declared, expected the id of a declared specimen
            "specimens": [{"id": "liner"}], "spots": [{"id": "1", "specimen": "linre"}] | h.json:/spots/0/specimen: "specimen": "linre", which is not declared, expected the id of a declared specimen; did you mean "liner"?
            "specimens": [{"id": "A"}], "spots": [{"id": "1", "specimen": "A", "mount": {}}] | h.json:/spots/0/mount: "mount" beside "specimen": "A", expected either a specimen or the spot's own sample and mount
            """)
    void saysPlainlyWhatIsWrong(String body, String sentence) {
        assertThat(faults(file(body))).containsExactly(sentence);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            "speciemn": "A"                      | h.json:/spots/0/speciemn: unknown field "speciemn", expected one of id, specimen, xMm, yMm, zMm, tiltDeg, emissionAngleDeg, azimuthDeg, analysisAreaMm, positionUncertaintyMm, purpose, sample, mount, transfer, etchSteps, spectra, treatment; did you mean "specimen"?
            "mount": {"method": "glue"}          | h.json:/spots/0/mount/method: "method": "glue", expected one of metal-clip, carbon-tape, adhesive-tape, powder-on-tape, cover-slip, pressed-in-foil, pellet, stub, screwed, other
            "mount": {"method": "Metal-Clip"}    | h.json:/spots/0/mount/method: "method": "Metal-Clip", expected one of metal-clip, carbon-tape, adhesive-tape, powder-on-tape, cover-slip, pressed-in-foil, pellet, stub, screwed, other; did you mean "metal-clip"?
            "mount": {"electricalState": "floating"} | h.json:/spots/0/mount/electricalState: "electricalState": "floating", expected one of grounded, isolated, unknown
            "mount": {"resistanceOhm": -1}       | h.json:/spots/0/mount/resistanceOhm: "resistanceOhm": -1, expected a number of 0 or more
            "xMm": "eleven"                      | h.json:/spots/0/xMm: "xMm": "eleven", expected a number
            "xMm": 1e999                         | h.json:/spots/0/xMm: a number too large to hold, 1e999, expected a number below 1e308
            "sample": {}                         | h.json:/spots/0/sample: no field "name", expected "name" to be given here
            "sample": {"name": "x", "expectedElements": ["C", "Xx"]} | h.json:/spots/0/sample/expectedElements/1: "Xx" in "expectedElements", expected the symbol of a chemical element, such as C or Ti
            "sample": {"name": "x", "expectedElements": ["C", "C"]} | h.json:/spots/0/sample/expectedElements: "expectedElements": [ ... ] with an entry given twice, expected each entry once
            "spectra": [{}]                      | h.json:/spots/0/spectra/0: no field "file", expected "file" to be given here
            "spectra": [{"file": "a", "blocks": [0]}] | h.json:/spots/0/spectra/0/blocks/0: 0 in "blocks", expected a number of 1 or more
            "spectra": [{"file": "a", "blocks": [1.5]}] | h.json:/spots/0/spectra/0/blocks/0: 1.5 in "blocks", expected a whole number
            "spectra": [{"file": "a", "blocks": []}] | h.json:/spots/0/spectra/0/blocks: "blocks": [ ], expected a list of at least 1 entry
            "spectra": [{"file": "a", "role": "first"}] | h.json:/spots/0/spectra/0/role: "role": "first", expected one of main, repeat, last, blank, etch
            "spectra": [{"file": "a"}, {"file": "a"}] | h.json:/spots/0/spectra/1/file: "file": "a", given before for this spot, expected each block of a file once a spot
            "spectra": [{"file": "a", "blocks": [1, 2]}, {"file": "a", "blocks": [2]}] | h.json:/spots/0/spectra/1/file: "file": "a", given before for this spot with some of the same blocks, expected each block of a file once a spot
            "spectra": [{"file": "a", "override": {"photonEnergyEv": 1253.6}}] | h.json:/spots/0/spectra/0/override: no field "reason", expected "reason" to be given here
            "spectra": [{"file": "a", "columns": {"energy": 1, "ordinate": 2, "scale": "binding"}}] | h.json:/spots/0/spectra/0/columns: no field "photonEnergyEv", expected "photonEnergyEv" to be given here
            "spectra": [{"file": "a", "columns": {"energy": 2, "ordinate": 2, "scale": "binding", "photonEnergyEv": 1486.6}}] | h.json:/spots/0/spectra/0/columns/ordinate: "ordinate": 2, the column of the energy too, expected a column of its own for the ordinate
            """)
    void saysPlainlyWhatIsWrongAtASpot(String body, String sentence) {
        assertThat(faults(spot(body))).containsExactly(sentence);
    }

    @Test
    void tellsAllFaultsAtOnce() {
        assertThat(faults(file("""
                        "date": "soon", "spots": [
                          { "id": "1", "xMm": "left", "mount": { "method": "glue", "method": "stub", "colour": 1 } },
                          { "speciemn": "A", "yMm": true } ]""")))
                .extracting(sentence -> sentence.substring(0, sentence.indexOf(' ')))
                .containsExactlyInAnyOrder(
                        "h.json:/spots/0/mount/method:",
                        "h.json:/date:",
                        "h.json:/spots/0/xMm:",
                        "h.json:/spots/0/mount/colour:",
                        "h.json:/spots/1:",
                        "h.json:/spots/1/speciemn:",
                        "h.json:/spots/1/yMm:");
    }

    @Test
    void refusesAFieldGivenTwiceWithItsPointerAndLine() {
        assertThat(faults(file("\n\"spots\": [ { \"id\": \"1\",\n \"xMm\": 1, \"xMm\": 2 } ]")))
                .containsExactly(
                        "h.json:/spots/0/xMm: field \"xMm\" given a second time, in line 3, expected each field once");
        assertThat(faults(file("\"treatment\": { \"a\": 1, \"a\": 1 }")))
                .containsExactly(
                        "h.json:/treatment/a: field \"a\" given a second time, in line 1, expected each field once");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            {}                                         | h.json: no field "format", expected "format": "spotline-holder-run/1"
            []                                         | h.json: a list, expected an object { ... }
            null                                       | h.json: null, expected an object { ... }
            {"format": 1}                              | h.json:/format: "format": 1, expected "format": "spotline-holder-run/1"
            {"format": "spotline-fit-model/1"}         | h.json:/format: "format": "spotline-fit-model/1", expected "format": "spotline-holder-run/1"
            {"format": "spotline-holder-run/0"}        | h.json:/format: "format": "spotline-holder-run/0", expected "format": "spotline-holder-run/1"
            {"format": "spotline-holder-run/2", "n":1} | h.json:/format: "format": "spotline-holder-run/2", which is newer than this program, expected "format": "spotline-holder-run/1" or older; a newer program reads it
            """)
    void refusesOtherKindsAndNewerVersions(String text, String sentence) {
        assertThat(faults(text)).containsExactly(sentence);
    }

    @Test
    void tellsTheLineWhereTheTextStopsBeingJson() {
        assertThat(faults("{\n \"format\": \"spotline-holder-run/1\",\n}"))
                .singleElement()
                .asString()
                .startsWith("h.json:3: text that is not JSON near column");
        assertThat(faults("{\n \"format\": \"spotline-holder-run/1\",\n \"spots\": ["))
                .singleElement()
                .asString()
                .startsWith("h.json:3: the end of the file inside");
        assertThat(faults("{ \"format\": \"spotline-holder-run/1\" }\n{}"))
                .containsExactly("h.json:2: more text after the end of the JSON value, expected one value a file");
        assertThat(faults("")).containsExactly("h.json: an empty file, expected an object { ... }");
        assertThat(faults("{ \"format\": NaN }")).singleElement().asString().startsWith("h.json:1: text that is not");
    }

    @Test
    void refusesBytesThatAreNotUtf8() {
        byte[] bytes = "{\n\"title\": \"x\" }".getBytes(UTF_8);
        bytes[12] = (byte) 0xff;
        ReadException fault = catchThrowableOfType(ReadException.class, () -> HolderRunReader.read("h.json", bytes));
        assertThat(fault).hasMessage("h.json:2: a byte that is not UTF-8, expected text in UTF-8");
    }

    @Test
    void everyTruncationOfAGoodFileIsRefusedAndNothingElse() throws Exception {
        byte[] good = good();
        int end = new String(good, UTF_8).stripTrailing().getBytes(UTF_8).length;
        for (int length = 0; length < end; length += 7) {
            byte[] cut = java.util.Arrays.copyOf(good, length);
            assertThat(catchThrowableOfType(ReadException.class, () -> HolderRunReader.read("h.json", cut)))
                    .as("cut at %d", length)
                    .isNotNull();
        }
    }

    @Test
    void hostileNestingAndNumbersAreRefusedQuickly() {
        assertThat(faults(file("\"treatment\": " + "{\"a\":".repeat(5000) + "1" + "}".repeat(5000))))
                .singleElement()
                .asString()
                .contains("nested too deep", "at most 64 levels");
        assertThat(faults(file("\"title\": " + "[".repeat(1_000_000)))).hasSize(1);
        assertThat(faults(file("\"spots\": [{\"id\": \"1\", \"xMm\": 1" + "0".repeat(500) + "}]")))
                .hasSize(1);
        assertThat(faults(spot("\"xMm\": 1e999999999"))).hasSize(1);
    }

    @Test
    void aFileFullOfFaultsTellsAHundredAndCountsTheRest() {
        StringBuilder spots = new StringBuilder("{}");
        for (int i = 0; i < 500; i++) spots.append(", {}");
        List<String> faults = faults(file("\"spots\": [" + spots + "]"));
        assertThat(faults).hasSize(101).last().isEqualTo("h.json: 401 more faults, expected none");
    }

    @Test
    void refusesMoreSpotsThanAnyHolderHas() {
        StringBuilder spots = new StringBuilder("{ \"id\": \"0\" }");
        for (int i = 1; i <= 1000; i++) {
            spots.append(", { \"id\": \"").append(i).append("\" }");
        }
        assertThat(faults(file("\"spots\": [" + spots + "]")))
                .containsExactly("h.json:/spots: \"spots\": [ ... ], expected a list of at most 1000 entries");
    }

    @Test
    void refusesAFileAboveTheSizeLimitAndOneThatIsMissing(@TempDir Path folder) throws IOException {
        Path big = folder.resolve("big.json");
        Files.write(big, new byte[16 * 1024 * 1024 + 1]);
        assertThat(catchThrowableOfType(ReadException.class, () -> HolderRunReader.read(big)))
                .hasMessageContaining("more than 16777216 bytes");
        assertThat(catchThrowableOfType(ReadException.class, () -> HolderRunReader.read(folder.resolve("no.json"))))
                .hasMessageContaining("no such file");
        assertThat(catchThrowableOfType(ReadException.class, () -> HolderRunReader.read(folder)))
                .hasMessageContaining("a directory");
    }

    @Test
    void readsAByteOrderMarkAndPathsThatAreAbsoluteOrLeaveTheFolder() throws Exception {
        String text = "\uFEFF" + spot("\"spectra\": [{\"file\": \"/data/a.txt\"}, {\"file\": \"../b.txt\"}]");
        assertThat(HolderRunReader.read("h.json", text.getBytes(UTF_8))
                        .spots()
                        .get(0)
                        .spectra())
                .extracting(SpectrumEntry::file)
                .containsExactly("/data/a.txt", "../b.txt");
    }

    /** The schema and the records must not drift apart: every enum word is in the schema and the other way round. */
    @Test
    void theSchemasWordsAreTheEnumsWords() throws Exception {
        ObjectNode schema;
        try (InputStream in = HolderRunReader.class.getResourceAsStream(HolderRunReader.SCHEMA)) {
            schema = (ObjectNode) JSON.readTree(in);
        }
        check(schema, "/$defs/mount/properties/method", MountMethod.values(), true);
        check(schema, "/$defs/spotMount/properties/method", MountMethod.values(), true);
        check(schema, "/$defs/mount/properties/electricalState", ElectricalState.values(), false);
        check(schema, "/$defs/sample/properties/conductivity", Conductivity.values(), false);
        check(schema, "/$defs/sample/properties/form", SampleForm.values(), true);
        check(schema, "/$defs/sample/properties/carbon", CarbonOrigin.values(), false);
        check(schema, "/$defs/spectrum/properties/role", SpectrumRole.values(), true);
        String columns = "/$defs/spectrum/properties/columns/properties/";
        check(schema, columns + "scale", SpectrumEntry.Scale.values(), false);
        check(schema, columns + "ordinateKind", SpectrumEntry.OrdinateKind.values(), false);
        check(schema, "/$defs/instrument/properties/chargeNeutraliser", NeutraliserState.values(), false);
        check(schema, "/$defs/instrument/properties/excitation/properties/source", ExcitationSource.values(), true);
    }

    private static void check(ObjectNode schema, String pointer, Word[] words, boolean unknownIsLeftOut) {
        ArrayNode listed = (ArrayNode) schema.at(pointer + "/enum");
        List<String> expected = new ArrayList<>();
        for (Word word : words) if (!(unknownIsLeftOut && word.word().equals("unknown"))) expected.add(word.word());
        assertThat(listed).extracting(node -> node.asText()).containsExactlyElementsOf(expected);
    }

    @Test
    void anOpeningSentenceIsJudgedByAPerson() throws Exception {
        String json = """
                {"format": "spotline-holder-run/1", "spots": [
                  {"id": "1", "sample": {"name": "a", "openingSentence": {"accepted": true, "by": "an analyst"}}},
                  {"id": "2", "sample": {"name": "b"}}]}""";
        HolderRunFile file = HolderRunReader.read("h.json", json.getBytes(java.nio.charset.StandardCharsets.UTF_8));
        HolderPlan plan = HolderPlan.of(file);
        assertThat(plan.spots().get(0).sample().orElseThrow().openingSentence())
                .contains(new OpeningSentence(true, java.util.Optional.of("an analyst")));
        assertThat(plan.spots().get(1).sample().orElseThrow().openingSentence()).isEmpty();
    }
}
