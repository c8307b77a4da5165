package spotline.formats.large;

import java.nio.file.Path;
import java.util.Optional;
import spotline.formats.Block;
import spotline.formats.SpectrumFile;
import spotline.formats.SpectrumFiles;
import spotline.spectra.Ordinate;

/** A process of its own that holds a whole file: ends with 0 when the sum of its values is the one expected. */
final class OpenLargeFile {
    private OpenLargeFile() {}

    public static void main(String[] args) throws Exception {
        SpectrumFile file = SpectrumFiles.open(Path.of(args[0]), "large", Optional.empty());
        double sum = 0;
        for (Block block : file.blocks()) {
            Ordinate counts = block.set().ordinates().get(0);
            for (int i = 0; i < counts.size(); i++) sum += counts.value(i);
        }
        System.exit(sum == Double.parseDouble(args[1]) && file.warnings().isEmpty() ? 0 : 1);
    }
}
