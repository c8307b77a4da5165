package spotline.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import spotline.analysis.charge.ChargeEvidence;
import spotline.analysis.charge.ChargeEvidence.AugerParameterSeen;
import spotline.report.facts.ChargeStatements;
import spotline.report.figure.ChemicalStateFigure;
import spotline.report.figure.Figure;
import spotline.report.html.ReportPage;

/** What the report, the tables and the record tell of an energy reference. */
class ChargeReportTest {
    private static final ChargeEvidence EVIDENCE = ExampleEvidence.of("s.txt");
    private static final AugerParameterSeen AUGER = EVIDENCE.augerParameters().get(0);

    private static String file(String name) {
        return new String(
                java.util.Objects.requireNonNull(
                        ResultFiles.contents(ExampleRun.plain()).get(name)),
                StandardCharsets.UTF_8);
    }

    @Test
    void everyKindOfEvidenceIsStatedInPlainWords() {
        List<ChargeStatements.Statement> statements =
                ChargeStatements.of(ExampleRun.first("liner chip", "s.txt").charge());
        assertThat(statements)
                .extracting(ChargeStatements.Statement::about)
                .containsExactly(
                        "The record says",
                        "Width",
                        "One potential or two",
                        "First and last scan",
                        "Lines measured twice",
                        "Second reference",
                        "Other spots of the sample",
                        "Fermi edge",
                        "Metal lines that did not move");
        String all = String.join(
                " | ",
                statements.stream().map(ChargeStatements.Statement::found).toList());
        assertThat(all)
                .contains("declared isolated", "C 1s is 1.30 \u00b1 0.03 eV wide", "at spot 2", "broader by 0.50 eV")
                .contains(
                        "no second potential", "moved by +0.050 \u00b1 0.028 eV over 2 scans", "+0.10 \u00b1 0.05 eV/h")
                .contains("moved together", "\u22122.30 eV, +0.25 \u00b1 0.39 eV from the one in use")
                .contains("\u22120.050 \u00b1 0.020 eV in F 1s from spot 2", "0.56 eV wide", "Cu 2p3/2 at 932.60 eV");
    }

    @Test
    void thePageShowsEnergiesDifferencesAndOtherReferences() {
        String html = new String(ReportPage.of(ExampleRun.plain()), StandardCharsets.UTF_8);
        assertThat(html)
                .contains("C 1s set to 284.80 eV", "from C 1s, eV", "404.250 \u00b1 0.022")
                .contains("What speaks for and against it", "Other references this spot could have")
                .contains("F 1s, CF2 (PTFE)", "if it is that state")
                .contains("Auger parameter of F 1s and F KL23L23", "CF2 &lt;polymer&gt;")
                .doesNotContain("CF2 <polymer>");
    }

    @Test
    void theRecordHoldsTheEvidence() throws Exception {
        JsonNode charge = new ObjectMapper().readTree(file("result.json")).at("/spots/0/charge");
        assertThat(charge.path("energyScale").asText()).isEqualTo("C 1s set to 284.80 eV");
        JsonNode evidence = charge.path("evidence");
        assertThat(evidence.at("/positions/1/referenced/standardUncertainty").asDouble())
                .isCloseTo(Math.hypot(0.25, Math.hypot(0.02, 0.01)), within(1e-6)); // derived: three sources in squares
        assertThat(evidence.at("/positions/1/fromReferenceLine/standardUncertainty")
                        .asDouble())
                .as("no reference in a difference")
                .isCloseTo(Math.hypot(0.02, 0.01), within(1e-6));
        assertThat(evidence.at("/drift/slopeEvPerHour/value").asDouble()).isEqualTo(0.1);
        assertThat(evidence.at("/augerParameters/0/nearestState").asText()).isEqualTo("CF2 <polymer>");
        assertThat(evidence.at("/unmovedMetalLines/0/line").asText()).isEqualTo("Cu 2p3/2");
        assertThat(evidence.at("/movedTogether/together").asBoolean()).isTrue();
        assertThat(evidence.at("/secondReference/shiftEv").asDouble()).isCloseTo(-2.3, within(1e-9));
        assertThat(evidence.at("/siblingSpots/0/spot").asText()).isEqualTo("2");
        assertThat(new ObjectMapper()
                        .readTree(file("result.json"))
                        .at("/spots/1/charge/evidence/drift")
                        .isNull())
                .as("what was not measured is null")
                .isTrue();
    }

    private static double tick(String svg, String label, boolean across) {
        Matcher matcher = Pattern.compile("<text x='([0-9.]+)' y='([0-9.]+)'[^>]*>" + label + "</text>")
                .matcher(svg);
        assertThat(matcher.find()).as("tick %s", label).isTrue();
        return Double.parseDouble(matcher.group(across ? 1 : 2));
    }

    @Test
    void theChemicalStatePlotPutsBindingAgainstKineticEnergy() {
        Figure figure = ChemicalStateFigure.of(AUGER, "C 1s set to 284.80 eV", "c");
        assertThat(figure.svg()).contains("F 1s binding energy (eV)");
        assertThat(figure.description())
                .contains(
                        "F 1s and F KL23L23",
                        "689.1 eV binding (C 1s set to 284.80 eV)",
                        "Auger parameter 1340.60 eV",
                        "2 listed states");
        assertThat(tick(figure.svg(), "685", true))
                .as("binding energy runs from high to low")
                .isGreaterThan(tick(figure.svg(), "689", true));
        assertThat(tick(figure.svg(), "654", false))
                .as("kinetic energy runs upwards")
                .isLessThan(tick(figure.svg(), "652", false));
        assertThat(figure.svg()).contains(">1340</text>").contains(">1342</text>");
    }

    @Test
    void withoutAReferenceTheSpotIsALineAndNoPoint() {
        AugerParameterSeen open = new AugerParameterSeen(
                AUGER.line(),
                AUGER.transition(),
                AUGER.spectrum(),
                AUGER.parameter(),
                AUGER.bindingEv(),
                AUGER.kineticEv(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                AUGER.listed());
        String with =
                ChemicalStateFigure.of(AUGER, "C 1s set to 284.80 eV", "c").svg();
        Figure without = ChemicalStateFigure.of(open, "measured, not referenced", "c");
        assertThat(without.description()).contains("has no energy reference");
        assertThat(count(without.svg(), "<path")).isEqualTo(count(with, "<path") - 2);
    }

    private static int count(String text, String part) {
        return text.split(Pattern.quote(part), -1).length - 1;
    }
}
