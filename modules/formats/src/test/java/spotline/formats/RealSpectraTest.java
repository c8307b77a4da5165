package spotline.formats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import spotline.core.Finding;
import spotline.core.Severity;
import spotline.formats.iso14976.Experiment;
import spotline.formats.iso14976.ExperimentBlock;
import spotline.formats.iso14976.Iso14976Parser;
import spotline.formats.iso14976.Iso14976Writer;
import spotline.formats.source.ReadLimits;
import spotline.spectra.Acquisition;
import spotline.spectra.BindingScan;
import spotline.spectra.Counting;
import spotline.spectra.EnergyScale;
import spotline.spectra.Ordinate;
import spotline.spectra.SpectrumSet;

/**
 * Five measured files under open licences, which the project does not carry (skipped where they are missing), against
 * what an independent throw-away parser found in them: {@code blocks.csv} beside the files.
 */
class RealSpectraTest {
    private static final Path FOLDER = Path.of("..", "..", "..", "shared", "real-spectra");

    private static List<Map<String, String>> rows() throws Exception {
        Path csv = FOLDER.resolve("blocks.csv");
        assumeTrue(Files.isReadable(csv), "the measured files are not here");
        List<String> lines = Files.readAllLines(csv, StandardCharsets.UTF_8);
        String[] names = lines.get(1).split(",", -1);
        List<Map<String, String>> rows = new ArrayList<>();
        for (String line : lines.subList(2, lines.size())) {
            String[] fields = line.split(",", -1);
            assertThat(fields).hasSameSizeAs(names);
            Map<String, String> row = new HashMap<>();
            for (int i = 0; i < names.length; i++) row.put(names[i], fields[i]);
            rows.add(row);
        }
        assertThat(rows).hasSize(43);
        return rows;
    }

    private static double number(Map<String, String> row, String column) {
        return Double.parseDouble(row.get(column));
    }

    private static Experiment experiment(String file) throws Exception {
        byte[] bytes = Files.readAllBytes(FOLDER.resolve(file));
        return Iso14976Parser.parse(file, new ByteArrayInputStream(bytes), bytes.length, ReadLimits.DEFAULT)
                .experiment();
    }

    @Test
    void everyRowOfTheListIsFound() throws Exception {
        Map<String, SpectrumFile> files = new HashMap<>();
        for (Map<String, String> row : rows()) {
            String name = row.get("file");
            if (!files.containsKey(name)) {
                files.put(name, SpectrumFiles.open(FOLDER.resolve(name), name, Optional.empty()));
            }
            int number = Integer.parseInt(row.get("block"));
            SpectrumSet set = files.get(name).block(number).orElseThrow().set();
            assertAcquisition(row, set.acquisition());
            assertAxis(row, set);
            assertOrdinate(row, set);
            double[] coordinates = set.coordinates().stream()
                    .filter(c -> !c.name().endsWith(" coordinate"))
                    .mapToDouble(c -> c.value(0))
                    .toArray();
            String stated = row.get("experimental_variable_values");
            double[] expected = stated.isEmpty()
                    ? new double[0]
                    : Arrays.stream(stated.split(" "))
                            .mapToDouble(Double::parseDouble)
                            .toArray();
            assertThat(coordinates).containsExactly(expected);
        }
        assertThat(files).hasSize(5);
    }

    private static void assertAcquisition(Map<String, String> row, Acquisition acquisition) {
        assertThat(acquisition.blockId()).isEqualTo(row.get("block_id"));
        assertThat(acquisition.sampleId()).isEqualTo(row.get("sample"));
        assertThat(acquisition.technique()).isEqualTo(row.get("technique"));
        assertThat(acquisition.excitation().source()).isEqualTo(row.get("source_label"));
        double energy = number(row, "h_nu_eV");
        boolean photons = row.get("technique").equals("XPS");
        assertThat(acquisition.excitation().photonEnergyEv().isPresent()).isEqualTo(photons);
        if (photons)
            assertThat(acquisition.excitation().photonEnergyEv().getAsDouble()).isEqualTo(energy);
        assertThat(acquisition.excitation().monochromated().isPresent())
                .isEqualTo(row.get("source_label").contains("mono"));
        assertThat(acquisition.analyser().mode()).isEqualTo(row.get("analyser_mode"));
        assertKnown(row, "pass_energy", acquisition.analyser().passEnergyEv());
        assertKnown(row, "work_function", acquisition.analyser().workFunctionEv());
        assertKnown(row, "scans", acquisition.timing().scans());
        assertKnown(row, "dwell_s", acquisition.timing().dwellSeconds());
    }

    private static void assertKnown(Map<String, String> row, String column, OptionalDouble found) {
        double expected = number(row, column);
        if (expected > 9e36) assertThat(found).isEmpty();
        else assertThat(found).hasValue(expected);
    }

    private static void assertAxis(Map<String, String> row, SpectrumSet set) {
        assertThat(set.axis().quantity().label()).isEqualTo(row.get("abscissa_label"));
        assertThat(set.axis().quantity().unit()).isEqualTo(row.get("abscissa_unit"));
        assertThat(set.axis().quantity().scale()).isEqualTo(EnergyScale.KINETIC);
        assertThat(set.axis().first()).isEqualTo(number(row, "start"));
        assertThat(set.axis().channels()).isEqualTo(Integer.parseInt(row.get("points")));
        assertThat(set.axis().value(1) - set.axis().value(0)).isCloseTo(number(row, "increment"), within(1e-9));
        // the list gives the last energy to four decimals
        assertThat(set.axis().last()).isCloseTo(number(row, "abscissa_end"), within(5.1e-5));
    }

    private static void assertOrdinate(Map<String, String> row, SpectrumSet set) {
        Ordinate ordinate = set.ordinates().get(Integer.parseInt(row.get("variable")) - 1);
        assertThat(ordinate.quantity().label()).isEqualTo(row.get("var_label"));
        assertThat(ordinate.quantity().unit()).isEqualTo(row.get("var_unit"));
        boolean transmission = row.get("var_label").equals("Transmission");
        assertThat(ordinate.kind()).isEqualTo(transmission ? Ordinate.Kind.TRANSMISSION : Ordinate.Kind.INTENSITY);
        double[] values = ordinate.copy(0, ordinate.size());
        assertThat(values[0]).isEqualTo(number(row, "first"));
        assertThat(values[values.length - 1]).isEqualTo(number(row, "last"));
        assertThat(Arrays.stream(values).min()).hasValue(number(row, "data_min"));
        assertThat(Arrays.stream(values).max()).hasValue(number(row, "data_max"));
        double sum = 0;
        for (double value : values) sum += value;
        assertThat(sum).isCloseTo(number(row, "sum"), within(1e-9 * Math.abs(sum)));
    }

    @Test
    void statisticsAreKnownOnlyWhereTheFileSaysSo() throws Exception {
        rows();
        assertThat(counting("foil-grounded-survey.vms", 1)).isEqualTo(Counting.COUNTS);
        assertThat(counting("foil-insulated-angles.vms", 15)).isEqualTo(Counting.COUNTS);
        assertThat(counting("auger-differential.vms", 1)).isEqualTo(Counting.UNKNOWN);
        // 0.5 s x 10 scans
        assertThat(counting("kinetic-axis-four-regions.vms", 2).countsPerUnit().orElseThrow())
                .isCloseTo(5, within(1e-12));
    }

    private static Counting counting(String file, int block) throws Exception {
        SpectrumFile read = SpectrumFiles.open(FOLDER.resolve(file), file, Optional.empty());
        return read.block(block)
                .orElseThrow()
                .set()
                .ordinate(Ordinate.Kind.INTENSITY)
                .orElseThrow()
                .counting();
    }

    @Test
    void warningsSayWhatIsWrongWithTheFiles() throws Exception {
        rows();
        assertThat(warnings("foil-grounded-survey.vms")).isEmpty();
        assertThat(warnings("tantalum-survey-and-narrow.vms")).isEmpty();
        assertThat(warnings("kinetic-axis-four-regions.vms")).isEmpty();
        assertThat(warnings("foil-insulated-angles.vms")).singleElement().satisfies(finding -> {
            assertThat(finding.rule()).isEqualTo("iso14976-minimum-maximum");
            assertThat(finding.severity()).isEqualTo(Severity.NOTE);
            assertThat(finding.message())
                    .startsWith("foil-insulated-angles.vms:125: ")
                    .contains("800 to 13835")
                    .contains("29 more places");
        });
    }

    private static List<Finding> warnings(String file) throws Exception {
        return SpectrumFiles.open(FOLDER.resolve(file), file, Optional.empty()).warnings();
    }

    @Test
    void photoelectronBlocksTurnIntoBindingScans() throws Exception {
        for (Map<String, String> row : rows()) {
            if (!row.get("technique").equals("XPS")) continue;
            String name = row.get("file");
            SpectrumSet set = SpectrumFiles.open(FOLDER.resolve(name), name, Optional.empty())
                    .block(Integer.parseInt(row.get("block")))
                    .orElseThrow()
                    .set();
            BindingScan scan = BindingScan.of(set.spectrum(0), number(row, "h_nu_eV"), name);
            assertThat(scan.channels()).isEqualTo(Integer.parseInt(row.get("points")));
            assertThat(scan.countsKnown()).isTrue();
            double low = number(row, "h_nu_eV") - Math.max(number(row, "start"), number(row, "abscissa_end"));
            assertThat(scan.energy(0)).isCloseTo(low, within(1e-9));
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "foil-insulated-angles.vms",
                "foil-grounded-survey.vms",
                "tantalum-survey-and-narrow.vms",
                "kinetic-axis-four-regions.vms",
                "auger-differential.vms"
            })
    void writingAndReadingAgainChangesNothing(String file) throws Exception {
        rows();
        Experiment experiment = experiment(file);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Iso14976Writer.write(experiment, out);
        byte[] bytes = out.toByteArray();
        Experiment again = Iso14976Parser.parse(file, new ByteArrayInputStream(bytes), bytes.length, ReadLimits.DEFAULT)
                .experiment();
        assertThat(again).isEqualTo(experiment);
        assertThat(Iso14976Writer.text(again)).isEqualTo(Iso14976Writer.text(experiment));
        // one value a line: the line counts agree with the original's
        assertThat(new String(bytes, StandardCharsets.UTF_8).lines().count())
                .isEqualTo(Files.readString(FOLDER.resolve(file), StandardCharsets.ISO_8859_1)
                        .lines()
                        .count());
    }

    @Test
    void fieldsThatNobodyUsesAreKept() throws Exception {
        rows();
        ExperimentBlock auger = experiment("auger-differential.vms").blocks().get(0);
        assertThat(auger.parameters()).hasSize(4);
        assertThat(auger.parameters().get(1).label()).isEqualTo("xsamples");
        assertThat(auger.parameters().get(1).value().value()).hasValue(20120);
        assertThat(auger.analyser().differentialWidth().orElseThrow().isKnown()).isFalse();
        SpectrumFile file = SpectrumFiles.open(
                FOLDER.resolve("auger-differential.vms"), "auger-differential.vms", Optional.empty());
        assertThat(file.blocks().get(0).set().acquisition().header())
                .anySatisfy(field -> assertThat(field.value()).isEqualTo("1e+037"))
                .anySatisfy(field -> assertThat(field.value()).isEqualTo("xresomode"));
        assertThat(file.blocks().get(0).line()).isEqualTo(17);
    }
}
