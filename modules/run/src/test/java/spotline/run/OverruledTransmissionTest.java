package spotline.run;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spotline.core.Finding;
import spotline.core.Severity;
import spotline.core.Work;
import spotline.reference.ReferenceData;
import spotline.run.document.RunDocument;

/** A transmission that stands in a file and is not used is told, once a file. Common practice, no source. */
class OverruledTransmissionTest {
    private static final Path HOLDER = Path.of("..", "..", "demo-spectra", "footbridge-bearing.json");

    @ParameterizedTest
    @CsvSource({"flat, CAUTION", "as-recorded, "})
    void aRecordedTransmissionIsNotPassedOverInSilence(String stated, Severity severity) throws Exception {
        RunDocument demo = RunDocument.read(HOLDER, 1);
        ObjectNode tree = demo.tree();
        ((ObjectNode) tree.get("instrument")).put("transmission", stated);
        RunDocument document = RunDocument.of("stated", tree, 1);
        RunSource source = new RunSource(
                "stated",
                document.file(),
                Optional.empty(),
                InputFiles.in(HOLDER.toAbsolutePath().getParent()),
                1);
        HolderRun run = new HolderRunLoader(ReferenceData.shipped()).load(source, Work.UNWATCHED);
        List<Finding> told = run.spots().stream()
                .flatMap(s -> s.findings().stream())
                .filter(f -> f.rule().equals("transmission-not-used"))
                .toList();
        if (severity == null) {
            assertThat(told).isEmpty();
        } else {
            assertThat(told).hasSameSizeAs(run.spots()).allMatch(f -> f.severity() == severity);
        }
    }
}
