package spotline.run;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.Optional;
import spotline.core.ReadException;
import spotline.holder.HolderRunFile;
import spotline.holder.HolderRunReader;

/**
 * A holder run as it is declared, before any of its spectra is read.
 *
 * @param name what to call the holder run in errors
 * @param treatment a patch laid over the defaults before the holder's own
 * @param inputs where the files are that it names
 */
public record RunSource(String name, HolderRunFile file, Optional<ObjectNode> treatment, InputFiles inputs, long seed) {
    /** Errors: {@link ReadException} with every fault of the holder run or the treatment file. */
    public static RunSource of(Path holderRunFile, Optional<Path> treatment, long seed) throws ReadException {
        Optional<ObjectNode> patch = Optional.empty();
        if (treatment.isPresent()) patch = Optional.of(TreatmentStack.read(treatment.get()));
        return new RunSource(
                holderRunFile.toString(),
                HolderRunReader.read(holderRunFile),
                patch,
                InputFiles.beside(holderRunFile),
                seed);
    }
}
