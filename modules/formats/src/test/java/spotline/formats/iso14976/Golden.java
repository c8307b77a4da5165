package spotline.formats.iso14976;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import spotline.core.ReadException;
import spotline.formats.source.ReadLimits;

/**
 * Invented files written by hand along the field order of ISO 14976:1998. Each line of the resource is a value, a bar,
 * and the field's name or prefix number.
 */
final class Golden {
    static final List<String> NAMES = List.of("depth-profile.txt", "image.txt", "irregular-map.txt");

    private Golden() {}

    /** The values of a resource, a line each. */
    static List<String> lines(String name) {
        try (InputStream in = Golden.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .map(line -> line.substring(0, line.lastIndexOf(" | ")))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The file itself. */
    static String file(String name) {
        return file(lines(name));
    }

    static String file(List<String> lines) {
        return String.join("\n", lines) + "\n";
    }

    static Iso14976Parser.Parsed parse(String text) throws ReadException {
        return parse(text.getBytes(StandardCharsets.UTF_8));
    }

    static Iso14976Parser.Parsed parse(byte[] bytes) throws ReadException {
        return Iso14976Parser.parse("test.vms", new ByteArrayInputStream(bytes), bytes.length, ReadLimits.DEFAULT);
    }
}
