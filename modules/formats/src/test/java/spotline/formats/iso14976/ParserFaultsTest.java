package spotline.formats.iso14976;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spotline.core.Finding;
import spotline.core.ReadException;
import spotline.core.Severity;
import spotline.formats.source.ReadLimits;

/** Files that are nearly right. */
class ParserFaultsTest {
    /** The depth profile with one line changed; lines count from 1. */
    private static String changed(int line, String value) {
        List<String> lines = new ArrayList<>(Golden.lines("depth-profile.txt"));
        lines.set(line - 1, value);
        return Golden.file(lines);
    }

    private static ReadException fault(String text) {
        return catchThrowableOfType(ReadException.class, () -> Golden.parse(text));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "1  | Some other file | found \"Some other file\", expected \"VAMAS Surface Chemical Analysis Standard"
                        + " Data Transfer Format 1988 May 4\"",
                "6  | two        | found \"two\", expected a number: number of lines in comment",
                "6  | -1         | found \"-1\", expected a whole number from 0 to 100000: number of lines in comment",
                "6  | 1.5        | found \"1.5\", expected a whole number from 0 to 100000: number of lines in comment",
                "6  | 1E37       | found \"1E37\", expected a whole number from 0 to 100000: number of lines in comment",
                "9  | SDPX       | found \"SDPX\", expected experiment mode, one of MAP, MAPDP, MAPSV, MAPSVDP, NORM,"
                        + " SDP, SDPSV, SEM, NOEXP",
                "10 | REGULARLY  | found \"REGULARLY\", expected scan mode, one of REGULAR, IRREGULAR, MAPPING",
                "16 | 41         | found \"41\", expected a whole number from 1 to 40: prefix number of the inclusion"
                        + " or exclusion list, entry 1",
                "25 | 0          | found no block, expected 1 or more: number of blocks",
                "25 | 2          | NOT HERE",
                "28 | MMXXIV     | found \"MMXXIV\", expected a number: year in full",
                "28 | 2024,0     | found \"2024,0\", expected a number: year in full",
                "28 | 0x10       | found \"0x10\", expected a number: year in full",
                "28 | NaN        | found \"NaN\", expected a number: year in full",
                "28 | 1e999      | found \"1e999\", expected a number: year in full",
                "37 | XPS2       | found \"XPS2\", expected technique, one of AES diff, AES dir, EDX, ELS, FABMS, FABMS"
                        + " energy spec, ISS, SIMS, SIMS energy spec, SNMS, SNMS energy spec, UPS, XPS, XRF",
                "65 | eV         | found \"eV\", expected a number: number of corresponding variables",
                "90 | 7          | found 7 ordinate values, expected a multiple of the 2 corresponding variables: number"
                        + " of ordinate values",
                "98 | 0.5 0.5    | found \"0.5 0.5\", expected a number: ordinate value 4 of 6",
            })
    void namesTheLineAndTheField(int line, String value, String message) {
        if (message.equals("NOT HERE")) {
            assertThat(fault(changed(line, value)))
                    .hasMessage("test.vms:155: found \"level 2\", expected \"end of experiment\" after block 2");
            return;
        }
        assertThat(fault(changed(line, value))).hasMessage("test.vms:" + line + ": " + message);
    }

    @Test
    void aCountTheFileCannotHoldTakesNoMemory() {
        String text = changed(90, "49999998");
        // 50 million doubles would be 400 MB; the file holds a few values.
        ReadLimits limits = ReadLimits.DEFAULT;
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        for (int size : new int[] {bytes.length, -1}) {
            long before = allocated();
            ReadException fault = catchThrowableOfType(
                    ReadException.class,
                    () -> Iso14976Parser.parse("test.vms", new ByteArrayInputStream(bytes), size, limits));
            assertThat(fault).hasMessageStartingWith("test.vms:101: found \"level 1\", expected a number");
            assertThat(allocated() - before).isLessThan(4_000_000);
        }
    }

    private static long allocated() {
        var threads = (com.sun.management.ThreadMXBean) java.lang.management.ManagementFactory.getThreadMXBean();
        return threads.getCurrentThreadAllocatedBytes();
    }

    @Test
    void limitsAreKept() {
        ReadLimits small = new ReadLimits(1 << 20, 40, 2, 4, 100);
        byte[] text = Golden.file("depth-profile.txt").getBytes(StandardCharsets.UTF_8);
        assertThat(catchThrowableOfType(
                        ReadException.class,
                        () -> Iso14976Parser.parse("f", new ByteArrayInputStream(text), text.length, small)))
                .hasMessage("f:1: a line longer than 40 bytes, expected lines of at most that length");
        ReadLimits fewBlocks = new ReadLimits(1 << 20, 100, 2, 4, 100);
        assertThat(catchThrowableOfType(
                        ReadException.class,
                        () -> Iso14976Parser.parse("f", new ByteArrayInputStream(text), text.length, fewBlocks)))
                .hasMessage("f:25: found \"3\", expected a whole number from 0 to 2: number of blocks");
        ReadLimits fewValues = new ReadLimits(1 << 20, 100, 3, 4, 100);
        assertThat(catchThrowableOfType(
                        ReadException.class,
                        () -> Iso14976Parser.parse("f", new ByteArrayInputStream(text), text.length, fewValues)))
                .hasMessage("f:90: found \"6\", expected a whole number from 0 to 4: number of ordinate values");
    }

    private static Finding single(String text) throws Exception {
        Iso14976Parser.Parsed parsed = Golden.parse(text);
        assertThat(parsed.experiment().blocks()).hasSize(3);
        assertThat(parsed.warnings()).hasSize(1);
        return parsed.warnings().get(0);
    }

    private static void assertFinding(Finding finding, Severity severity, String rule, int line) {
        assertThat(finding.severity()).isEqualTo(severity);
        assertThat(finding.rule()).isEqualTo(rule);
        assertThat(finding.message()).startsWith("test.vms:" + line + ": ");
    }

    @Test
    void whatCanBeLivedWithIsTold() throws Exception {
        String good = Golden.file("depth-profile.txt");
        assertFinding(single(good + "\n\n"), Severity.NOTE, "iso14976-blank-line", 211);
        assertFinding(single(changed(28, " 2024\t")), Severity.NOTE, "iso14976-padded-value", 28);
        assertFinding(single(changed(99, " 20")), Severity.NOTE, "iso14976-padded-value", 99);
        assertFinding(single(changed(37, "XPS ")), Severity.NOTE, "iso14976-padded-value", 37);
        assertFinding(single(changed(37, "xps")), Severity.NOTE, "iso14976-keyword-case", 37);
        assertFinding(single(changed(9, "sdp")), Severity.NOTE, "iso14976-keyword-case", 9);
        assertFinding(single(changed(70, "Pulse Counting")), Severity.NOTE, "iso14976-keyword-case", 70);
        assertFinding(single(changed(49, "CAE")), Severity.NOTE, "iso14976-unusual-word", 49);
        assertFinding(single(changed(91, "11")), Severity.NOTE, "iso14976-minimum-maximum", 91);
        assertFinding(
                single(changed(1, ExperimentHeader.FORMAT_IDENTIFIER.replace("1988 May 4", "1991 June 1"))),
                Severity.NOTE,
                "iso14976-format-identifier",
                1);
        assertFinding(
                single(good.replace("end of experiment", "End of Experiment")),
                Severity.NOTE,
                "iso14976-end-marker",
                210);
        assertFinding(single(good.replace("end of experiment\n", "")), Severity.CAUTION, "iso14976-no-end-marker", 209);
        assertFinding(single(good + "more\nand more\n"), Severity.CAUTION, "iso14976-text-after-end", 211);
        assertFinding(
                single(good.replace("level 0\na sample\n", "level 0\na sample\r\n")),
                Severity.NOTE,
                "iso14976-mixed-line-ends",
                27);
    }

    @Test
    void linesThatEndWithACarriageReturnAreRead() throws Exception {
        String good = Golden.file("depth-profile.txt");
        Finding finding = single(good.replace('\n', '\r'));
        assertFinding(finding, Severity.NOTE, "iso14976-cr-line-ends", 1);
        assertThat(Golden.parse(good.replace('\n', '\r')).experiment())
                .isEqualTo(Golden.parse(good).experiment());
        // Twice CR before LF is no line of its own.
        assertThat(Golden.parse(good.replace("\n", "\r\r\n")).experiment())
                .isEqualTo(Golden.parse(good).experiment());
    }

    @Test
    void charactersBeyondAsciiAreKept() throws Exception {
        String text = changed(7, "gem\u00e4\u00df 5 \u00b5m");
        for (var charset : List.of(StandardCharsets.UTF_8, StandardCharsets.ISO_8859_1)) {
            Iso14976Parser.Parsed parsed = Golden.parse(text.getBytes(charset));
            assertThat(parsed.experiment().header().comments().get(0)).isEqualTo("gem\u00e4\u00df 5 \u00b5m");
            assertThat(parsed.warnings()).hasSize(1);
            assertFinding(parsed.warnings().get(0), Severity.NOTE, "iso14976-not-ascii", 7);
        }
    }

    @Test
    void aByteOrderMarkIsNoPartOfTheIdentifier() throws Exception {
        Iso14976Parser.Parsed parsed = Golden.parse("\uFEFF" + Golden.file("depth-profile.txt"));
        assertThat(parsed.experiment())
                .isEqualTo(Golden.parse(Golden.file("depth-profile.txt")).experiment());
        assertThat(parsed.warnings()).extracting(Finding::rule).containsExactly("iso14976-not-ascii");
    }

    @Test
    void oneHabitIsOneFinding() throws Exception {
        String text = Golden.file("depth-profile.txt").replace("\n2024\n", "\n 2024\n");
        Finding finding = single(text);
        assertThat(finding.message())
                .isEqualTo(
                        "test.vms:28: year in full has blanks beside it, \" 2024\" (and in 2 more places, the last at"
                                + " line 157)");
    }
}
