package spotline.formats.iso14976;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import spotline.core.ReadException;
import spotline.formats.source.Warnings;
import spotline.spectra.SpectrumSet;

/** Properties over random experiments with fixed seeds. */
class RandomExperimentTest {
    private static final long SEED = 20260512;

    @ParameterizedTest
    @EnumSource(ExperimentMode.class)
    void writingAndReadingIsTheIdentity(ExperimentMode mode) throws Exception {
        RandomExperiments experiments = new RandomExperiments(SEED + mode.ordinal());
        for (ScanMode scan : ScanMode.values()) {
            for (int i = 0; i < 60; i++) {
                Experiment experiment = experiments.next(mode, scan);
                String text = Iso14976Writer.text(experiment);
                Iso14976Parser.Parsed parsed = Golden.parse(text);
                assertThat(parsed.experiment()).isEqualTo(experiment);
                assertConverts(experiment);
                assertThat(Iso14976Writer.text(parsed.experiment())).isEqualTo(text);
                assertThat(Golden.parse(text.replace("\n", "\r\n")).experiment())
                        .isEqualTo(experiment);
            }
        }
    }

    /** Whatever the fields, a block with values becomes a spectrum of as many channels. */
    private static void assertConverts(Experiment experiment) {
        BlockSpectra spectra = new BlockSpectra(experiment.header(), new Warnings("test.vms"));
        int number = 0;
        for (ExperimentBlock block : experiment.blocks()) {
            Optional<SpectrumSet> set = spectra.convert(block, ++number, 1);
            boolean lone = experiment.header().scanMode() == ScanMode.IRREGULAR
                    && block.variables().size() > 1;
            assertThat(set.isPresent()).isEqualTo(block.ordinates().size() > 0);
            if (set.isEmpty()) continue;
            assertThat(set.get().axis().channels()).isEqualTo(block.ordinates().points());
            int ordinates = set.get().ordinates().size();
            assertThat(ordinates)
                    .isBetween(
                            block.variables().size() - (lone ? 1 : 0),
                            block.variables().size());
        }
    }

    @Test
    void blocksThatTheModeCannotWriteAreRefused() {
        RandomExperiments experiments = new RandomExperiments(SEED);
        Experiment norm = experiments.next(ExperimentMode.NORM, ScanMode.REGULAR);
        Experiment image = experiments.next(ExperimentMode.SEM, ScanMode.REGULAR);
        assertThatThrownBy(() -> new Experiment(norm.header(), image.blocks()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("mode NORM");
    }

    @Test
    void aChangeThatTheListLeavesOutIsRefused() throws Exception {
        Experiment image = Golden.parse(Golden.file("depth-profile.txt")).experiment();
        List<ExperimentBlock> swapped = List.of(
                image.blocks().get(1), image.blocks().get(0), image.blocks().get(2));
        assertThat(new Experiment(image.header(), swapped).blocks()).hasSize(3);
        ExperimentHeader was = image.header();
        ExperimentHeader stricter = new ExperimentHeader(
                was.formatIdentifier(),
                was.institution(),
                was.instrument(),
                was.operator(),
                was.experiment(),
                was.comments(),
                was.mode(),
                was.scanMode(),
                was.spectralRegions(),
                was.mapExtent(),
                was.experimentalVariables(),
                new InclusionList(true, List.of(22)),
                was.manualItems(),
                was.futureExperimentEntries(),
                was.futureBlockEntries());
        assertThatThrownBy(() -> new Experiment(stricter, image.blocks()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("block 2 (level 1) differs from the block before");
    }

    /** What is read without a word of warning is all there is in the file: written again it has the same lines. */
    private static void assertNothingLost(byte[] changed, String how) {
        try {
            Iso14976Parser.Parsed parsed = Golden.parse(changed);
            assertConverts(parsed.experiment());
            if (!parsed.warnings().isEmpty()) return;
            String again = Iso14976Writer.text(parsed.experiment());
            List<String> written = again.lines().toList();
            List<String> read =
                    new String(changed, StandardCharsets.UTF_8).lines().toList();
            assertThat(written).as(how).hasSameSizeAs(read);
            for (int i = 0; i < read.size(); i++) {
                if (!written.get(i).equals(read.get(i))) {
                    assertThat(Double.parseDouble(written.get(i)))
                            .as("%s, line %d", how, i + 1)
                            .isEqualTo(Double.parseDouble(read.get(i)));
                }
            }
        } catch (ReadException refused) {
            assertThat(refused.place().file()).isEqualTo("test.vms");
        }
    }

    @Test
    void flippedBytesAreReadRefusedOrTold() {
        SplittableRandom random = new SplittableRandom(SEED);
        for (String name : Golden.NAMES) {
            byte[] whole = Golden.file(name).getBytes(StandardCharsets.UTF_8);
            for (int i = 0; i < 4000; i++) {
                byte[] changed = whole.clone();
                int at = random.nextInt(whole.length);
                int bit = random.nextInt(8);
                changed[at] ^= (byte) (1 << bit);
                assertNothingLost(changed, name + ", byte " + at + ", bit " + bit);
            }
        }
    }

    @Test
    void swappedDoubledAndMissingLinesAreReadRefusedOrTold() {
        SplittableRandom random = new SplittableRandom(SEED + 1);
        for (String name : Golden.NAMES) {
            List<String> whole = Golden.lines(name);
            for (int i = 0; i < 3000; i++) {
                List<String> changed = new java.util.ArrayList<>(whole);
                int at = random.nextInt(whole.size());
                int other = random.nextInt(whole.size());
                switch (i % 3) {
                    case 0 -> java.util.Collections.swap(changed, at, other);
                    case 1 -> changed.add(other, whole.get(at));
                    default -> changed.remove(at);
                }
                String how = name + ", change " + i % 3 + " at " + at + ", " + other;
                assertNothingLost(Golden.file(changed).getBytes(StandardCharsets.UTF_8), how);
            }
        }
    }

    @Test
    void noiseIsRefused() {
        SplittableRandom random = new SplittableRandom(SEED + 2);
        for (int i = 0; i < 300; i++) {
            byte[] noise = new byte[random.nextInt(2000)];
            random.nextBytes(noise);
            assertThatThrownBy(() -> Golden.parse(noise)).isInstanceOf(ReadException.class);
            String begun = ExperimentHeader.FORMAT_IDENTIFIER + "\n";
            byte[] head = begun.getBytes(StandardCharsets.UTF_8);
            byte[] both = java.util.Arrays.copyOf(head, head.length + noise.length);
            System.arraycopy(noise, 0, both, head.length, noise.length);
            assertThatThrownBy(() -> Golden.parse(both)).isInstanceOf(ReadException.class);
        }
    }
}
