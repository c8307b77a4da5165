package spotline.formats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import spotline.core.Finding;
import spotline.core.ReadException;
import spotline.formats.iso14976.Experiment;
import spotline.formats.iso14976.ExperimentBlock;
import spotline.formats.iso14976.ExperimentHeader;
import spotline.formats.iso14976.Iso14976Writer;
import spotline.formats.source.Probe;
import spotline.formats.source.ReadLimits;
import spotline.formats.text.TextColumns;
import spotline.spectra.EnergyScale;

class SpectrumFilesTest {
    @TempDir
    Path folder;

    private static final Optional<TextColumns> COLUMNS = Optional.of(TextColumns.of(1, 2, EnergyScale.BINDING, 1486.6));

    private Path file(String text) throws Exception {
        return Files.writeString(folder.resolve("file"), text, StandardCharsets.ISO_8859_1);
    }

    private static String iso14976(int blocks) {
        ExperimentBlock block = ExperimentBlock.xps("a", "b")
                .kineticAxis(1000, 0.5)
                .pulseCounting(0.1, 2, OptionalDouble.empty())
                .counts(new double[] {3, 4, 5})
                .build();
        ExperimentHeader header = ExperimentHeader.norm("", "", "", "", List.of());
        return Iso14976Writer.text(new Experiment(header, java.util.Collections.nCopies(blocks, block)));
    }

    @Test
    void iso14976() throws Exception {
        SpectrumFile file = SpectrumFiles.open(file(iso14976(2)), "runs/one.txt", Optional.empty());
        assertThat(file.name()).isEqualTo("runs/one.txt");
        assertThat(file.format()).isEqualTo(SpectrumFile.ISO_14976);
        assertThat(file.blocks()).extracting(Block::number).containsExactly(1, 2);
        assertThat(file.blocks().get(0).line()).isEqualTo(16);
        String second = iso14976(2)
                .lines()
                .skip(file.blocks().get(1).line() - 1L)
                .findFirst()
                .orElseThrow();
        assertThat(second).isEqualTo("a");
        assertThat(file.block(2)).contains(file.blocks().get(1));
        assertThat(file.block(3)).isEmpty();
        assertThat(file.warnings()).isEmpty();
    }

    @Test
    void theDigestIsOfAllBytesOfTheFile() throws Exception {
        // computed with sha256sum
        SpectrumFile text = SpectrumFiles.open(file("290 1\n289 2\n"), "t", COLUMNS);
        assertThat(text.sha256()).isEqualTo("5dbf693063c08fd2dfc8d6ed0f6409a714ddbd5e64874db507ca72e86aa253d8");
        Path long14976 = file(iso14976(1) + "\n".repeat(200_000));
        SpectrumFile iso = SpectrumFiles.open(long14976, "t", Optional.empty());
        byte[] digest = MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(long14976));
        assertThat(iso.sha256()).isEqualTo(HexFormat.of().formatHex(digest));
    }

    @Test
    void textColumns() throws Exception {
        SpectrumFile file = SpectrumFiles.open(file("# head\n290 1\n289 2\n"), "t", COLUMNS);
        assertThat(file.format()).isEqualTo(SpectrumFile.TEXT_COLUMNS);
        assertThat(file.blocks()).singleElement().satisfies(b -> {
            assertThat(b.number()).isEqualTo(1);
            assertThat(b.line()).isEqualTo(2);
        });
        String longHead = "# " + "x".repeat(60_000) + "\n# " + "y".repeat(60_000) + "\n290 1\n289 2\n";
        assertThat(SpectrumFiles.open(file(longHead), "t", COLUMNS).blocks()).hasSize(1);
    }

    @Test
    void declaredColumnsOfAFileThatNeedsNoneAreTold() throws Exception {
        SpectrumFile file = SpectrumFiles.open(file(iso14976(1)), "t", COLUMNS);
        assertThat(file.format()).isEqualTo(SpectrumFile.ISO_14976);
        assertThat(file.warnings()).extracting(Finding::rule).containsExactly("columns-not-used");
    }

    @Test
    void undeclaredColumnsAreNotGuessed() throws Exception {
        Path file = file("290 1\n289 2\n");
        assertThatThrownBy(() -> SpectrumFiles.open(file, "t", Optional.empty()))
                .isInstanceOf(ReadException.class)
                .hasMessage(
                        "t: found columns of numbers that nobody declared, expected \"columns\" for it, with energy,"
                                + " ordinate, scale and photonEnergyEv");
        assertThat(SpectrumFiles.look(file, "t", ReadLimits.DEFAULT).rows()).isEqualTo(2);
    }

    private static List<Arguments> otherFiles() {
        return List.of(
                Arguments.of("", "an empty file"),
                Arguments.of("PK\u0003\u0004xx", "a ZIP archive"),
                Arguments.of("\u0089HDF\r\nxx", "an HDF5 file"),
                Arguments.of("%PDF-1.7", "a PDF document"),
                Arguments.of("<?xml version='1.0'?>", "an XML document"),
                Arguments.of("##TITLE= a", "labelled data records, perhaps of JCAMP-DX"),
                Arguments.of("a\u0000b", "a binary file of an unknown kind"),
                Arguments.of("dear reader", "the first line \"dear reader\""));
    }

    @ParameterizedTest
    @MethodSource
    void otherFiles(String text, String found) throws Exception {
        Path file = file(text);
        assertThatThrownBy(() -> SpectrumFiles.open(file, "t", Optional.empty()))
                .isInstanceOf(ReadException.class)
                .hasMessage(
                        "t:1: found " + found + ", expected the format identifier of ISO 14976, or columns of numbers");
    }

    @Test
    void filesThatCannotBeRead() throws Exception {
        Path missing = folder.resolve("missing");
        for (Optional<TextColumns> columns : List.of(COLUMNS, Optional.<TextColumns>empty())) {
            assertThatThrownBy(() -> SpectrumFiles.open(missing, "runs/m.vms", columns))
                    .isInstanceOf(ReadException.class)
                    .hasMessage("runs/m.vms: no such file, expected a readable spectrum file");
        }
        assertThatThrownBy(() -> SpectrumFiles.look(missing, "m", ReadLimits.DEFAULT))
                .isInstanceOf(ReadException.class)
                .hasMessage("m: no such file, expected a readable spectrum file");
        assertThatThrownBy(() -> SpectrumFiles.open(folder, "d", Optional.empty()))
                .isInstanceOf(ReadException.class)
                .hasMessage("d: a directory, expected a readable spectrum file");
        Path file = file(iso14976(1));
        ReadLimits small = new ReadLimits(10, 100, 1, 10, 10);
        assertThatThrownBy(() -> SpectrumFiles.open(file, "b", Optional.empty(), small))
                .isInstanceOf(ReadException.class)
                .hasMessage("b: a file of " + Files.size(file) + " bytes, expected at most 10 bytes");
    }

    @Test
    void probes() throws Exception {
        assertThat(SpectrumFiles.probe(file(iso14976(1)), "t").get(0).verdict()).isEqualTo(Probe.Verdict.SURE);
        assertThat(SpectrumFiles.probe(file("VAMAS data\n"), "t").get(0))
                .isEqualTo(new Probe(
                        "ISO 14976", Probe.Verdict.MAYBE, "the first line begins like its format identifier"));
        assertThat(SpectrumFiles.probe(file("1 2\n3 4\n"), "t").get(0).format()).isEqualTo("columns of numbers");
        assertThat(SpectrumFiles.probe(file("words\n"), "t")).allMatch(p -> p.verdict() == Probe.Verdict.NO);
    }
}
