package spotline.demo;

import static java.nio.charset.StandardCharsets.UTF_8;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import spotline.formats.iso14976.Iso14976Writer;

/** The files of the demonstration folder: the same bytes every time. */
final class DemoFolder {
    private static final String README = "/spotline/demo/readme.md";

    private DemoFolder() {}

    /** File names with their bytes. */
    static Map<String, byte[]> files() {
        List<SpotPlan> spots = Footbridge.spots();
        DemoModel model = new DemoModel(
                Footbridge.INSTRUMENT,
                new ReferenceAtoms(Footbridge.INSTRUMENT.photonEnergyEv()),
                LossFunction.UNIVERSAL);
        SpectrumMaker spectra = new SpectrumMaker(model, Footbridge.SEED);
        Map<String, byte[]> files = new LinkedHashMap<>();
        for (SpotPlan spot : spots) {
            files.put(spot.file(), Iso14976Writer.text(spectra.experiment(spot)).getBytes(UTF_8));
        }
        files.put("footbridge-bearing.json", json(FootbridgeHolder.json(spots)));
        files.put("truth.json", json(Truth.json(model, spots)));
        files.put("README.md", readme());
        return files;
    }

    private static byte[] json(JsonNode node) {
        DefaultIndenter lines = new DefaultIndenter("  ", "\n");
        DefaultPrettyPrinter printer = new DefaultPrettyPrinter(
                        Separators.createDefaultInstance().withObjectFieldValueSpacing(Separators.Spacing.AFTER))
                .withObjectIndenter(lines);
        try {
            return (new ObjectMapper().writer(printer).writeValueAsString(node) + "\n").getBytes(UTF_8);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a tree in memory can be written", e);
        }
    }

    private static byte[] readme() {
        try (InputStream in = DemoFolder.class.getResourceAsStream(README)) {
            if (in == null) throw new IllegalStateException(README + " is missing");
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
