package spotline.holder;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Geometry;
import spotline.core.ReadException;

class HolderTemplatesTest {
    private static final String SQUARE =
            "[ { \"x\": 0, \"y\": 0 }, { \"x\": 9, \"y\": 0 }, { \"x\": 9, \"y\": 9 }, { \"x\": 0, \"y\": 9 } ]";

    private static String template(String outline, String more) {
        return "{ \"format\": \"spotline-holder-template/1\", \"name\": \"own\", \"outlineMm\": " + outline
                + (more.isEmpty() ? "" : ", " + more) + " }";
    }

    @ParameterizedTest
    @ValueSource(strings = {"flat-bar", "stub-end-bar", "temperature-stage", "cold-stub-bar", "rotating-stage"})
    void aShippedTemplateLoadsAndSaysThatItIsInvented(String name) {
        HolderTemplate template = HolderTemplates.shipped(name);

        assertThat(template.name()).isEqualTo(name);
        assertThat(template.origin().orElseThrow()).startsWith("Invented");
        assertThat(template.usable()).isNotEmpty();
        assertThat(template.heightWindow()).isPresent();
        assertThat(template.maxThicknessMm()).isPresent();
        assertThat(template.electricalContacts()).isPresent();
        Geometry outline = Shapes.polygon(template.outline());
        assertThat(outline.getArea()).isGreaterThan(100);
    }

    @Test
    void eachTemplateHasWhatItsKindCallsFor() {
        assertThat(HolderTemplates.shipped("flat-bar").temperature()).isEmpty();
        assertThat(HolderTemplates.shipped("stub-end-bar").stubSeats()).hasSize(1);
        assertThat(HolderTemplates.shipped("cold-stub-bar").stubSeats()).hasSize(1);
        assertThat(HolderTemplates.shipped("cold-stub-bar")
                        .temperature()
                        .orElseThrow()
                        .min())
                .isLessThan(-100);
        assertThat(HolderTemplates.shipped("temperature-stage")
                        .temperature()
                        .orElseThrow()
                        .max())
                .isGreaterThan(400);
        assertThat(HolderTemplates.shipped("rotating-stage").rotationAxis()).contains(new PointMm(15, 15));
    }

    /** The promise of the holder-run file's description: 100 x 16 mm from about (2, 2). */
    @Test
    void theFlatBarsUsableAreaIsAsLargeAsPromised() {
        HolderTemplate bar = HolderTemplates.shipped("flat-bar");
        Geometry promised = Shapes.footprint(new Specimen(
                        "p",
                        Optional.empty(),
                        Optional.of(new PointMm(52, 10)),
                        Optional.of(new Outline.Rectangle(100, 16)),
                        0,
                        OptionalDouble.empty(),
                        Optional.empty(),
                        Mount.UNKNOWN,
                        Optional.empty()))
                .orElseThrow();
        assertThat(Shapes.polygon(bar.usable()).covers(promised)).isTrue();
        assertThat(bar.keepOuts())
                .noneMatch(area -> Shapes.polygon(area.outline()).intersects(promised));
    }

    @Test
    void anUnknownNameIsNotShipped() {
        assertThatIllegalArgumentException().isThrownBy(() -> HolderTemplates.shipped("flat"));
    }

    @Test
    void aLabsOwnTemplateIsFoundRelativeToTheRun(@TempDir Path folder) throws Exception {
        Files.createDirectory(folder.resolve("holders"));
        Files.writeString(folder.resolve("holders/own.json"), template(SQUARE, "\"keepOuts\": []"));
        String run = "{ \"format\": \"spotline-holder-run/1\", \"holder\": { \"template\": \"holders/own.json\" } }";
        HolderRunFile file = HolderRunReader.read("h.json", run.getBytes(UTF_8));

        HolderTemplate template =
                HolderTemplates.of(file, folder.resolve("h.json")).orElseThrow();

        assertThat(template.name()).isEqualTo("own");
        assertThat(template.usable()).isEmpty();
        assertThat(template.biasPossible()).isEmpty();
        assertThat(catchThrowableOfType(
                        ReadException.class, () -> HolderTemplates.of(file, folder.resolve("x/h.json"))))
                .hasMessageContaining("own.json: no such file");
    }

    @Test
    void aRunThatNamesNoHolderHasNoTemplate() throws Exception {
        HolderRunFile file = HolderRunReader.read("h.json", "{\"format\": \"spotline-holder-run/1\"}".getBytes(UTF_8));
        assertThat(HolderTemplates.of(file, Path.of("h.json"))).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            "heightWindowMm": {"low": 1, "high": 0}   | t.json:/heightWindowMm: "low": 1 above "high": 0, expected low at or below high
            "temperatureC": {"min": -300, "max": 0}   | t.json:/temperatureC/min: "min": -300, expected a number of -273.15 or more
            "usableMm": [{"x": 1, "y": 1}, {"x": 10, "y": 1}, {"x": 5, "y": 5}] | t.json:/usableMm: an area that reaches beyond the holder's outline, expected an area on the holder
            "usableMm": [{"x": 1, "y": 1}, {"x": 5, "y": 5}, {"x": 5, "y": 1}, {"x": 1, "y": 5}] | t.json:/usableMm: corners whose sides cross or touch, expected corners in order around the area
            "usableMm": [{"x": 1, "y": 1}]            | t.json:/usableMm: "usableMm": [ ... ], expected a list of at least 3 entries
            "rotationAxisMm": {"x": 20, "y": 1}       | t.json:/rotationAxisMm: a position off the holder's outline, expected a position on the holder
            "stubSeats": [{"id": "s", "centreMm": {"x": -1, "y": 1}, "diameterMm": 3}] | t.json:/stubSeats/0/centreMm: a position off the holder's outline, expected a position on the holder
            "colour": "red"                           | t.json:/colour: unknown field "colour", expected one of format, name, title, origin, outlineMm, usableMm, keepOuts, referenceHeightMm, heightWindowMm, maxThicknessMm, temperatureC, rotationAxisMm, orientationMark, stubSeats, electricalContacts, biasPossible
            """)
    void refusesATemplateThatCannotBe(String more, String sentence) {
        ReadException fault = catchThrowableOfType(
                ReadException.class,
                () -> HolderTemplates.read("t.json", template(SQUARE, more).getBytes(UTF_8)));
        assertThat(Objects.requireNonNull(fault)).hasMessage(sentence);
        assertThat(fault.others()).isEmpty();
    }

    @Test
    void refusesAnOutlineThatDoesNotStartAtTheOrigin() {
        String shifted = SQUARE.replace("\"x\": 0", "\"x\": 1");
        ReadException fault = catchThrowableOfType(
                ReadException.class,
                () -> HolderTemplates.read("t.json", template(shifted, "").getBytes(UTF_8)));
        assertThat(fault)
                .hasMessage("t.json:/outlineMm: an outline whose lower left corner is at 1, 0 mm, expected 0, 0");
    }
}
