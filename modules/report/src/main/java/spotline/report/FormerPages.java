package spotline.report;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The owners' pages and tables that an earlier run wrote, by what its result says of its samples. */
final class FormerPages {
    private static final List<String> ENDINGS = List.of(".csv", ".html", ".pdf");

    private FormerPages() {}

    /**
     * Names relative to the directory of the result.
     *
     * <p>Errors: none for a file that is no result; {@link IOException} when it cannot be read.
     *
     * @param result of the earlier run, may be missing
     */
    static List<String> of(Path result) throws IOException {
        if (!Files.isRegularFile(result)) return List.of();
        JsonNode samples;
        try {
            samples = new ObjectMapper().readTree(Files.readAllBytes(result)).path("samples");
        } catch (JsonProcessingException e) {
            return List.of();
        }
        List<String> names = new ArrayList<>();
        samples.forEach(sample -> names.add(sample.path("sample").asText()));
        List<String> pages = new ArrayList<>();
        for (String name : SampleFileNames.of(names)) {
            for (String ending : ENDINGS) pages.add(ResultFiles.SAMPLES + "/" + name + ending);
        }
        return pages;
    }
}
