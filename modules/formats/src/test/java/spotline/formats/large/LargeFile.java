package spotline.formats.large;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import spotline.formats.iso14976.Experiment;
import spotline.formats.iso14976.ExperimentBlock;
import spotline.formats.iso14976.ExperimentHeader;
import spotline.formats.iso14976.Iso14976Writer;

/** Writes invented files of ISO 14976 of any size, block by block, with values from a fixed seed. */
final class LargeFile {
    private LargeFile() {}

    /** @return the sum of all values */
    static double write(Path file, int blocks, int channels) throws IOException {
        SplittableRandom random = new SplittableRandom(20260512);
        ExperimentHeader header = ExperimentHeader.norm("invented", "", "", "", List.of());
        double sum = 0;
        try (Writer out = new BufferedWriter(Files.newBufferedWriter(file, StandardCharsets.US_ASCII), 1 << 16)) {
            for (int b = 0; b < blocks; b++) {
                double[] counts = new double[channels];
                for (int i = 0; i < channels; i++) {
                    counts[i] = random.nextInt(1_000, 1_000_000);
                    sum += counts[i];
                }
                ExperimentBlock block = ExperimentBlock.xps("pixel " + b, "invented")
                        .source("Al monochromated", 1486.6, OptionalDouble.of(150))
                        .passEnergyEv(20)
                        .region("C", "1s")
                        .bindingAxis(300, -0.1)
                        .pulseCounting(0.1, 4, OptionalDouble.empty())
                        .counts(counts)
                        .build();
                String one = Iso14976Writer.text(new Experiment(header, List.of(block)));
                String end = "end of experiment\n";
                int start = one.indexOf("\n1\npixel ") + 1;
                if (b == 0) out.append(one, 0, start).append(blocks + "\n");
                out.append(one, start + 2, one.length() - end.length());
                if (b == blocks - 1) out.append(end);
            }
        }
        return sum;
    }
}
