package spotline.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spotline.core.Finding;
import spotline.core.ReadException;
import spotline.core.Severity;
import spotline.formats.SpectrumFile;
import spotline.formats.SpectrumFiles;
import spotline.holder.HolderPlan;
import spotline.holder.HolderRunFile;
import spotline.holder.HolderRunReader;
import spotline.holder.HolderTemplates;
import spotline.holder.check.PlanCheck;
import spotline.holder.check.PlanCheckSettings;
import spotline.spectra.Acquisition;
import spotline.spectra.BindingScan;
import spotline.spectra.Ordinate;
import spotline.spectra.SpectrumSet;

class DemoFolderTest {
    private static final Path COMMITTED = Path.of("../../demo-spectra");

    private static Map<String, byte[]> bytes(Path folder) throws IOException {
        Map<String, byte[]> files = new LinkedHashMap<>();
        try (Stream<Path> listing = Files.list(folder)) {
            for (Path file : listing.sorted().toList())
                files.put(file.getFileName().toString(), Files.readAllBytes(file));
        }
        return files;
    }

    @Test
    void theCommittedFolderIsWhatTheMakerMakes(@TempDir Path folder) throws IOException {
        MakeDemo.main(new String[] {folder.toString()});
        Map<String, byte[]> made = bytes(folder);
        Map<String, byte[]> committed = bytes(COMMITTED);
        assertThat(made.keySet()).containsExactlyElementsOf(committed.keySet());
        made.forEach((name, content) -> assertThat(content).as(name).isEqualTo(committed.get(name)));
    }

    @Test
    void theFolderStaysSmall() throws IOException {
        long size = bytes(COMMITTED).values().stream().mapToLong(b -> b.length).sum();
        assertThat(size).isLessThan(3_000_000);
    }

    @Test
    void theHolderRunReadsWithoutFault() throws ReadException {
        HolderRunFile run = HolderRunReader.read(COMMITTED.resolve("footbridge-bearing.json"));
        assertThat(run.spots()).hasSize(6);
        run.spots()
                .forEach(spot -> spot.spectra()
                        .forEach(entry ->
                                assertThat(COMMITTED.resolve(entry.file())).exists()));
    }

    @Test
    void thePlanChecksRaiseNeitherStopNorCaution() throws ReadException {
        HolderRunFile run = HolderRunReader.read(COMMITTED.resolve("footbridge-bearing.json"));
        List<Finding> findings =
                PlanCheck.check(HolderPlan.of(run), HolderTemplates.shipped("flat-bar"), PlanCheckSettings.DEFAULT);
        assertThat(findings).allMatch(finding -> finding.severity() == Severity.NOTE);
    }

    @Test
    void theTruthSumsToAHundredAtEverySpot() throws IOException {
        JsonNode truth =
                new ObjectMapper().readTree(COMMITTED.resolve("truth.json").toFile());
        assertThat(truth.get("spots")).hasSize(6);
        for (JsonNode spot : truth.get("spots")) {
            double sum = 0;
            for (JsonNode percent : spot.get("atomic_percent")) sum += percent.doubleValue();
            assertThat(sum).isBetween(99.9995, 100.0005);
            Map<String, Double> fractions = new LinkedHashMap<>();
            for (JsonNode state : spot.get("states")) {
                fractions.merge(
                        state.get("element").textValue(),
                        state.get("fraction_of_element").doubleValue(),
                        Double::sum);
            }
            assertThat(fractions.values()).allMatch(value -> Math.abs(value - 1) < 1e-4);
            assertThat(fractions).hasSameSizeAs(spot.get("atomic_percent"));
        }
    }

    /** What another program would read: counts over binding energy, the strongest channel where the line was put. */
    @Test
    void theSpectraReadBackWithoutAWarning() throws ReadException {
        for (SpotPlan spot : Footbridge.spots()) {
            SpectrumFile file = SpectrumFiles.open(COMMITTED.resolve(spot.file()), spot.file(), Optional.empty());
            assertThat(file.warnings()).isEmpty();
            assertThat(file.blocks()).hasSameSizeAs(spot.scans());
            for (int i = 0; i < spot.scans().size(); i++)
                check(spot, i, file.blocks().get(i).set());
        }
    }

    private static void check(SpotPlan spot, int index, SpectrumSet set) {
        Scan scan = spot.scans().get(index);
        Acquisition acquisition = set.acquisition();
        assertThat(acquisition.label()).isEqualTo((scan.species() + " " + scan.transition()).strip());
        assertThat(acquisition.sampleId()).isEqualTo(spot.sampleId());
        assertThat(acquisition.excitation().photonEnergyEv()).hasValue(1486.69);
        assertThat(acquisition.excitation().monochromated()).hasValue(true);
        assertThat(acquisition.analyser().passEnergyEv()).hasValue(scan.mode().passEnergyEv());
        assertThat(acquisition.time().orElseThrow().toInstant())
                .isEqualTo(spot.startOf(index).toInstant());
        assertThat(acquisition.timing().secondsPerChannel().orElseThrow())
                .isCloseTo(scan.secondsPerChannel(), within(1e-12));
        assertThat(set.ordinate(Ordinate.Kind.TRANSMISSION)).isPresent();
        BindingScan read = BindingScan.of(set.spectrum(0), 1486.69, scan.toString());
        assertThat(read.countsKnown()).isTrue();
        assertThat(read.range().lowEv()).isCloseTo(scan.lowEv(), within(1e-6));
        assertThat(read.range().highEv()).isCloseTo(scan.highEv(), within(1e-6));
        if (scan.species().equals("Ti"))
            assertThat(strongest(read)).isCloseTo(458.7 + spot.surface().potentialEv(), within(0.21));
        if (scan.species().equals("Ag") && scan.transition().equals("3d")) {
            assertThat(strongest(read)).isCloseTo(368.21, within(0.11)); // ISO 15472:2010, grounded
        }
    }

    private static double strongest(BindingScan scan) {
        int at = 0;
        for (int i = 1; i < scan.channels(); i++) if (scan.counts(i) > scan.counts(at)) at = i;
        return scan.energy(at);
    }
}
