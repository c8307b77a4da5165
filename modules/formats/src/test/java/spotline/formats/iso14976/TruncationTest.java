package spotline.formats.iso14976;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import spotline.core.ReadException;
import spotline.core.Severity;

/** A good file cut at every byte is refused, or its whole blocks are kept with a caution, and nothing else. */
class TruncationTest {
    @ParameterizedTest
    @ValueSource(strings = {"depth-profile.txt", "image.txt", "irregular-map.txt"})
    void everyCutIsTold(String name) throws Exception {
        String text = Golden.file(name);
        byte[] whole = text.getBytes(StandardCharsets.UTF_8);
        Iso14976Parser.Parsed good = Golden.parse(whole);
        List<ExperimentBlock> blocks = good.experiment().blocks();
        int lastByte = whole.length - "\n".length();
        for (int cut = 0; cut < lastByte; cut++) {
            byte[] part = Arrays.copyOf(whole, cut);
            int line =
                    (int) text.substring(0, cut).chars().filter(c -> c == '\n').count();
            try {
                Iso14976Parser.Parsed parsed = Golden.parse(part);
                assertThat(parsed.warnings())
                        .as("cut after %d bytes", cut)
                        .anySatisfy(f -> assertThat(f.severity()).isEqualTo(Severity.CAUTION));
                List<ExperimentBlock> kept = parsed.experiment().blocks();
                // Only a cut within the very last value can change a number, and the caution says so.
                boolean mayBeCut = kept.size() == blocks.size() && part[cut - 1] != '\n';
                int sure = mayBeCut ? kept.size() - 1 : kept.size();
                assertThat(kept.subList(0, sure)).as("cut after %d bytes", cut).isEqualTo(blocks.subList(0, sure));
                boolean wholeBlocks = kept.size() == blocks.size();
                assertThat(parsed.warnings())
                        .anyMatch(f -> f.rule().equals(wholeBlocks ? "iso14976-no-end-marker" : "iso14976-truncated"));
            } catch (ReadException refused) {
                assertThat(refused.place().file()).isEqualTo("test.vms");
                assertThat(refused.place().line()).isBetween(line == 0 ? 0 : 1, line + 1);
                boolean noWholeBlock =
                        blocks.size() == 1 || line < good.blockLines().get(1);
                assertThat(noWholeBlock)
                        .as("refused after %d bytes: %s", cut, refused.getMessage())
                        .isTrue();
            }
        }
    }

    @Test
    void theLostBlocksAreNamed() throws Exception {
        List<String> lines = Golden.lines("depth-profile.txt");
        Iso14976Parser.Parsed parsed = Golden.parse(Golden.file(lines.subList(0, 110)));
        assertThat(parsed.experiment().blocks()).hasSize(1);
        assertThat(parsed.warnings().get(0).message())
                .isEqualTo(
                        "test.vms:110: the file ends here, within block 2 of 3, which begins at line 101; blocks 2 to"
                                + " 3 are lost");
        Iso14976Parser.Parsed later = Golden.parse(Golden.file(lines.subList(0, 170)));
        assertThat(later.experiment().blocks()).hasSize(2);
        assertThat(later.warnings().get(0).message())
                .isEqualTo("test.vms:170: the file ends here, within block 3 of 3, which begins at line 155; block 3 is"
                        + " lost");
    }

    @Test
    void aMissingBlockIsNotTakenForAFaultOfItsLines() throws Exception {
        List<String> lines = new java.util.ArrayList<>(Golden.lines("depth-profile.txt"));
        lines.set(24, "5");
        Iso14976Parser.Parsed parsed = Golden.parse(Golden.file(lines));
        assertThat(parsed.experiment().blocks()).hasSize(3);
        assertThat(parsed.warnings().get(0).message())
                .contains("within block 4 of 5")
                .contains("blocks 4 to 5 are lost");
    }

    @Test
    void withoutAWholeBlockTheFileIsRefused() {
        List<String> lines = Golden.lines("depth-profile.txt");
        org.assertj.core.api.Assertions.assertThatThrownBy(() -> Golden.parse(Golden.file(lines.subList(0, 99))))
                .isInstanceOf(ReadException.class)
                .hasMessage("test.vms:99: the file ends here, expected ordinate value 6 of 6 on a line after it");
    }
}
