package spotline.run;

import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import spotline.core.ReadException;
import spotline.formats.SpectrumFile;
import spotline.formats.SpectrumFiles;
import spotline.formats.source.ReadLimits;
import spotline.formats.text.TextColumns;

/**
 * The files of a holder run as they were read, kept from one settling of a document to the next: what was measured does not change
 * while an analyst works, and the same file stays the same object. A file that could not be read is tried again.
 */
public final class SpectrumStore {
    private record Key(String file, Optional<TextColumns> columns) {}

    /** Reads a file that is no spectrum. */
    @FunctionalInterface
    interface Reading<T> {
        T read() throws ReadException;
    }

    private final Map<Key, SpectrumFile> read = new ConcurrentHashMap<>();
    private final Map<String, Object> others = new ConcurrentHashMap<>();

    SpectrumFile open(InputFiles inputs, String file, Optional<TextColumns> columns) throws ReadException {
        Key key = new Key(file, columns);
        SpectrumFile known = read.get(key);
        if (known != null) return known;
        SpectrumFile fresh = SpectrumFiles.open(inputs.path(file), file, columns, ReadLimits.DEFAULT);
        SpectrumFile first = read.putIfAbsent(key, fresh);
        return first == null ? fresh : first;
    }

    /**
     * What a file that is no spectrum says, read once.
     *
     * @param what the kind of file and its name
     */
    @SuppressWarnings("unchecked") // A kind of file has one type.
    <T> T once(String what, Reading<T> reading) throws ReadException {
        Object known = others.get(what);
        if (known != null) return (T) known;
        T fresh = reading.read();
        Object first = others.putIfAbsent(what, fresh);
        return first == null ? fresh : (T) first;
    }

    /** Files are read anew from now on. */
    public void forget() {
        read.clear();
        others.clear();
    }
}
