package spotline.run.project;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;
import spotline.core.Place;
import spotline.core.ReadException;

/** A project's zip, read with care: nothing in it is believed before it was looked at. */
final class ProjectZip implements AutoCloseable {
    private final String name;
    private final ZipFile zip;
    private final Map<String, ZipEntry> entries;

    private ProjectZip(String name, ZipFile zip, Map<String, ZipEntry> entries) {
        this.name = name;
        this.zip = zip;
        this.entries = entries;
    }

    /** Errors: {@link ReadException} when it is no zip, or holds what a project would not. */
    static ProjectZip open(Path file, ProjectLimits limits) throws ReadException {
        String name = file.toString();
        if (!Files.isRegularFile(file)) throw new ReadException(Place.file(name), "no such file", "a project file");
        ZipFile zip;
        try {
            zip = new ZipFile(file.toFile(), StandardCharsets.UTF_8);
        } catch (ZipException e) {
            throw new ReadException(Place.file(name), "a file that is no zip or a damaged one", "a project file");
        } catch (IOException e) {
            throw new ReadException(Place.file(name), "a file that cannot be read", "a readable project file");
        }
        try {
            return new ProjectZip(name, zip, entries(name, zip, limits));
        } catch (ReadException e) {
            try {
                zip.close();
            } catch (IOException closing) {
                e.addSuppressed(closing);
            }
            throw e;
        }
    }

    private static Map<String, ZipEntry> entries(String name, ZipFile zip, ProjectLimits limits) throws ReadException {
        if (zip.size() > limits.entries()) {
            throw new ReadException(Place.file(name), zip.size() + " files inside", "at most " + limits.entries());
        }
        Map<String, ZipEntry> entries = new LinkedHashMap<>();
        long total = 0;
        for (ZipEntry entry : zip.stream().toList()) {
            String inside = entry.getName();
            Place place = Place.file(name + "!" + shown(inside));
            if (!safe(inside)) {
                throw new ReadException(place, "a file name that leads elsewhere", "a plain relative name");
            }
            if (entries.put(inside, entry) != null) throw new ReadException(place, "a file twice", "each file once");
            long size = entry.getSize();
            long packed = Math.max(1, entry.getCompressedSize());
            total += Math.max(0, size);
            if (size < 0 || size > limits.entryBytes() || total > limits.totalBytes()) {
                throw new ReadException(
                        place,
                        "a file of " + size + " bytes, " + total + " with those before it",
                        "at most " + limits.entryBytes() + " bytes and " + limits.totalBytes() + " together");
            }
            if (size > ProjectLimits.SMALL && size / packed > limits.ratio()) {
                throw new ReadException(
                        place,
                        "a file that unpacks to " + size / packed + " times its size",
                        "at most " + limits.ratio() + " times");
            }
        }
        return entries;
    }

    private static boolean safe(String name) {
        if (name.isEmpty() || name.startsWith("/") || name.indexOf('\\') >= 0 || name.indexOf(':') >= 0) return false;
        if (name.chars().anyMatch(c -> c < ' ' || c == 127)) return false;
        return !List.of(name.split("/", -1)).contains("..")
                && !List.of(name.split("/", -1)).contains(".");
    }

    private static String shown(String name) {
        String plain = name.replaceAll("\\p{Cntrl}", "?");
        return plain.length() <= 80 ? plain : plain.substring(0, 77) + "...";
    }

    Set<String> names() {
        return new LinkedHashSet<>(entries.keySet());
    }

    boolean has(String inside) {
        return entries.containsKey(inside);
    }

    /** Errors: {@link ReadException} when the file is not there, is damaged or is longer than it says. */
    byte[] read(String inside) throws ReadException {
        try (InputStream in = stream(inside)) {
            return in.readAllBytes();
        } catch (IOException e) {
            throw damaged(inside);
        }
    }

    String sha256(String inside) throws ReadException {
        try (InputStream in = stream(inside)) {
            return Sums.of(in);
        } catch (IOException e) {
            throw damaged(inside);
        }
    }

    private InputStream stream(String inside) throws ReadException, IOException {
        ZipEntry entry = entries.get(inside);
        if (entry == null) {
            throw new ReadException(Place.file(name), "no " + shown(inside) + " inside", "a whole project file");
        }
        return new Measured(zip.getInputStream(entry), entry.getSize());
    }

    private ReadException damaged(String inside) {
        return new ReadException(Place.file(name + "!" + shown(inside)), "damaged bytes", "what was saved");
    }

    @Override
    public void close() throws IOException {
        zip.close();
    }

    /** Ends with a fault where more comes than was said. */
    private static final class Measured extends java.io.FilterInputStream {
        private long left;

        Measured(InputStream in, long size) {
            super(in);
            this.left = size;
        }

        @Override
        public int read() throws IOException {
            int b = super.read();
            if (b >= 0) count(1);
            return b;
        }

        @Override
        public int read(byte[] to, int from, int length) throws IOException {
            int n = super.read(to, from, length);
            if (n > 0) count(n);
            return n;
        }

        private void count(int n) throws IOException {
            left -= n;
            if (left < 0) throw new IOException("more bytes than the zip says");
        }
    }
}
