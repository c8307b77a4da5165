package spotline.formats.source;

/**
 * How much a reader takes before it refuses a file. A file is never believed beyond what its own length can hold; these
 * are the bounds above that.
 *
 * @param fileBytes length of the whole file
 * @param lineBytes length of one line without its line end
 * @param blocks blocks (or spectra) in one file
 * @param valuesPerBlock ordinate values in one block, all variables together
 * @param listEntries entries of any one list of a header: comment lines, variables, additional parameters
 */
public record ReadLimits(long fileBytes, int lineBytes, int blocks, int valuesPerBlock, int listEntries) {
    /** 2 GiB, lines of 64 KiB, 1 000 000 blocks, 50 000 000 values a block, 100 000 entries a list. */
    public static final ReadLimits DEFAULT = new ReadLimits(2L << 30, 64 << 10, 1_000_000, 50_000_000, 100_000);

    public ReadLimits {
        if (fileBytes < 1 || lineBytes < 1 || blocks < 1 || valuesPerBlock < 1 || listEntries < 1) {
            throw new IllegalArgumentException("every limit must be 1 or more");
        }
    }
}
