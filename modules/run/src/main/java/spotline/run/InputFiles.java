package spotline.run;

import java.nio.file.FileSystems;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import spotline.core.Place;
import spotline.core.ReadException;
import spotline.formats.FileNames;

/** Where the files are that a holder run names: in its folder, or inside a project. */
@FunctionalInterface
public interface InputFiles {
    /**
     * The place of a file, whether it exists or not.
     *
     * <p>Errors: {@link ReadException} for a name that no file can have.
     *
     * @param name as the holder run gives it
     */
    Path path(String name) throws ReadException;

    static InputFiles in(Path folder) {
        return name -> {
            try {
                boolean onDisk = folder.getFileSystem() == FileSystems.getDefault();
                return onDisk ? FileNames.resolve(folder, name) : folder.resolve(name);
            } catch (InvalidPathException e) {
                throw new ReadException(Place.file(name), "not a file name on this system", "a readable file");
            }
        };
    }

    /** The folder that a holder-run file stands in. */
    static InputFiles beside(Path holderRunFile) {
        Path folder = holderRunFile.toAbsolutePath().getParent();
        return in(folder == null ? Path.of(".") : folder);
    }
}
