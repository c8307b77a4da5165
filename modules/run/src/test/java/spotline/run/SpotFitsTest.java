package spotline.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spotline.analysis.quantify.StateShare;
import spotline.core.Finding;
import spotline.core.ReadException;
import spotline.core.Severity;
import spotline.core.Work;
import spotline.numerics.random.PoissonSampler;
import spotline.numerics.random.RandomStreams;
import spotline.numerics.shape.Voigt;
import spotline.reference.Line;
import spotline.reference.ReferenceData;
import spotline.run.findings.RuleBook;

/** Peak fits of a run's narrow scans, on the demonstration and on made scans, whose truth is known. */
class SpotFitsTest {
    private static final Path DEMO = Path.of("../../demo-spectra");
    private static final ReferenceData REFERENCE = ReferenceData.shipped();
    private static final int PIGMENT = 4;

    @TempDir
    private Path folder;

    private SpotInput demo(int spot, String peakFit) throws Exception {
        return load(DEMO.resolve("footbridge-bearing.json"), peakFit).spots().get(spot);
    }

    private HolderRun load(Path holder, String peakFit) throws Exception {
        Path file = folder.resolve("treatment.json");
        Files.writeString(file, "{\"format\": \"spotline-treatment/1\", \"peakFit\": " + peakFit + "}");
        return new HolderRunLoader(REFERENCE).load(holder, Optional.of(file), 1, Work.UNWATCHED);
    }

    private static SpotResult treat(SpotInput input) {
        return new SpotTreatment(REFERENCE).treat(input, Work.UNWATCHED);
    }

    private static List<String> states(SpotResult result) {
        return result.states().stream().map(s -> s.line() + " " + s.state()).toList();
    }

    /** States that the default keeps apart; the demonstration has more than one of some. Truth: truth.json, invented. */
    @Test
    void statesShareTheirElementsOutAsTheyWereMade() throws Exception {
        Map<String, String> standsFor = Map.of(
                "O-C=O",
                "O-C=O or carbonate",
                "carbonate",
                "O-C=O or carbonate",
                "CF2",
                "CF2",
                "C-C, C-H",
                "C-C, C-H",
                "C-O",
                "C-O",
                "C=O",
                "C=O");
        HolderRun run = load(DEMO.resolve("footbridge-bearing.json"), "{}");
        JsonNode truth =
                new ObjectMapper().readTree(DEMO.resolve("truth.json").toFile()).path("spots");
        int checked = 0;
        for (int spot : new int[] {0, 2, PIGMENT}) {
            Map<String, Double> expected = new TreeMap<>();
            for (JsonNode state : truth.path(spot).path("states")) {
                if (!state.path("element").asText().equals("C")) continue;
                expected.merge(
                        standsFor.get(state.path("state").asText()),
                        state.path("fraction_of_element").asDouble(),
                        Double::sum);
            }
            SpotResult result = treat(run.spots().get(spot));
            double sum = 0;
            for (StateShare state : result.states()) {
                if (!state.line().equals("C 1s")) continue;
                double share = state.fractionOfElement().value();
                assertThat(share).as(spot + state.state()).isCloseTo(expected.get(state.state()), within(0.02));
                sum += share;
                checked++;
            }
            assertThat(sum).isCloseTo(1, within(1e-9));
        }
        assertThat(checked).isGreaterThanOrEqualTo(11);
    }

    @Test
    void oneFitAScanIsShownAndTheEnergyReferencesStaysEvidence() throws Exception {
        SpotResult with = treat(demo(PIGMENT, "{}"));
        assertThat(states(with)).contains("C 1s C-O", "Ti 2p TiO2");
        String carbon = with.charge().fit().orElseThrow().spectrum();
        assertThat(with.peaks().stream()
                        .filter(p -> p.spectrum().equals(carbon))
                        .map(FittedPeak::peak))
                .containsExactlyElementsOf(with.fits().stream()
                        .filter(f -> f.spectrum().equals(carbon))
                        .flatMap(f -> f.peaks(with.charge()).stream().map(FittedPeak::peak))
                        .toList());
        SpotResult without = treat(demo(PIGMENT, "{\"without\": [\"C 1s\"]}"));
        assertThat(without.fits()).extracting(LineFit::line).containsExactly(Line.parse("Ti 2p"));
        assertThat(without.peaks().stream().filter(p -> p.spectrum().equals(carbon)))
                .hasSameSizeAs(with.charge().fit().orElseThrow().components());
        SpotResult off = treat(demo(PIGMENT, "{\"defaultModels\": false}"));
        assertThat(off.fits()).isEmpty();
        assertThat(off.composition()).isEqualTo(with.composition());
    }

    /** The record of a run is a treatment: it makes the same fits again, from models that a fit-model file may hold. */
    @Test
    void theRecordMakesTheSameFitsAgain() throws Exception {
        HolderRun all = load(DEMO.resolve("footbridge-bearing.json"), "{}");
        HolderRun run =
                new HolderRun(all.plan(), List.of(all.spots().get(PIGMENT)), all.files(), all.findings(), all.seed());
        RunPipeline pipeline = new RunPipeline(REFERENCE, "test", RuleBook.standard());
        RunResult first = pipeline.treat(run, 1, Work.UNWATCHED);
        JsonNode models = first.treatments().get("5").at("/peakFit/models");
        assertThat(models.at("/Ti 2p/format").asText()).isEqualTo("spotline-fit-model/1");
        assertThat(models.at("/Ti 2p/components")).hasSize(1);
        ObjectNode patch = new ObjectMapper().createObjectNode();
        patch.set("models", models);
        patch.put("defaultModels", false);
        SpotResult again = treat(demo(PIGMENT, patch.toString()));
        List<FittedPeak> before = first.spots().get(0).peaks();
        assertThat(again.peaks()).hasSameSizeAs(before);
        for (int i = 0; i < before.size(); i++) {
            FittedPeak a = before.get(i);
            FittedPeak b = again.peaks().get(i);
            double u = a.area().standardUncertainty().orElseThrow();
            assertThat(b.peak()).isEqualTo(a.peak());
            assertThat(b.area().value()).isCloseTo(a.area().value(), within(0.01 * u));
            assertThat(b.area().standardUncertainty().orElseThrow()).isCloseTo(u, within(0.01 * u));
        }
    }

    @Test
    void withheldCompositionsWithholdTheirStates() throws Exception {
        SpotResult result = treat(demo(PIGMENT, "{}").with(Finding.stop("made", "Made.")));
        assertThat(result.states()).isNotEmpty().allMatch(s -> s.atomicPercent().isEmpty());
    }

    private static final String TWO_FREE = """
            {"models": {"Ti 2p": {"format": "spotline-fit-model/1",
              "window": {"lowEv": 458, "highEv": 466}, "background": {"kind": "shirley", "endpointChannels": 5, "fitted": true},
              "components": [
               {"name": "one", "shape": "voigt", "position": {"start": 462.4, "min": 461, "max": 464},
                "gaussianFwhm": {"start": 1, "min": 0.3, "max": 2.5}, "lorentzianFwhm": {"fixed": 0.25}, "area": {"min": 0}},
               {"name": "other", "shape": "voigt", "position": {"start": 462.8, "min": 461, "max": 464},
                "gaussianFwhm": {"start": 1, "min": 0.3, "max": 2.5}, "lorentzianFwhm": {"fixed": 0.25}, "area": {"min": 0}}]}}}
            """;

    @Test
    void ofTwoThatAreNotToldApartTheSumIsOneStateAndAFindingSaysWhy() throws Exception {
        SpotResult result = treat(demo(PIGMENT, TWO_FREE));
        assertThat(result.findings())
                .filteredOn(f -> f.rule().equals("fit-only-sum"))
                .singleElement()
                .satisfies(f -> assertThat(f.severity()).isEqualTo(Severity.CAUTION))
                .satisfies(f -> assertThat(f.message()).contains("one and other", "only their sum is measured"));
        assertThat(states(result))
                .filteredOn(s -> s.startsWith("Ti 2p"))
                .containsExactly("Ti 2p one + other, only their sum is measured");
    }

    @Test
    void aModelThatCannotBeFittedIsToldAndTheRestGoesOn() throws Exception {
        SpotResult good = treat(demo(PIGMENT, "{}"));
        String elsewhere = TWO_FREE.replace("\"lowEv\": 458, \"highEv\": 466", "\"lowEv\": 100, \"highEv\": 110")
                .replace("\"start\": 462.4, \"min\": 461, \"max\": 464", "\"start\": 104, \"min\": 102, \"max\": 108")
                .replace("\"start\": 462.8, \"min\": 461, \"max\": 464", "\"start\": 106, \"min\": 102, \"max\": 108");
        SpotResult result = treat(demo(PIGMENT, elsewhere));
        assertThat(result.findings())
                .filteredOn(f -> f.rule().equals("fit-model"))
                .singleElement()
                .satisfies(f -> assertThat(f.severity()).isEqualTo(Severity.CAUTION));
        assertThat(result.composition()).isEqualTo(good.composition());
        assertThat(states(result)).contains("C 1s C-O").noneMatch(s -> s.startsWith("Ti"));
    }

    @Test
    void faultsOfSettingsAreToldWithTheirPlace() {
        assertThatThrownBy(() -> demo(PIGMENT, "{\"without\": [\"Xy 9s\"]}"))
                .isInstanceOf(ReadException.class)
                .hasMessageContaining("Xy 9s");
        assertThatThrownBy(() -> demo(PIGMENT, TWO_FREE.replace("\"fixed\": 0.25", "\"fixd\": 0.25")))
                .isInstanceOf(ReadException.class)
                .hasMessageContaining("Ti 2p");
    }

    /** A C 1s scan of 11 channels cannot carry its default model: a note, never more. */
    @Test
    void aDefaultModelThatCannotBeFittedIsANote() throws Exception {
        SpotResult result = treat(made(2.4).spots().get(0));
        assertThat(result.findings())
                .filteredOn(f -> f.message().startsWith("Default model of C 1s"))
                .isNotEmpty()
                .allMatch(f -> f.severity() == Severity.NOTE);
        assertThat(result.fits()).isEmpty();
    }

    @Test
    void aGroundedConductorsCarbonIsFittedWhereItStands() throws Exception {
        SpotResult result = treat(made(0.1).spots().get(0));
        assertThat(states(result)).containsExactly("C 1s C-C, C-H");
        assertThat(result.states().get(0).fractionOfElement().value()).isEqualTo(1);
    }

    /** A grounded conductor with one narrow scan of one component, invented. */
    private HolderRun made(double step) throws Exception {
        List<String> rows = new ArrayList<>();
        int n = (int) Math.round(24 / step) + 1;
        double[] x = new double[n];
        double[] y = new double[n];
        for (int i = 0; i < n; i++) x[i] = 276 + i * step;
        new Voigt().evaluate(x, new double[] {284.8, 20000, 1.1, 0.1}, y);
        for (int i = 0; i < n; i++) y[i] += 200 + (x[i] > 284.8 ? 40 : 0);
        double[] counts = PoissonSampler.sample(RandomStreams.stream(1, "made scan"), y);
        for (int i = 0; i < n; i++) rows.add(String.format(Locale.ROOT, "%.2f %.0f", x[i], counts[i]));
        Files.write(folder.resolve("c1s.txt"), rows);
        Path holder = folder.resolve("holder.json");
        Files.writeString(holder, """
                {"format": "spotline-holder-run/1", "spots": [{"id": "1",
                 "sample": {"name": "made", "conductivity": "conductor", "expectedElements": ["C"]},
                 "mount": {"method": "metal-clip", "electricalState": "grounded"},
                 "spectra": [{"file": "c1s.txt", "columns": {"energy": 1, "ordinate": 2, "scale": "binding",
                   "ordinateKind": "counts", "photonEnergyEv": 1486.6}}]}]}
                """);
        return load(holder, "{}");
    }
}
