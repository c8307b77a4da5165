package spotline.formats;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import spotline.core.ReadException;
import spotline.formats.source.ReadLimits;
import spotline.formats.text.TextColumns;
import spotline.spectra.EnergyScale;

/**
 * A good file of the usual size, damaged once, through the way that every command takes: it ends in the reader's error,
 * in warnings, in equal data, or in data that differ by just what the damaged line says. The heap is that of this module's
 * tests, 256 MB; the time is the processor's, 2 s a file.
 */
class DamagedFileTest {
    private static final long SEED = 20260512;
    private static final long MOST_NANOS = 2_000_000_000L;
    private static final int TIMES = 120;
    private static final Path DEMO = Path.of("..", "..", "demo-spectra", "05-pigment-a.txt");

    private static final TextColumns DECLARED = new TextColumns(
            1,
            2,
            EnergyScale.BINDING,
            TextColumns.OrdinateKind.COUNTS,
            OptionalDouble.of(0.1),
            OptionalDouble.of(4),
            OptionalDouble.of(20),
            1486.6);

    @TempDir
    private Path folder;

    private Path file;

    /** What is done to the bytes of a good file. */
    enum Damage {
        CUT {
            @Override
            byte[] apply(byte[] whole, SplittableRandom random) {
                return Arrays.copyOf(whole, random.nextInt(whole.length));
            }
        },
        FLIPPED_BYTE {
            @Override
            byte[] apply(byte[] whole, SplittableRandom random) {
                byte[] changed = whole.clone();
                changed[random.nextInt(whole.length)] ^= (byte) (1 + random.nextInt(255));
                return changed;
            }
        },
        SWAPPED_LINES {
            @Override
            byte[] apply(byte[] whole, SplittableRandom random) {
                List<String> lines = lines(whole);
                Collections.swap(lines, random.nextInt(lines.size()), random.nextInt(lines.size()));
                return bytes(lines);
            }
        },
        DOUBLED_LINE {
            @Override
            byte[] apply(byte[] whole, SplittableRandom random) {
                List<String> lines = lines(whole);
                lines.add(random.nextInt(lines.size()), lines.get(random.nextInt(lines.size())));
                return bytes(lines);
            }
        },
        DOUBLED_FILE {
            @Override
            byte[] apply(byte[] whole, SplittableRandom random) {
                byte[] twice = Arrays.copyOf(whole, 2 * whole.length);
                System.arraycopy(whole, 0, twice, whole.length, whole.length);
                return twice;
            }
        };

        abstract byte[] apply(byte[] whole, SplittableRandom random);

        private static List<String> lines(byte[] whole) {
            return new ArrayList<>(
                    new String(whole, StandardCharsets.ISO_8859_1).lines().toList());
        }

        private static byte[] bytes(List<String> lines) {
            return (String.join("\n", lines) + "\n").getBytes(StandardCharsets.ISO_8859_1);
        }
    }

    @BeforeEach
    void name() {
        file = folder.resolve("damaged.txt");
    }

    private Optional<SpectrumFile> read(byte[] bytes, Optional<TextColumns> columns) throws IOException {
        Files.write(file, bytes);
        var threads = ManagementFactory.getThreadMXBean();
        long start = threads.getCurrentThreadCpuTime();
        try {
            return Optional.of(SpectrumFiles.open(file, "damaged.txt", columns));
        } catch (ReadException refused) {
            assertThat(refused.place().file()).isEqualTo("damaged.txt");
            assertThat(refused.getMessage().lines()).hasSize(1);
            return Optional.empty();
        } finally {
            assertThat(threads.getCurrentThreadCpuTime() - start).isLessThan(MOST_NANOS);
        }
    }

    /** Without a warning, no value was lost or won: there are as many as in the good file. */
    private static void assertWholeOrTold(SpectrumFile good, SpectrumFile read, String how) {
        if (!read.warnings().isEmpty()) return;
        assertThat(values(read)).as(how).hasSameSizeAs(values(good));
        int different = 0;
        for (int i = 0; i < values(good).size(); i++) {
            if (!values(read).get(i).equals(values(good).get(i))) different++;
        }
        assertThat(different).as(how).isLessThanOrEqualTo(2);
    }

    private static List<Double> values(SpectrumFile file) {
        List<Double> values = new ArrayList<>();
        for (Block block : file.blocks()) {
            block.set().ordinates().forEach(o -> {
                for (int i = 0; i < o.size(); i++) values.add(o.value(i));
            });
        }
        return values;
    }

    @ParameterizedTest
    @EnumSource(Damage.class)
    void aFileOfTheStandard(Damage damage) throws Exception {
        byte[] whole = Files.readAllBytes(DEMO);
        SpectrumFile good = read(whole, Optional.empty()).orElseThrow();
        SplittableRandom random = new SplittableRandom(SEED + damage.ordinal());
        for (int i = 0; i < TIMES / 4; i++) {
            String how = damage + ", " + i;
            read(damage.apply(whole, random), Optional.empty()).ifPresent(read -> assertWholeOrTold(good, read, how));
        }
    }

    @ParameterizedTest
    @EnumSource(Damage.class)
    void aTextFile(Damage damage) throws Exception {
        StringBuilder text = new StringBuilder("Binding energy\tcounts\n");
        SplittableRandom random = new SplittableRandom(SEED - damage.ordinal());
        for (int i = 0; i < 400; i++) {
            text.append(1200 - i).append('\t').append(random.nextInt(5_000)).append('\n');
        }
        byte[] whole = text.toString().getBytes(StandardCharsets.US_ASCII);
        SpectrumFile good = read(whole, Optional.of(DECLARED)).orElseThrow();
        for (int i = 0; i < TIMES; i++) {
            byte[] damaged = damage.apply(whole, random);
            read(damaged, Optional.of(DECLARED)).ifPresent(read -> {
                assertThat(values(read).size()).isLessThanOrEqualTo(values(good).size());
            });
            try {
                SpectrumFiles.look(file, "damaged.txt", ReadLimits.DEFAULT);
            } catch (ReadException refused) {
                assertThat(refused.place().file()).isEqualTo("damaged.txt");
            }
        }
    }

    /** Numbers in a header that speak of more than there is take neither room nor time. */
    @Test
    void boastfulHeaders() throws Exception {
        List<String> lines = new ArrayList<>(Files.readAllLines(DEMO, StandardCharsets.ISO_8859_1));
        for (int i = 1; i < 120; i++) {
            for (String boast : List.of("49999999", "99999", "-5", "1E300", "2147483647", "1e7")) {
                List<String> changed = new ArrayList<>(lines.subList(0, 600));
                changed.set(i, boast);
                read(String.join("\n", changed).getBytes(StandardCharsets.ISO_8859_1), Optional.empty());
            }
        }
        byte[] oneLine = new byte[40 << 20];
        Arrays.fill(oneLine, (byte) '7');
        assertThat(read(oneLine, Optional.of(DECLARED))).isEmpty();
        byte[] head = (lines.get(0) + "\n").getBytes(StandardCharsets.US_ASCII);
        System.arraycopy(head, 0, oneLine, 0, head.length);
        assertThat(read(oneLine, Optional.empty())).isEmpty();
        Arrays.fill(oneLine, (byte) '\n');
        System.arraycopy(head, 0, oneLine, 0, head.length);
        assertThat(read(oneLine, Optional.empty())).isEmpty();
    }
}
