package spotline.report;

import java.awt.Dimension;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import spotline.core.Place;
import spotline.core.ReadException;
import spotline.report.html.Letterhead;
import spotline.report.print.MarkImage;

/**
 * A lab's own template: a folder of plain files, each of which may be left out.
 *
 * <p>{@code name.txt}, {@code contact.txt} and {@code footer.txt} hold one text each, UTF-8; {@code mark.png} or
 * {@code mark.jpg} the lab's mark; {@code style.css} what is added to the style of the HTML pages.
 *
 * <p>Errors: {@link ReadException} for a folder without any of them, a file that is too large, a picture that is none, and a
 * style that would fetch something or end the style sheet.
 */
public final class TemplateFolder {
    private static final long LONGEST_TEXT = 4_000;
    private static final long LONGEST_STYLE = 200_000;
    private static final long LARGEST_MARK = 1_000_000;
    private static final int LARGEST_SIDE = 4_000;

    /** Backslashes could spell any of the others. */
    private static final Pattern REACHES_OUT =
            Pattern.compile("</|<!|\\\\|@import|@charset|url\\s*\\(|image-set|src\\s*\\(|expression\\s*\\(");

    private TemplateFolder() {}

    public static Letterhead read(Path folder) throws ReadException {
        if (!Files.isDirectory(folder)) {
            throw new ReadException(Place.file(folder.toString()), "no folder", "a template folder");
        }
        Letterhead letterhead = new Letterhead(
                text(folder, "name.txt"),
                mark(folder),
                text(folder, "footer.txt"),
                text(folder, "contact.txt"),
                style(folder));
        if (letterhead.equals(Letterhead.NONE)) {
            throw new ReadException(
                    Place.file(folder.toString()),
                    "no file of a template",
                    "name.txt, contact.txt, footer.txt, mark.png, mark.jpg or style.css");
        }
        return letterhead;
    }

    private static Optional<String> text(Path folder, String name) throws ReadException {
        Optional<byte[]> bytes = bytes(folder.resolve(name), LONGEST_TEXT);
        if (bytes.isEmpty()) return Optional.empty();
        return Optional.of(decoded(folder.resolve(name), bytes.get()).strip()).filter(text -> !text.isEmpty());
    }

    private static String style(Path folder) throws ReadException {
        Path file = folder.resolve("style.css");
        Optional<byte[]> bytes = bytes(file, LONGEST_STYLE);
        if (bytes.isEmpty()) return "";
        String css = decoded(file, bytes.get());
        if (REACHES_OUT.matcher(css.toLowerCase(Locale.ROOT)).find()) {
            throw new ReadException(
                    Place.file(file.toString()),
                    "a style that fetches something, ends the style sheet or holds a backslash",
                    "rules that need nothing from outside");
        }
        return css;
    }

    private static Optional<MarkImage> mark(Path folder) throws ReadException {
        for (String name : new String[] {"mark.png", "mark.jpg"}) {
            Path file = folder.resolve(name);
            Optional<byte[]> bytes = bytes(file, LARGEST_MARK);
            if (bytes.isPresent()) return Optional.of(image(file, bytes.get()));
        }
        return Optional.empty();
    }

    private static MarkImage image(Path file, byte[] bytes) throws ReadException {
        String type = type(bytes);
        try {
            Dimension size = size(bytes);
            boolean fits = size.width <= LARGEST_SIDE && size.height <= LARGEST_SIDE;
            if (!type.isEmpty() && fits) return new MarkImage(type, bytes, size.width, size.height);
        } catch (IOException | IllegalArgumentException e) {
            // Told below, in the words of whoever made the folder.
        }
        throw new ReadException(
                Place.file(file.toString()),
                "no such picture",
                "a PNG or JPEG of at most " + LARGEST_SIDE + " dots a side");
    }

    private static String type(byte[] bytes) {
        if (bytes.length > 8 && bytes[0] == (byte) 0x89 && bytes[1] == 'P') return "image/png";
        return bytes.length > 3 && bytes[0] == (byte) 0xFF && bytes[1] == (byte) 0xD8 ? "image/jpeg" : "";
    }

    private static Dimension size(byte[] bytes) throws IOException {
        try (ImageInputStream in = ImageIO.createImageInputStream(new java.io.ByteArrayInputStream(bytes))) {
            Iterator<ImageReader> readers = ImageIO.getImageReaders(in);
            if (!readers.hasNext()) throw new IOException("no reader");
            ImageReader reader = readers.next();
            reader.setInput(in);
            Dimension size = new Dimension(reader.getWidth(0), reader.getHeight(0));
            reader.dispose();
            return size;
        }
    }

    private static Optional<byte[]> bytes(Path file, long most) throws ReadException {
        if (!Files.isRegularFile(file)) return Optional.empty();
        try (InputStream in = Files.newInputStream(file)) {
            byte[] bytes = in.readNBytes((int) most + 1);
            if (bytes.length > most) {
                throw new ReadException(
                        Place.file(file.toString()), "more than " + most + " bytes", "at most " + most + " bytes");
            }
            return Optional.of(bytes);
        } catch (IOException e) {
            throw new ReadException(
                    Place.file(file.toString()), "a file that cannot be read", "a file of the template");
        }
    }

    private static String decoded(Path file, byte[] bytes) throws ReadException {
        try {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
        } catch (CharacterCodingException e) {
            throw new ReadException(Place.file(file.toString()), "bytes that are no UTF-8", "UTF-8 text");
        }
    }
}
