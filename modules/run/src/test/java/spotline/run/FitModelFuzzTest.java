package spotline.run;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.core.ReadException;
import spotline.reference.ReferenceData;
import spotline.run.fitmodel.FitModelFile;
import spotline.spectra.BindingScan;

/** Any bytes, read for a scan and for none, end in the reader's own error or in a model. */
class FitModelFuzzTest {
    private static final ReferenceData REFERENCE = ReferenceData.shipped();

    /** A level spectrum from 280 to 300 eV. */
    private static final BindingScan SCAN = scan();

    private static BindingScan scan() {
        double[] energy = new double[201];
        double[] counts = new double[201];
        for (int i = 0; i < energy.length; i++) {
            energy[i] = 280 + 0.1 * i;
            counts[i] = 100;
        }
        return new BindingScan("C 1s", 1486.6, energy, counts, true, OptionalDouble.of(1), OptionalDouble.of(20));
    }

    @FuzzTest(maxDuration = "10m")
    void bytes(byte[] bytes) {
        CpuLimit limit = new CpuLimit();
        read(bytes, Optional.of(SCAN));
        read(bytes, Optional.empty());
        limit.check();
    }

    private static void read(byte[] bytes, Optional<BindingScan> scan) {
        try {
            FitModelFile.read("fuzz", bytes, scan, REFERENCE);
        } catch (ReadException refused) {
            // The reader's own error is a good end.
        }
    }
}
