package spotline.formats;

import static java.util.Objects.requireNonNull;

import spotline.spectra.SpectrumSet;

/**
 * One block of a spectrum file.
 *
 * @param number of the block in its file, counted from 1
 * @param line where the block begins, counted from 1
 */
public record Block(int number, int line, SpectrumSet set) {
    public Block {
        requireNonNull(set, "set");
        if (number < 1 || line < 1) throw new IllegalArgumentException("blocks and lines count from 1");
    }
}
