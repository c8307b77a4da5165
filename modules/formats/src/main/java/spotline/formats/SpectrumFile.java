package spotline.formats;

import static java.util.Objects.requireNonNull;

import java.util.List;
import java.util.Optional;
import spotline.core.Finding;

/**
 * What a spectrum file holds.
 *
 * @param name as the holder run or the command gives it
 * @param sha256 of the file's bytes, lower-case hex
 * @param format {@link #ISO_14976} or {@link #TEXT_COLUMNS}
 * @param blocks in file order; a block without values is left out, with a warning
 * @param warnings what could be lived with, each with its line in the message
 */
public record SpectrumFile(String name, String sha256, String format, List<Block> blocks, List<Finding> warnings) {
    public static final String ISO_14976 = "iso14976";
    public static final String TEXT_COLUMNS = "text-columns";

    public SpectrumFile {
        requireNonNull(name, "name");
        requireNonNull(sha256, "sha256");
        requireNonNull(format, "format");
        blocks = List.copyOf(blocks);
        warnings = List.copyOf(warnings);
    }

    /** The block with a number, counted from 1. */
    public Optional<Block> block(int number) {
        return blocks.stream().filter(b -> b.number() == number).findFirst();
    }
}
