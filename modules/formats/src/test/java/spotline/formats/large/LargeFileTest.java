package spotline.formats.large;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How much memory a file takes beyond its values, held in a process whose heap allows no more. */
class LargeFileTest {
    @TempDir
    private Path folder;

    /** Whether a heap of the values and so many MB beyond them is enough. */
    private boolean fits(int blocks, int channels, int beyondMb) throws IOException, InterruptedException {
        Path file = folder.resolve("large.vms");
        double sum = LargeFile.write(file, blocks, channels);
        long data = (long) blocks * channels * Double.BYTES;
        long heapMb = (data >> 20) + 1 + beyondMb;
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:+UseSerialGC",
                        "-Xmn8m",
                        "-Xmx" + heapMb + "m",
                        "-cp",
                        System.getProperty("java.class.path"),
                        OpenLargeFile.class.getName(),
                        file.toString(),
                        Double.toString(sum))
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
        assertThat(process.waitFor(300, TimeUnit.SECONDS)).isTrue();
        Files.delete(file);
        return process.exitValue() == 0;
    }

    @Test
    void aSmallFileTakesLittle() throws Exception {
        assertThat(fits(200, 2_000, 24)).isTrue();
        assertThat(fits(200, 2_000, 0))
                .as("a heap that is too small is seen to be")
                .isFalse();
    }

    @Tag("slow")
    @ParameterizedTest
    @CsvSource({"1, 28500000", "14500, 2000", "104000, 241"})
    void twoHundredMegabytesTakeLessThanSixtyFourBeyondTheirValues(int blocks, int channels) throws Exception {
        assertThat(fits(blocks, channels, 64)).isTrue();
    }
}
