package spotline.bench.viewer;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.random.RandomGenerator;
import java.util.stream.Stream;
import spotline.numerics.random.PoissonSampler;
import spotline.numerics.random.RandomStreams;

/** Holder runs to measure with, written into a folder. All invented. */
final class Holders {
    static final int SPOTS = 20;
    static final int SPECTRA = 9;
    static final int CHANNELS = 2000;
    private static final double STEP_EV = 0.01;
    private static final double[][] PEAKS = {
        {284.8, 21000, 1.0}, {286.4, 9000, 1.05}, {288.2, 6200, 1.1}, {290.6, 4300, 1.2}
    };
    private static final ObjectMapper JSON = new ObjectMapper();

    private Holders() {}

    /** The demonstration's spots over and over, each with its scans and as many later ones as make nine. */
    static Path many(Path from, String demo, Path folder) throws IOException {
        ObjectNode root = (ObjectNode) JSON.readTree(from.resolve(demo).toFile());
        ArrayNode given = (ArrayNode) root.get("spots");
        ArrayNode spots = JSON.createArrayNode();
        for (int i = 0; i < SPOTS; i++) {
            ObjectNode spot = ((ObjectNode) given.get(i % given.size())).deepCopy();
            spot.put("id", "" + (i + 1));
            String file = spot.get("spectra").get(0).get("file").asText();
            String text = Files.readString(from.resolve(file), StandardCharsets.US_ASCII);
            Files.writeString(folder.resolve(file), text);
            int blocks = (int) text.lines().filter(l -> l.strip().equals("XPS")).count();
            ArrayNode later = JSON.createArrayNode();
            for (int b = 2; later.size() < SPECTRA - blocks; b = b % blocks + 1) later.add(b);
            Files.writeString(folder.resolve("later-" + file), text);
            ObjectNode again =
                    JSON.createObjectNode().put("file", "later-" + file).put("role", "repeat");
            again.set("blocks", later);
            if (!later.isEmpty()) ((ArrayNode) spot.get("spectra")).add(again);
            spots.add(spot);
        }
        root.set("spots", spots);
        return written(folder.resolve("many.json"), root);
    }

    /** One spot with one scan of 2,000 channels and a model of four components on it. */
    static Path wide(Path folder) throws IOException {
        RandomGenerator random = RandomStreams.stream(1, "wide scan");
        double[] mean = new double[CHANNELS];
        double below = 0;
        for (int i = 0; i < CHANNELS; i++) {
            double x = 280 + i * STEP_EV;
            double peaks = 0;
            for (double[] p : PEAKS) peaks += p[1] * Math.exp(-4 * Math.log(2) * Math.pow((x - p[0]) / p[2], 2));
            below += peaks * STEP_EV;
            mean[i] = 1500 + 0.03 * below + peaks;
        }
        double[] counts = PoissonSampler.sample(random, mean);
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < CHANNELS; i++) {
            text.append(String.format(Locale.ROOT, "%.2f %.0f%n", 280 + i * STEP_EV, counts[i]));
        }
        Files.writeString(folder.resolve("wide.txt"), text);
        ObjectNode model = JSON.createObjectNode().put("format", "spotline-fit-model/1");
        model.putObject("window").put("lowEv", 281.0).put("highEv", 298.0);
        model.putObject("background")
                .put("kind", "shirley")
                .put("endpointChannels", 5)
                .put("fitted", true);
        ArrayNode components = model.putArray("components");
        for (double[] p : PEAKS) {
            ObjectNode c = components.addObject().put("name", "at " + p[0]).put("shape", "voigt");
            c.putObject("position").put("start", p[0]).put("min", p[0] - 0.5).put("max", p[0] + 0.5);
            c.putObject("gaussianFwhm").put("start", 1.1).put("min", 0.3).put("max", 3.0);
            c.putObject("lorentzianFwhm").put("fixed", 0.1);
            c.putObject("area").put("min", 0.0);
        }
        ObjectNode root =
                JSON.createObjectNode().put("format", "spotline-holder-run/1").put("title", "wide scan");
        root.putObject("holder").put("template", "flat-bar");
        ObjectNode spot = root.putArray("spots")
                .addObject()
                .put("id", "1")
                .put("xMm", 20.0)
                .put("yMm", 7.0);
        ObjectNode sample = spot.putObject("sample").put("name", "invented film");
        sample.put("conductivity", "insulator")
                .put("carbon", "adventitious")
                .putArray("expectedElements")
                .add("C");
        spot.putObject("mount").put("method", "carbon-tape").put("electricalState", "isolated");
        ObjectNode spectrum = spot.putArray("spectra").addObject().put("file", "wide.txt");
        spectrum.putObject("columns")
                .put("energy", 1)
                .put("ordinate", 2)
                .put("scale", "binding")
                .put("ordinateKind", "counts")
                .put("photonEnergyEv", 1486.6);
        ObjectNode models = JSON.createObjectNode();
        models.set("C 1s", model);
        ObjectNode fits = JSON.createObjectNode();
        fits.set("models", models);
        spot.putObject("treatment").set("peakFit", fits);
        return written(folder.resolve("wide.json"), root);
    }

    private static Path written(Path file, ObjectNode root) throws IOException {
        Files.write(file, JSON.writeValueAsBytes(root));
        return file;
    }

    static void remove(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.toList()) Files.delete(file);
        }
        Files.delete(folder);
    }
}
