package spotline.formats;

import java.net.URI;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Locale;

/**
 * Names of files as texts, whatever the locale: where the platform's own encoding lacks a character (a POSIX locale has
 * ASCII alone), names are taken as UTF-8, byte for byte.
 *
 * <p>Source: the percent encoding of {@code file:} names, RFC 8089, through which the platform takes bytes as they are.
 */
public final class FileNames {
    private FileNames() {}

    /** Errors: {@link InvalidPathException} when the text is no file name on this system. */
    public static Path path(String name) {
        return resolve(Path.of(""), name);
    }

    /**
     * A name within a folder, or an absolute one.
     *
     * <p>Errors: {@link InvalidPathException} when the text is no file name on this system.
     */
    public static Path resolve(Path folder, String name) {
        if (!needsBytes(name)) return folder.resolve(name);
        byte[] bytes = name.getBytes(StandardCharsets.UTF_8);
        String base = name.startsWith("/") ? "" : directory(folder);
        try {
            Path whole = Path.of(URI.create("file://" + base + encoded(bytes)));
            boolean relative = !folder.isAbsolute() && !name.startsWith("/");
            return relative ? Path.of("").toAbsolutePath().relativize(whole) : whole;
        } catch (IllegalArgumentException e) {
            throw new InvalidPathException(name, "no file name on this system");
        }
    }

    private static String directory(Path folder) {
        String raw = folder.toAbsolutePath().toUri().getRawPath();
        return raw.endsWith("/") ? raw : raw + "/";
    }

    /** The name for people and files: what {@link Path#toString()} gives, with no character lost. */
    public static String text(Path path) {
        String text = path.toString();
        if (text.indexOf('\uFFFD') < 0) return text;
        String whole = decoded(path.toAbsolutePath().toUri().getRawPath());
        if (path.isAbsolute()) return whole;
        String here = decoded(directory(Path.of("")));
        return whole.startsWith(here) ? whole.substring(here.length()) : whole;
    }

    private static boolean needsBytes(String name) {
        String property = System.getProperty("sun.jnu.encoding", "UTF-8");
        Charset platform = Charset.isSupported(property) ? Charset.forName(property) : StandardCharsets.UTF_8;
        return !platform.equals(StandardCharsets.UTF_8)
                && platform.canEncode()
                && !platform.newEncoder().canEncode(name);
    }

    private static String encoded(byte[] bytes) {
        StringBuilder text = new StringBuilder();
        for (byte b : bytes) {
            boolean plain = (b >= 'a' && b <= 'z') || (b >= 'A' && b <= 'Z') || (b >= '0' && b <= '9') || b == '/';
            if (plain) text.append((char) b);
            else text.append(String.format(Locale.ROOT, "%%%02X", b & 0xff));
        }
        return text.toString();
    }

    private static String decoded(String raw) {
        byte[] bytes = new byte[raw.length()];
        int n = 0;
        for (int i = 0; i < raw.length(); i++) {
            char c = raw.charAt(i);
            if (c == '%' && i + 2 < raw.length()) {
                bytes[n++] = (byte) Integer.parseInt(raw, i + 1, i + 3, 16);
                i += 2;
            } else {
                bytes[n++] = (byte) c;
            }
        }
        return new String(bytes, 0, n, StandardCharsets.UTF_8);
    }
}
