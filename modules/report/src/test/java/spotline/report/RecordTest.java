package spotline.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import spotline.analysis.calibration.CalibrationRecord;
import spotline.analysis.calibration.EnergyScale;
import spotline.holder.HolderPlan;
import spotline.holder.HolderRunReader;
import spotline.report.facts.HeaderFacts;
import spotline.report.html.Form;
import spotline.report.html.Letterhead;
import spotline.report.html.ReportPage;
import spotline.run.LinkedSpectrum;
import spotline.run.RunResult;
import spotline.run.SpotResult;
import spotline.spectra.HeaderField;

/** The fields that a report must carry: from the record where it has them, and "not recorded" where it has not. */
class RecordTest {
    // Fields of a report: ISO 16243, ISO 19318, ISO 20903, ISO 18118, ISO 20579, by their scopes.
    private static final List<String> INSTRUMENT = List.of(
            "Model",
            "X-ray source and photon energy",
            "X-ray power",
            "X-ray spot on the sample",
            "Analysis area",
            "Source to analyser",
            "Emission angle",
            "Analyser mode",
            "Pass energy",
            "Lens",
            "Counting",
            "Pressure",
            "Sample temperature",
            "Ion gun",
            "Charge neutraliser",
            "Energy scale",
            "Calibrated",
            "Energy-scale checks",
            "Intensity scale",
            "Limits of linear counting",
            "Step",
            "Time on each channel",
            "First spectrum",
            "Last spectrum");

    private static final String CONDITIONS = """
            "conditions": { "xRayPowerW": 120, "analyserMode": "constant pass energy", "lens": "large area",
              "pressureMbar": 4.5e-9, "sampleTemperatureC": 22, "ionGun": "off", "neutraliser": "flood source, 3 eV",
              "linearToCountsPerSecond": 2000000 },""";

    private static final List<HeaderField> HEADER = List.of(
            new HeaderField("analysis source strength", "150"),
            new HeaderField("analysis source beam width x", "400"),
            new HeaderField("analysis source beam width y", "400"),
            new HeaderField("analyser mode", "FAT"),
            new HeaderField("magnification of analyser transfer lens", "5"),
            new HeaderField("target bias", "1E37"),
            new HeaderField("analysis width x", "700"),
            new HeaderField("analysis width y", "300"),
            new HeaderField("signal mode", "pulse counting"),
            new HeaderField("signal collection time", "0.1"),
            new HeaderField("number of scans to compile this block", "5"),
            new HeaderField("block comment line 1", "flood gun on, <b>"),
            new HeaderField("label of additional numerical parameter 1", "chamber pressure"),
            new HeaderField("units of additional numerical parameter 1", "mbar"),
            new HeaderField("value of additional numerical parameter 1", "5E-9"));

    private static RunResult run(String instrument, List<HeaderField> header, Optional<CalibrationRecord> calibration)
            throws Exception {
        RunResult plain = ExampleRun.plain();
        String json = """
                { "format": "spotline-holder-run/1", "instrument": { INSTRUMENT "chargeNeutraliser": "on" },
                  "spots": [ { "id": "1", "sample": { "name": "a" } }, { "id": "2", "sample": { "name": "b" } } ] }
                """.replace("INSTRUMENT", instrument);
        HolderPlan plan = HolderPlan.of(HolderRunReader.read("holder.json", json.getBytes(StandardCharsets.UTF_8)));
        List<SpotResult> spots =
                plain.spots().stream().map(s -> with(s, header)).toList();
        return new RunResult(
                plan,
                spots,
                plain.samples(),
                plain.findings(),
                plain.treatments(),
                plain.files(),
                plain.programVersion(),
                plain.seed(),
                List.of(),
                List.of(),
                calibration);
    }

    private static SpotResult with(SpotResult s, List<HeaderField> header) {
        List<LinkedSpectrum> spectra = s.spectra().stream()
                .map(l -> new LinkedSpectrum(
                        l.label(),
                        l.source(),
                        l.region(),
                        l.survey(),
                        l.role(),
                        l.scan(),
                        l.transmission(),
                        l.time(),
                        header))
                .toList();
        return new SpotResult(
                s.spot(),
                s.sample(),
                s.electricalState(),
                spectra,
                s.identification(),
                s.charge(),
                s.intensities(),
                s.peaks(),
                s.composition(),
                s.variants(),
                s.findings(),
                s.fits(),
                s.states(),
                s.derived(),
                s.factors());
    }

    private static org.w3c.dom.Document page(RunResult result, Form form) throws Exception {
        return DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new ByteArrayInputStream(ReportPage.of(result, form, Letterhead.NONE)));
    }

    private static Map<String, String> facts(RunResult result, Form form) throws Exception {
        Map<String, String> facts = new LinkedHashMap<>();
        NodeList terms = page(result, form).getElementsByTagName("dt");
        for (int i = 0; i < terms.getLength(); i++) {
            Element term = (Element) terms.item(i);
            facts.put(term.getTextContent(), term.getNextSibling().getTextContent());
        }
        return facts;
    }

    @Test
    void whatNobodyWroteDownSaysSo() throws Exception {
        for (Form form : Form.values()) {
            Map<String, String> facts = facts(run("", List.of(), Optional.empty()), form);
            assertThat(facts.keySet()).containsAll(INSTRUMENT);
            assertThat(facts)
                    .containsEntry("X-ray power", "not recorded")
                    .containsEntry("Lens", "not recorded")
                    .containsEntry("Pressure", "not recorded")
                    .containsEntry("Analyser mode", "not recorded")
                    .containsEntry("Limits of linear counting", "not recorded")
                    .containsEntry("Calibrated", "not recorded");
        }
    }

    @Test
    void theHeadersOfTheFilesAreRead() throws Exception {
        Map<String, String> facts = facts(run("", HEADER, Optional.empty()), Form.SHORT);
        assertThat(facts)
                .containsEntry("X-ray power", "150 W")
                .containsEntry("X-ray spot on the sample", "0.4 \u00d7 0.4 mm")
                .containsEntry("Analysis area", "0.7 \u00d7 0.3 mm")
                .containsEntry("Analyser mode", "constant pass energy")
                .containsEntry("Lens", "magnification 5")
                .containsEntry("Counting", "pulse counting")
                .containsEntry("Pressure", "chamber pressure 5 \u00d7 10\u207b\u2079 mbar")
                .containsEntry("Sample bias", "not recorded")
                .containsEntry("Charge neutraliser", "on; \u201cflood gun on, <b>\u201d");
    }

    @Test
    void theHolderRunIsReadAndADifferenceIsSaid() throws Exception {
        Map<String, String> facts = facts(run(CONDITIONS, HEADER, Optional.empty()), Form.FULL);
        assertThat(facts)
                .containsEntry("X-ray power", "120 W as declared; in the files: 150 W")
                .containsEntry("Analyser mode", "constant pass energy")
                .containsEntry("Lens", "large area as declared; in the files: magnification 5")
                .containsEntry("Sample temperature", "22 \u00b0C")
                .containsEntry("Limits of linear counting", "linear to 2000000 counts a second");
        assertThat(facts.get("Pressure")).startsWith("4.5 \u00d7 10\u207b\u2079 mbar");
        assertThat(page(run(CONDITIONS, List.of(), Optional.empty()), Form.FULL)
                        .getDocumentElement()
                        .getTextContent())
                .contains("pressure while measuring 4.5 \u00d7 10\u207b\u2079 mbar")
                .contains("at 120 W")
                .contains("Not recorded of any sample: Id,")
                .contains("Photograph");
    }

    @Test
    void dwellScansAndTimeStandWithEachSpectrum() throws Exception {
        NodeList rows = page(run("", HEADER, Optional.empty()), Form.FULL).getElementsByTagName("tr");
        List<String> spectra = new ArrayList<>();
        for (int i = 0; i < rows.getLength(); i++) {
            String text = rows.item(i).getTextContent();
            if (text.contains("1486.6") && text.contains("survey")) spectra.add(text);
        }
        // 1201 channels of 0.5 s are 10.0 min: closed form
        assertThat(spectra).hasSize(1);
        assertThat(spectra.get(0)).contains("0.1510.0");
    }

    @Test
    void theCalibrationStandsWithItsLines() throws Exception {
        CalibrationRecord record = new CalibrationRecord(
                LocalDate.of(2026, 5, 1),
                LocalDate.of(2026, 9, 1),
                "invented",
                "Al Ka",
                true,
                1486.69,
                OptionalDouble.of(20),
                0.1,
                1e-4,
                -0.05,
                OptionalDouble.of(0.012),
                EnergyScale.Verdict.WITHIN,
                List.of(new CalibrationRecord.Line(
                        "Au 4f7/2",
                        83.96,
                        84.01,
                        OptionalDouble.of(0.004),
                        OptionalDouble.of(0.71),
                        OptionalDouble.empty())));
        RunResult result = run("\"energyCalibration\": \"calibration.json\",", List.of(), Optional.of(record));
        Map<String, String> facts = facts(result, Form.SHORT);
        assertThat(facts).containsEntry("Calibrated", "2026-05-01, due again 2026-09-01");
        // corrected = E + a E + b: -0.05 at 0 eV, +0.05 at 1000 eV
        assertThat(facts.get("Energy scale"))
                .contains("ISO 15472", "calibration.json", "\u22120.050 eV at 0 eV", "+0.050 eV at 1000 eV", "0.012");
        assertThat(page(result, Form.SHORT).getDocumentElement().getTextContent())
                .contains("Au 4f7/2")
                .contains("84.010 \u00b1 0.004")
                .contains("+0.050");
    }

    /** What a report must hold at the least, of each spot: background and window of each intensity, method and shift. */
    @Test
    void theShortFormKeepsWhatAReportMustHold() throws Exception {
        String text = page(ExampleRun.plain(), Form.SHORT).getDocumentElement().getTextContent();
        assertThat(text)
                .contains("linear, 5 endpoint channels")
                .contains("469.0 to 455.0")
                .contains("Added to measured energies")
                .contains("What speaks for and against it")
                .contains("sums to 100")
                .doesNotContain("Other references this spot could have");
    }

    @Test
    void smallNumbersAreWrittenWithAPowerOfTen() {
        assertThat(HeaderFacts.scientific(2e-10)).isEqualTo("2 \u00d7 10\u207b\u00b9\u2070");
        assertThat(HeaderFacts.scientific(0.004)).isEqualTo("0.004");
    }
}
