package spotline.run;

import com.code_intelligence.jazzer.junit.FuzzTest;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import spotline.core.ReadException;
import spotline.holder.HolderPlan;
import spotline.holder.HolderRunFile;
import spotline.holder.HolderRunReader;
import spotline.holder.json.CheckedJson;
import spotline.holder.json.JsonLimits;

/** Any bytes, as a treatment of the command line and of the holder run, end in the reader's own error or in a treatment. */
class TreatmentFuzzTest {
    private static final CheckedJson JSON =
            CheckedJson.of("spotline-treatment", 1, "/spotline/schema/treatment-1.schema.json", JsonLimits.DEFAULT);

    @FuzzTest(maxDuration = "10m")
    void bytes(byte[] bytes) {
        CpuLimit limit = new CpuLimit();
        try {
            ObjectNode patch = JSON.read("fuzz", bytes);
            resolve("{}", Optional.of(patch));
            resolve(patch.toString(), Optional.empty());
        } catch (ReadException refused) {
            // The reader's own error is a good end.
        }
        limit.check();
    }

    private static void resolve(String ofHolder, Optional<ObjectNode> ofCommandLine) throws ReadException {
        String run =
                "{\"format\": \"spotline-holder-run/1\", \"spots\": [{\"id\": \"1\", \"sample\": {\"name\": \"a\"}}],"
                        + " \"treatment\": " + ofHolder + "}";
        HolderRunFile file = HolderRunReader.read("fuzz", run.getBytes(StandardCharsets.UTF_8));
        new TreatmentStack(file, "fuzz", ofCommandLine)
                .of(HolderPlan.of(file).spots().get(0), 0);
    }
}
