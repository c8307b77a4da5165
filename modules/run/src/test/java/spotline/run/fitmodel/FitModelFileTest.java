package spotline.run.fitmodel;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import spotline.analysis.background.Shirley;
import spotline.analysis.background.TougaardThree;
import spotline.analysis.peakfit.ComponentModel;
import spotline.analysis.peakfit.DefaultModels;
import spotline.analysis.peakfit.FitModel;
import spotline.analysis.peakfit.ParameterRule.EqualTo;
import spotline.analysis.peakfit.ParameterRule.Fixed;
import spotline.analysis.peakfit.ParameterRule.Free;
import spotline.analysis.peakfit.ParameterRule.OffsetFrom;
import spotline.analysis.peakfit.ParameterRule.RatioTo;
import spotline.analysis.peakfit.Satellite;
import spotline.core.ReadException;
import spotline.reference.Line;
import spotline.reference.ReferenceData;
import spotline.spectra.BindingScan;

class FitModelFileTest {
    private static final ReferenceData REFERENCE = ReferenceData.shipped();

    /** The fit-model file of the interface. */
    private static final String EXAMPLE = """
            {
              "format": "spotline-fit-model/1",
              "window": { "lowEv": 282.0, "highEv": 292.0 },
              "background": { "kind": "shirley", "endpointChannels": 5, "fitted": false },
              "components": [
                { "name": "a", "shape": "voigt",
                  "position": { "start": 284.8, "min": 284.0, "max": 285.6 },
                  "gaussianFwhm": { "start": 1.0, "min": 0.3, "max": 2.5 }, "lorentzianFwhm": { "fixed": 0.12 }, "area": { "min": 0 } },
                { "name": "b", "shape": "voigt",
                  "position": { "offsetFrom": "a", "start": 1.6, "min": 1.0, "max": 2.2 },
                  "gaussianFwhm": { "equalTo": "a" }, "lorentzianFwhm": { "equalTo": "a" }, "area": { "ratioTo": "a", "fixed": 0.5 } }
              ]
            }
            """;

    private static BindingScan scan(double low, double high) {
        int n = (int) Math.round((high - low) / 0.1) + 1;
        double[] energy = new double[n];
        double[] counts = new double[n];
        for (int i = 0; i < n; i++) {
            energy[i] = low + 0.1 * i;
            counts[i] = 20;
        }
        return new BindingScan("made", 1486.6, energy, counts, true, OptionalDouble.empty(), OptionalDouble.empty());
    }

    private static FitModel read(String json) throws ReadException {
        return FitModelFile.read("model.json", json.getBytes(UTF_8), Optional.of(scan(280, 294)), REFERENCE);
    }

    private static List<String> faults(String json) {
        ReadException first = catchThrowableOfType(ReadException.class, () -> read(json));
        assertThat(first).as("a fault").isNotNull();
        List<String> all = new ArrayList<>(List.of(String.valueOf(first.getMessage())));
        first.others().forEach(other -> all.add(String.valueOf(other.getMessage())));
        return all;
    }

    @Test
    void theExampleOfTheInterfaceIsRead() throws ReadException {
        FitModel model = read(EXAMPLE);
        assertThat(model.window().lowEv()).isEqualTo(282);
        assertThat(model.background().fitted()).isFalse();
        assertThat(model.background().background()).isEqualTo(Shirley.of(5));
        ComponentModel a = model.components().get(0);
        assertThat(a.shape().name()).isEqualTo("voigt");
        assertThat(a.parameters())
                .containsEntry("position", Free.from(284.8, 284, 285.6))
                .containsEntry("lorentzianFwhm", new Fixed(0.12))
                .containsEntry("area", Free.within(0, Double.POSITIVE_INFINITY));
        assertThat(model.components().get(1).parameters())
                .containsEntry("position", new OffsetFrom("a", Free.from(1.6, 1, 2.2)))
                .containsEntry("gaussianFwhm", new EqualTo("a"))
                .containsEntry("area", new RatioTo("a", new Fixed(0.5)));
    }

    @Test
    void everyFaultIsToldAtOnce() {
        assertThat(faults("""
                        { "format": "spotline-fit-model/1",
                          "window": { "lowEv": 283, "highEv": 283.4 },
                          "background": { "kind": "shirley-data-capped", "fitted": true },
                          "components": [
                            { "name": "a", "shape": "voigt", "position": { "offsetFrom": "b", "fixed": 1 },
                              "gaussianFwhm": { "start": 5, "max": 3 }, "lorentzianFwhm": { "equalTo": "z" } },
                            { "name": "b", "shape": "voigt", "position": { "equalTo": "a" } },
                            { "name": "b", "shape": "gaussian", "doublet": "He 2p", "area": { "fixed": 1, "min": 3 } } ] }
                        """))
                .satisfiesExactlyInAnyOrder(
                        f -> assertThat(f).contains("/components/2/area/min"),
                        f -> assertThat(f).contains("/components/2/name"),
                        f -> assertThat(f).contains("/components/0/gaussianFwhm/start"),
                        f -> assertThat(f)
                                .contains("/components/0/lorentzianFwhm")
                                .contains("\"z\""),
                        f -> assertThat(f).contains("/components/0/position").contains("circle"),
                        f -> assertThat(f).contains("/components/2/doublet").contains("He 2p"),
                        f -> assertThat(f).contains("/background/fitted"),
                        f -> assertThat(f)
                                .contains("/window")
                                .contains("5 channels")
                                .contains("free parameters"));
    }

    @Test
    void whatTheSchemaDoesNotAllowIsToldInSentences() {
        assertThat(faults("""
                        { "format": "spotline-fit-model/1",
                          "window": { "lowEv": 283 },
                          "background": { "kind": "shirly", "endpointChannels": 0 },
                          "components": [ { "name": "a", "shape": "voight", "positon": {}, "area": { "start": "big" }, "doublet": 3 } ] }
                        """))
                .satisfiesExactlyInAnyOrder(
                        f -> assertThat(f).contains("/window").contains("highEv"),
                        f -> assertThat(f).contains("/background/kind").contains("shirley"),
                        f -> assertThat(f)
                                .contains("/background/endpointChannels")
                                .contains("1 or more"),
                        f -> assertThat(f).contains("/components/0/shape").contains("did you mean \"voigt\""),
                        f -> assertThat(f).contains("/components/0/positon").contains("did you mean \"position\""),
                        f -> assertThat(f).contains("/components/0/area/start").contains("a number"),
                        f -> assertThat(f).contains("/components/0/doublet").contains("a line such as \"Ti 2p\""));
    }

    @Test
    void aNewerFormatAndAnotherKindAreRefused() {
        assertThatThrownBy(() -> read(EXAMPLE.replace("model/1", "model/2"))).hasMessageContaining("newer");
        assertThatThrownBy(() -> read(EXAMPLE.replace("fit-model/1", "treatment/1")))
                .isInstanceOf(ReadException.class);
        assertThatThrownBy(() -> FitModelFile.read(Path.of("no-such-model.json"), scan(280, 290), REFERENCE))
                .hasMessageContaining("no such file");
    }

    @Test
    void everyTruncationIsRefused() {
        for (int length = 0; length < EXAMPLE.stripTrailing().length(); length++) {
            String cut = EXAMPLE.substring(0, length);
            assertThatThrownBy(() -> read(cut)).as("%d characters", length).isInstanceOf(ReadException.class);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "constant",
                "linear",
                "polynomial",
                "shirley",
                "shirley-data-capped",
                "tougaard-two",
                "tougaard-three"
            })
    void everyBackgroundIsReadAndWritten(String kind) throws ReadException {
        FitModel model = read(EXAMPLE.replace("\"kind\": \"shirley\"", "\"kind\": \"" + kind + "\""));
        ObjectNode written = FitModelWriter.json(model);
        assertThat(written.at("/background/kind").asText()).isEqualTo(kind);
        assertThat(read(written.toString())).isEqualTo(model);
    }

    @Test
    void aMaterialNamesTheCrossSection() throws ReadException {
        FitModel model =
                read(EXAMPLE.replace("\"kind\": \"shirley\"", "\"kind\": \"tougaard-three\", \"material\": \"Al\""));
        assertThat(((TougaardThree) model.background().background()).c()).isEqualTo(230); // Tougaard 1997, from memory
        assertThat(faults(EXAMPLE.replace(
                        "\"kind\": \"shirley\"", "\"kind\": \"tougaard-three\", \"material\": \"cheese\"")))
                .singleElement()
                .asString()
                .contains("/background/material")
                .contains("polymers");
    }

    @Test
    void shapesBringTheirOwnFields() throws ReadException {
        FitModel model = read("""
                { "format": "spotline-fit-model/1", "window": { "lowEv": 282, "highEv": 292 },
                  "background": { "kind": "linear", "fitted": true },
                  "xraySatellites": "Mg Ka",
                  "components": [
                    { "name": "m", "shape": "doniach-sunjic", "areaLimits": { "belowEv": 5, "aboveEv": 10 }, "asymmetry": { "fixed": 0.1 } },
                    { "name": "t", "shape": "template", "samples": { "offsetEv": [-2, -1, 0, 1, 2], "intensity": [0, 1, 3, 1, 0] }, "broadening": { "fixed": 0.2 } },
                    { "name": "e", "shape": "voigt-exponential-tail", "decay": { "max": 3 } } ] }
                """);
        assertThat(model.components().get(0).shape().areaLimits().orElseThrow().aboveEv())
                .isEqualTo(10);
        assertThat(model.satellites()).hasSizeGreaterThan(3);
        assertThatThrownBy(() -> FitModelWriter.json(model)).hasMessageContaining("template");
        assertThat(faults(EXAMPLE.replace(
                        "\"shape\": \"voigt\",",
                        "\"shape\": \"voigt\", \"samples\": { \"offsetEv\": [1,2,3,4], \"intensity\": [1,2,3,4] },")))
                .hasSize(2)
                .allSatisfy(f -> assertThat(f).contains("samples").contains("template"));
        assertThat(faults(EXAMPLE.replace("\"format\"", "\"xraySatellites\": \"Xy Kb\", \"format\"")))
                .singleElement()
                .asString()
                .contains("/xraySatellites");
    }

    @Test
    void doubletsAndSatellitesComeBackAsWritten() throws ReadException {
        String json = """
                { "format": "spotline-fit-model/1", "window": { "lowEv": 280, "highEv": 294 },
                  "background": { "kind": "linear", "endpointChannels": 3, "fitted": true },
                  "components": [
                    { "name": "plain", "shape": "gaussian", "doublet": "S 2p" },
                    { "name": "wide", "shape": "voigt", "doublet": { "line": "Ti 2p",
                      "splittingEv": { "start": 5.7, "min": 5.5, "max": 6.1 }, "areaRatio": { "fixed": 0.5 },
                      "widthRatio": { "fixed": 1.2 }, "lorentzianFwhm": { "min": 0.2, "max": 3 } } } ],
                  "xraySatellites": [ { "displacementEv": 8.4, "relativeArea": 0.092 } ] }
                """;
        FitModel model = read(json);
        assertThat(model.satellites()).containsExactly(new Satellite(8.4, 0.092));
        ObjectNode written = FitModelWriter.json(model);
        assertThat(written.at("/components/0/doublet").asText()).isEqualTo("S 2p");
        assertThat(read(written.toString())).isEqualTo(model);
    }

    /** So that a model used by a run can be read from its record and used again. */
    @Test
    void everyDefaultModelComesBackAsWritten() throws ReadException {
        DefaultModels defaults = new DefaultModels(REFERENCE);
        for (String name : List.of("C 1s", "N 1s", "F 1s", "Al 2p", "Si 2p", "Ti 2p", "Ag 3d", "W 4f", "Zn 2p")) {
            Line line = Line.parse(name);
            double at = REFERENCE.bindingEnergy(line.high()).orElseThrow().valueEv();
            BindingScan scan = scan(at - 20, at + 40);
            FitModel model = defaults.of(line, scan, 0, Set.of(line.element())).orElseThrow();
            String json = FitModelWriter.json(model).toPrettyString();
            FitModel back = FitModelFile.read(name, json.getBytes(UTF_8), Optional.of(scan), REFERENCE);
            assertThat(FitModelWriter.json(back)).isEqualTo(FitModelWriter.json(model));
            assertThat(back.components()).hasSameSizeAs(model.components());
        }
    }
}
