package spotline.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Good files of JSON, damaged once in every way, end as the targets of fuzzing ask, in fixed numbers and without a search. */
class DamagedJsonTest {
    private static final long SEED = 20260512;
    private static final int TIMES = 400;

    private static List<byte[]> good(String target) throws IOException {
        Path folder = Path.of("src", "test", "resources", "spotline", "run", target + "Inputs", "bytes");
        List<byte[]> files = new ArrayList<>();
        try (Stream<Path> all = Files.list(folder)) {
            for (Path path : all.sorted().toList()) files.add(Files.readAllBytes(path));
        }
        assertThat(files).isNotEmpty();
        return files;
    }

    private static void damage(String target, Consumer<byte[]> reader) throws IOException {
        SplittableRandom random = new SplittableRandom(SEED);
        int ended = 0;
        for (byte[] whole : good(target)) {
            for (int i = 0; i < TIMES; i++) {
                reader.accept(Arrays.copyOf(whole, random.nextInt(whole.length)));
                byte[] flipped = whole.clone();
                flipped[random.nextInt(whole.length)] ^= (byte) (1 + random.nextInt(255));
                reader.accept(flipped);
                List<String> lines = new ArrayList<>(
                        new String(whole, StandardCharsets.UTF_8).lines().toList());
                Collections.swap(lines, random.nextInt(lines.size()), random.nextInt(lines.size()));
                reader.accept(bytes(lines));
                lines.add(random.nextInt(lines.size()), lines.get(random.nextInt(lines.size())));
                reader.accept(bytes(lines));
                ended += 4;
            }
        }
        assertThat(ended).isGreaterThanOrEqualTo(4 * TIMES);
    }

    private static byte[] bytes(List<String> lines) {
        return String.join("\n", lines).getBytes(StandardCharsets.UTF_8);
    }

    @Test
    void holderRun() throws IOException {
        damage("HolderRunFuzzTest", new HolderRunFuzzTest()::bytes);
    }

    @Test
    void fitModel() throws IOException {
        damage("FitModelFuzzTest", new FitModelFuzzTest()::bytes);
    }

    @Test
    void treatment() throws IOException {
        damage("TreatmentFuzzTest", new TreatmentFuzzTest()::bytes);
    }
}
