package spotline.run.project;

import java.util.Optional;

/**
 * A file that the holder run names, as a project keeps it: its bytes inside, or its path outside.
 *
 * @param name as the holder run gives it
 * @param inside place in the project; empty when it is kept outside
 * @param outside path, relative to the project's folder where that can be; empty when it is kept inside
 * @param sha256 of its bytes when the project was saved, lower-case hex; empty when it was missing
 */
public record RawFile(String name, Optional<String> inside, Optional<String> outside, Optional<String> sha256) {
    public RawFile {
        if (name.isBlank()) throw new IllegalArgumentException("a raw file needs a name");
        if (inside.isPresent() && outside.isPresent()) {
            throw new IllegalArgumentException("a raw file is kept inside or outside, not both");
        }
    }
}
