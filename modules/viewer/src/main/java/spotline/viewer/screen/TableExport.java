package spotline.viewer.screen;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import javafx.embed.swing.SwingFXUtils;
import javafx.scene.Node;
import javafx.scene.SnapshotParameters;
import javafx.scene.transform.Transform;
import javax.imageio.ImageIO;
import spotline.report.WholeFile;
import spotline.run.RunResult;
import spotline.viewer.model.Words;

/** Writes the composition as the kind of file that a name asks for. */
final class TableExport {
    private static final double IMAGE_SCALE = 2;

    private TableExport() {}

    /**
     * Errors: {@link IOException} in one sentence, when the name asks for a kind that is not written or the file cannot be.
     *
     * @param results bytes of the result files, by name
     * @param table drawn for an image
     */
    static void write(
            RunResult result, Words words, Function<RunResult, Map<String, byte[]>> results, Node table, Path file)
            throws IOException {
        String name = String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT);
        String ending = name.substring(name.lastIndexOf('.') + 1);
        Optional<byte[]> bytes = switch (ending) {
            case "csv", "xlsx" -> Optional.ofNullable(results.apply(result).get("composition." + ending));
            case "png" -> Optional.of(png(table));
            default -> Optional.empty();
        };
        if (bytes.isEmpty()) throw new IOException(words.of("file.kind", file));
        WholeFile.write(file, bytes.get());
    }

    private static byte[] png(Node node) throws IOException {
        SnapshotParameters parameters = new SnapshotParameters();
        parameters.setTransform(Transform.scale(IMAGE_SCALE, IMAGE_SCALE));
        BufferedImage image = SwingFXUtils.fromFXImage(node.snapshot(parameters, null), null);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ImageIO.write(image, "png", out);
        return out.toByteArray();
    }
}
