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
 * Spectrum files as they were read, kept from one settling of a document to the next: what was measured does not change
 * while an analyst works, and the same file stays the same object. A file that could not be read is tried again.
 */
public final class SpectrumStore {
    private record Key(String file, Optional<TextColumns> columns) {}

    private final Map<Key, SpectrumFile> read = new ConcurrentHashMap<>();

    SpectrumFile open(InputFiles inputs, String file, Optional<TextColumns> columns) throws ReadException {
        Key key = new Key(file, columns);
        SpectrumFile known = read.get(key);
        if (known != null) return known;
        SpectrumFile fresh = SpectrumFiles.open(inputs.path(file), file, columns, ReadLimits.DEFAULT);
        SpectrumFile first = read.putIfAbsent(key, fresh);
        return first == null ? fresh : first;
    }
}
