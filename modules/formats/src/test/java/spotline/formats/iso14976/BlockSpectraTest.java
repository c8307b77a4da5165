package spotline.formats.iso14976;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spotline.core.Finding;
import spotline.formats.source.Warnings;
import spotline.spectra.Acquisition;
import spotline.spectra.Coordinate;
import spotline.spectra.Counting;
import spotline.spectra.EnergyScale;
import spotline.spectra.HeaderField;
import spotline.spectra.ListedAxis;
import spotline.spectra.Ordinate;
import spotline.spectra.RegularAxis;
import spotline.spectra.SpectrumSet;

class BlockSpectraTest {
    private final Warnings warnings = new Warnings("test.vms");

    private List<String> rules() {
        return warnings.findings().stream().map(Finding::rule).toList();
    }

    private List<Optional<SpectrumSet>> golden(String name) throws Exception {
        Experiment experiment = Golden.parse(Golden.file(name)).experiment();
        BlockSpectra spectra = new BlockSpectra(experiment.header(), warnings);
        List<Optional<SpectrumSet>> sets = new ArrayList<>();
        for (ExperimentBlock block : experiment.blocks()) {
            sets.add(spectra.convert(block, sets.size() + 1, 10 * sets.size() + 1));
        }
        return sets;
    }

    private static BlockBuilder block() {
        return ExperimentBlock.xps("a block", "a sample")
                .time(OffsetDateTime.parse("2024-02-29T23:05:07.5+05:45"))
                .source("Al Ka", 1486.6, OptionalDouble.of(150))
                .passEnergyEv(20)
                .region("C", "1s")
                .kineticAxis(1190, 0.1)
                .pulseCounting(0.5, 4, OptionalDouble.of(7e-8));
    }

    private SpectrumSet convert(UnaryOperator<BlockBuilder> change) {
        ExperimentHeader header = ExperimentHeader.norm("", "", "", "", List.of());
        Experiment experiment =
                new Experiment(header, List.of(change.apply(block()).build()));
        return new BlockSpectra(header, warnings)
                .convert(experiment.blocks().get(0), 1, 20)
                .orElseThrow();
    }

    @Test
    void depthProfile() throws Exception {
        List<Optional<SpectrumSet>> sets = golden("depth-profile.txt");
        SpectrumSet first = sets.get(0).orElseThrow();
        assertThat(first.axis()).isInstanceOf(RegularAxis.class);
        assertThat(first.axis().quantity().scale()).isEqualTo(EnergyScale.BINDING);
        assertThat(first.axis().last()).isEqualTo(104);
        assertThat(first.size()).isEqualTo(1);
        assertThat(first.coordinates()).containsExactly(new Coordinate("etch time", "s", new double[] {0}));
        assertThat(first.ordinate(Ordinate.Kind.INTENSITY).orElseThrow().copy(0, 3))
                .containsExactly(10, 30, 20);
        assertThat(first.ordinate(Ordinate.Kind.INTENSITY).orElseThrow().counting())
                .isEqualTo(Counting.COUNTS);
        assertThat(first.ordinate(Ordinate.Kind.TRANSMISSION).orElseThrow().copy(0, 3))
                .containsExactly(0.5, 0.6, 0.7);
        Acquisition acquisition = first.acquisition();
        assertThat(acquisition.time()).contains(OffsetDateTime.parse("2024-02-29T23:05:07.5-03:30"));
        assertThat(acquisition.excitation().monochromated()).contains(true);
        assertThat(acquisition.analyser().passEnergyEv()).hasValue(20);
        assertThat(acquisition.analyser().retardRatio()).isEmpty();
        assertThat(acquisition.timing().deadTimeSeconds()).hasValue(7e-8);
        assertThat(acquisition.label()).isEqualTo("Si 2p");
        // Take-off 30 degree and tilt 10 degree in one azimuth: 20 degree apart, derived.
        assertThat(acquisition.emissionAngleDeg().orElseThrow()).isCloseTo(20, within(1e-9));
        assertThat(acquisition.comments()).containsExactly("a comment of the block");

        SpectrumSet second = sets.get(1).orElseThrow();
        assertThat(second.acquisition().analyser().passEnergyEv()).isEmpty();
        assertThat(second.acquisition().analyser().retardRatio()).hasValue(10);
        // 0.1 s x 5 scans
        assertThat(second.ordinates().get(0).counting().countsPerUnit()).hasValue(0.5);

        SpectrumSet third = sets.get(2).orElseThrow();
        assertThat(third.axis().quantity().scale()).isEqualTo(EnergyScale.OTHER);
        assertThat(third.acquisition().excitation().photonEnergyEv()).isEmpty();
        assertThat(third.ordinates().get(0).counting()).isEqualTo(Counting.UNKNOWN);
        assertThat(rules()).isEmpty();
    }

    @Test
    void everyHeaderFieldIsKeptWordForWord() throws Exception {
        List<HeaderField> header =
                golden("depth-profile.txt").get(0).orElseThrow().acquisition().header();
        List<String> lines = new ArrayList<>(Golden.lines("depth-profile.txt").subList(0, 89));
        // The number of blocks is no field of a block.
        lines.remove(24);
        assertThat(header).extracting(HeaderField::value).containsExactlyElementsOf(lines);
        assertThat(header)
                .contains(
                        new HeaderField("signal time correction", "7e-8"),
                        new HeaderField("sample rotation angle", "1E37"),
                        new HeaderField("value of additional numerical parameter 1", "2e-9"));
    }

    @Test
    void image() throws Exception {
        List<Optional<SpectrumSet>> sets = golden("image.txt");
        SpectrumSet first = sets.get(0).orElseThrow();
        assertThat(first.axis().quantity().label()).isEqualTo("point number");
        assertThat(first.axis().quantity().scale()).isEqualTo(EnergyScale.OTHER);
        assertThat(first.axis().first()).isEqualTo(1);
        assertThat(first.axis().last()).isEqualTo(4);
        assertThat(first.acquisition().time()).isEmpty();
        assertThat(first.ordinates().get(0).counting()).isEqualTo(Counting.COUNTS);
        // A differential is no count, whatever the signal mode says.
        assertThat(sets.get(1).orElseThrow().ordinates().get(0).counting()).isEqualTo(Counting.UNKNOWN);
        assertThat(sets.get(2)).isEmpty();
        assertThat(rules()).containsExactly("iso14976-empty-block");
    }

    @Test
    void irregularMap() throws Exception {
        SpectrumSet set = golden("irregular-map.txt").get(0).orElseThrow();
        assertThat(set.axis()).isInstanceOf(ListedAxis.class);
        assertThat(set.axis().quantity().scale()).isEqualTo(EnergyScale.KINETIC);
        assertThat(set.axis().value(2)).isEqualTo(921);
        assertThat(set.ordinates())
                .extracting(Ordinate::kind)
                .containsExactly(Ordinate.Kind.INTENSITY, Ordinate.Kind.OTHER);
        assertThat(set.coordinates())
                .containsExactly(
                        new Coordinate("x coordinate", "", new double[] {2}),
                        new Coordinate("y coordinate", "", new double[] {3}));
        assertThat(set.acquisition().position())
                .containsExactly(new HeaderField("x coordinate", "2"), new HeaderField("y coordinate", "3"));
        // There is no month 13.
        assertThat(set.acquisition().time()).isEmpty();
        assertThat(rules()).containsExactly("iso14976-date");
    }

    @ParameterizedTest
    @CsvSource({
        "d, pulse counting, 12, 1",
        "n, pulse counting, 12, 1",
        "Counts, Pulse Counting, 12, 1",
        "c/s, pulse counting, 12.5, 2",
        "cps, pulse counting, 12.5, 2",
        "counts/s, pulse counting, 12.5, 2",
        "d, analogue, 12, ",
        "c/s, analogue, 12, ",
        "nA, pulse counting, 12, ",
        "'', pulse counting, 12, ",
        "d, pulse counting, 12.5, ",
        "d, pulse counting, -1, ",
        "c/s, pulse counting, -0.5, ",
    })
    void countsPerUnit(String unit, String mode, double value, Double expected) {
        SpectrumSet set = convert(b -> b.signal(new Signal(mode, Real.of(0.5), Real.of(4), Real.UNKNOWN))
                .variable("intensity", unit, new double[] {3, value, 7}));
        Counting counting = set.ordinates().get(0).counting();
        if (expected == null) assertThat(counting).isEqualTo(Counting.UNKNOWN);
        else assertThat(counting.countsPerUnit()).hasValue(expected);
        boolean told = value < 0 || (value != Math.rint(value) && unit.equals("d"));
        assertThat(rules()).isEqualTo(told ? List.of("iso14976-not-counts") : List.of());
    }

    @Test
    void aRateWithoutItsTimeHasNoStatistics() {
        SpectrumSet set = convert(b -> b.signal(new Signal("pulse counting", Real.of(0.5), Real.UNKNOWN, Real.UNKNOWN))
                .variable("intensity", "c/s", new double[] {3, 4}));
        assertThat(set.ordinates().get(0).counting()).isEqualTo(Counting.UNKNOWN);
        assertThat(rules()).containsExactly("iso14976-rate-without-time");
    }

    @Test
    void anUnknownValueIsNoPeak() {
        SpectrumSet set = convert(b -> b.counts(new double[] {3, 1e37, 7}));
        double[] values = set.ordinates().get(0).copy(0, 3);
        assertThat(values[1]).isNaN();
        assertThat(rules()).containsExactly("iso14976-ordinate-not-known");
    }

    @ParameterizedTest
    @CsvSource({
        "Al Ka, ",
        "Al (mono), true",
        "Monochromatic Al Ka, true",
        "non-monochromatic Mg Ka, false",
        "Mg Ka no mono, false",
    })
    void monochromator(String label, Boolean expected) {
        SpectrumSet set =
                convert(b -> b.source(label, 1486.6, OptionalDouble.empty()).counts(new double[] {1, 2}));
        assertThat(set.acquisition().excitation().source()).isEqualTo(label);
        assertThat(set.acquisition().excitation().monochromated()).isEqualTo(Optional.ofNullable(expected));
        assertThat(set.acquisition().excitation().photonEnergyEv()).hasValue(1486.6);
    }

    @ParameterizedTest
    @CsvSource({
        // take-off polar, take-off azimuth, tilt polar, tilt azimuth, emission angle; derived, spherical law of cosines
        "30, 0, 0, 1E37, 30",
        "0, 1E37, 25, 0, 25",
        "30, 0, 20, 0, 10",
        "30, 0, 20, 180, 50",
        "45, 0, 45, 90, 60",
        "0, 0, 0, 0, ",
        "1E37, 0, 20, 0, ",
        "30, 0, 1E37, 0, ",
        "30, 1E37, 20, 0, ",
        "60, 0, 60, 180, ",
    })
    void emissionAngle(double polar, double azimuth, double tilt, double tiltAzimuth, Double expected) {
        AnalyserSettings plain = AnalyserSettings.constantPassEnergy(20);
        AnalyserSettings analyser = new AnalyserSettings(
                plain.mode(),
                plain.passEnergyOrRatio(),
                plain.differentialWidth(),
                plain.magnification(),
                plain.workFunction(),
                plain.targetBias(),
                plain.analysisWidthX(),
                plain.analysisWidthY(),
                Real.of(polar),
                Real.of(azimuth));
        SpectrumSet set = convert(b -> b.analyser(analyser)
                .orientation(new SampleOrientation(Real.of(tilt), Real.of(tiltAzimuth), Real.UNKNOWN))
                .counts(new double[] {1, 2}));
        OptionalDouble angle = set.acquisition().emissionAngleDeg();
        if (expected == null) assertThat(angle).isEmpty();
        else assertThat(angle.orElseThrow()).isCloseTo(expected, within(1e-9));
    }

    @Test
    void anAbscissaWithoutStepIsReplacedByPointNumbers() {
        SpectrumSet set = convert(b -> b.kineticAxis(1190, 0).counts(new double[] {1, 2, 3}));
        assertThat(set.axis().quantity().scale()).isEqualTo(EnergyScale.OTHER);
        assertThat(set.axis().last()).isEqualTo(3);
        assertThat(rules()).containsExactly("iso14976-abscissa-unusable");
    }

    @Test
    void theBuilderLeavesTheRestUnknown() throws Exception {
        ExperimentHeader header = ExperimentHeader.norm("", "", "", "a test", List.of("invented"))
                .withExperimentalVariables(List.of(new Variable("tilt", "degree")))
                .withSpectralRegions(1);
        ExperimentBlock built = block().experimentalValues(12.5)
                .comments(List.of("one", ""))
                .parameters(List.of(new AdditionalParameter("gain", "d", Real.of(3))))
                .counts(new double[] {4, 9, 2})
                .variable("transmission", "d", new double[] {1, 0.99, 0.98})
                .build();
        Experiment experiment = new Experiment(header, List.of(built));
        Iso14976Parser.Parsed parsed = Golden.parse(Iso14976Writer.text(experiment));
        assertThat(parsed.experiment()).isEqualTo(experiment);
        assertThat(parsed.warnings()).isEmpty();
        SpectrumSet set = new BlockSpectra(header, warnings)
                .convert(parsed.experiment().blocks().get(0), 1, 20)
                .orElseThrow();
        assertThat(set.acquisition().time()).contains(OffsetDateTime.parse("2024-02-29T23:05:07.5+05:45"));
        assertThat(set.acquisition().timing().secondsPerChannel()).hasValue(2);
        assertThat(set.acquisition().analyser().workFunctionEv()).isEmpty();
        assertThat(set.coordinates()).containsExactly(new Coordinate("tilt", "degree", new double[] {12.5}));
        assertThat(built.ordinates().minima()).containsExactly(Real.of(2), Real.of(0.98));
        assertThat(built.ordinates().maxima()).containsExactly(Real.of(9), Real.of(1));
        assertThat(rules()).isEmpty();
    }

    @Test
    void theBuilderRefusesWhatNoFileCanHold() {
        assertThatThrownBy(() ->
                        ExperimentBlock.xps("a", "b").counts(new double[] {1}).build())
                .hasMessage("a regular scan needs an abscissa");
        assertThatThrownBy(() -> block().counts(new double[] {1})
                        .variable("t", "d", new double[2])
                        .build())
                .hasMessage("variables differ in length");
        assertThatThrownBy(() -> block().counts(new double[] {Double.NaN}).build())
                .hasMessageContaining("finite");
        assertThatThrownBy(() ->
                        block().region("C\n1s", "").counts(new double[] {1}).build())
                .hasMessageContaining("species label must be one line");
        assertThatThrownBy(() ->
                        block().region("\uD800", "").counts(new double[] {1}).build())
                .hasMessageContaining("surrogate");
        ExperimentBlock noValues = block().counts(new double[] {1}).build();
        ExperimentHeader header = ExperimentHeader.norm("", "", "", "", List.of())
                .withExperimentalVariables(List.of(new Variable("tilt", "degree")));
        assertThatThrownBy(() -> new Experiment(header, List.of(noValues)))
                .hasMessageContaining("with a value an experimental variable");
    }
}
