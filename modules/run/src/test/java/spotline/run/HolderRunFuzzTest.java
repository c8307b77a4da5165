package spotline.run;

import com.code_intelligence.jazzer.junit.FuzzTest;
import spotline.core.ReadException;
import spotline.holder.HolderPlan;
import spotline.holder.HolderRunReader;

/** Any bytes end in the reader's own error or in a holder run of which a plan can be made. */
class HolderRunFuzzTest {
    @FuzzTest(maxDuration = "10m")
    void bytes(byte[] bytes) {
        CpuLimit limit = new CpuLimit();
        try {
            HolderPlan.of(HolderRunReader.read("fuzz", bytes));
        } catch (ReadException refused) {
            // The reader's own error is a good end.
        }
        limit.check();
    }
}
