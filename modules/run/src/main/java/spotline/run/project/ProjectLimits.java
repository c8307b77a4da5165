package spotline.run.project;

/**
 * What a project file may ask for before it is refused.
 *
 * @param entries files inside it
 * @param entryBytes unpacked size of one, bytes
 * @param totalBytes unpacked size of all, bytes
 * @param ratio unpacked over packed size of an entry above 1 MiB: a text compresses to a twentieth, a trap to a thousandth
 */
public record ProjectLimits(int entries, long entryBytes, long totalBytes, int ratio) {
    /** 100,000 files, 1 GiB each, 16 GiB together, a ratio of 200. */
    public static final ProjectLimits DEFAULT = new ProjectLimits(100_000, 1L << 30, 16L << 30, 200);

    /** Below this size, bytes, a ratio says nothing. */
    static final long SMALL = 1L << 20;

    public ProjectLimits {
        if (entries < 1 || entryBytes < 1 || totalBytes < 1 || ratio < 1) {
            throw new IllegalArgumentException("limits must be 1 or more");
        }
    }
}
