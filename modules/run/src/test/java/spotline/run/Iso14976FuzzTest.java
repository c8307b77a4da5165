package spotline.run;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import spotline.core.ReadException;
import spotline.formats.iso14976.BlockSpectra;
import spotline.formats.iso14976.ExperimentBlock;
import spotline.formats.iso14976.Iso14976Parser;
import spotline.formats.iso14976.Iso14976Writer;
import spotline.formats.source.ReadLimits;
import spotline.formats.source.Warnings;

/** Any bytes end in the reader's own error or in an experiment that converts, and that reads back equal when written. */
class Iso14976FuzzTest {
    @FuzzTest(maxDuration = "10m")
    void bytes(byte[] bytes) throws IOException {
        CpuLimit limit = new CpuLimit();
        try {
            readConvertAndWrite(bytes);
        } catch (ReadException refused) {
            // The reader's own error is a good end.
        }
        limit.check();
    }

    private static void readConvertAndWrite(byte[] bytes) throws ReadException {
        Iso14976Parser.Parsed parsed = parse(bytes);
        BlockSpectra spectra = new BlockSpectra(parsed.experiment().header(), new Warnings("fuzz"));
        int number = 0;
        for (ExperimentBlock block : parsed.experiment().blocks()) {
            number++;
            int line = parsed.blockLines().get(number - 1);
            spectra.convert(block, number, line).ifPresent(set -> {
                if (set.axis().channels() < 1) throw new AssertionError("an axis without a channel");
            });
        }
        byte[] written = Iso14976Writer.text(parsed.experiment()).getBytes(StandardCharsets.UTF_8);
        if (!parsesEqual(parsed, written)) throw new AssertionError("what was written reads back different");
    }

    private static boolean parsesEqual(Iso14976Parser.Parsed parsed, byte[] written) {
        try {
            return parse(written).experiment().equals(parsed.experiment());
        } catch (ReadException refused) {
            throw new AssertionError("what was written is refused", refused);
        }
    }

    private static Iso14976Parser.Parsed parse(byte[] bytes) throws ReadException {
        return Iso14976Parser.parse("fuzz", new ByteArrayInputStream(bytes), bytes.length, ReadLimits.DEFAULT);
    }
}
