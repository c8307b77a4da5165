package spotline.holder;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MarkerMaterialsTest {
    /** Identifier and mounting methods of each row of the published table. */
    private static Map<String, List<String>> table() throws IOException {
        Map<String, List<String>> rows = new LinkedHashMap<>();
        for (String line : Files.readAllLines(Path.of("../../reference-data/mounts/mount-materials.csv"))) {
            if (line.startsWith("#") || line.startsWith("id,")) continue;
            String methods = line.replaceAll("\"[^\"]*\"", "").split(",", -1)[2];
            rows.put(line.substring(0, line.indexOf(',')), List.of(methods.split(";", -1)));
        }
        return rows;
    }

    private static Mount mount(MountMethod method, List<String> materials, List<Clip> clips) {
        return new Mount(
                method,
                ElectricalState.UNKNOWN,
                materials,
                OptionalDouble.empty(),
                Optional.empty(),
                clips,
                Optional.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    @Test
    void aMethodAloneGivesTheRowsThatTheTableGivesIt() throws IOException {
        Map<String, List<String>> table = table();
        assertThat(table).hasSizeGreaterThan(10);
        for (MountMethod method : MountMethod.values()) {
            List<String> rows = table.entrySet().stream()
                    .filter(row -> row.getValue().contains(method.word()))
                    .map(Map.Entry::getKey)
                    .sorted()
                    .toList();
            assertThat(mount(method, List.of(), List.of()).markerMaterials())
                    .as(method.word())
                    .isEqualTo(rows);
        }
    }

    @ParameterizedTest
    @CsvSource(textBlock = """
            METAL_CLIP,      stainless steel clip at the left end, stainless-clip
            METAL_CLIP,      Copper clip,                  brass-clip
            METAL_CLIP,      GOLD-coated clip,             gold-clip
            METAL_CLIP,      paper,                        brass-clip gold-clip stainless-clip
            PRESSED_IN_FOIL, indium foil,                  indium-foil
            PRESSED_IN_FOIL, aluminum foil,                aluminium-foil
            POWDER_ON_TAPE,  carbon tape,                  carbon-tape
            POWDER_ON_TAPE,  double-sided tape,            silicone
            CARBON_TAPE,     silver paint,                 carbon-tape silver-paint
            COVER_SLIP,      PTFE tape,                    fluoropolymer glass
            OTHER,           a wooden peg,                 ''
            UNKNOWN,         glass,                        glass
            """)
    void wordsOfTheRecordNarrowItDown(MountMethod method, String material, String expected) throws IOException {
        List<String> found = mount(method, List.of(material), List.of()).markerMaterials();
        assertThat(String.join(" ", found)).isEqualTo(expected);
        assertThat(table().keySet()).containsAll(found);
    }

    @Test
    void aClipCountsAsWell() {
        Clip brass = new Clip(Optional.empty(), Optional.of("brass"), Optional.empty(), Optional.empty(), 0);
        assertThat(mount(MountMethod.CARBON_TAPE, List.of(), List.of(brass)).markerMaterials())
                .containsExactly("brass-clip", "carbon-tape");
        assertThat(mount(MountMethod.METAL_CLIP, List.of(), List.of(brass)).markerMaterials())
                .containsExactly("brass-clip");
    }
}
