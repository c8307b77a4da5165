package spotline.holder.json;

/**
 * What a JSON file may ask for before it is refused.
 *
 * @param maxBytes size of the file, bytes
 * @param maxDepth lists and objects inside each other
 * @param maxNumberLength characters of a number
 * @param maxFaults faults told one by one; beyond them only their number is told
 */
public record JsonLimits(int maxBytes, int maxDepth, int maxNumberLength, int maxFaults) {
    /** 16 MiB, 64 levels, numbers of 100 characters, 100 faults. Far above any file that a person writes. */
    public static final JsonLimits DEFAULT = new JsonLimits(16 * 1024 * 1024, 64, 100, 100);

    public JsonLimits {
        if (maxBytes < 1 || maxBytes == Integer.MAX_VALUE) {
            throw new IllegalArgumentException("maxBytes must be 1 or more and below 2 GiB, was " + maxBytes);
        }
        if (maxDepth < 1) throw new IllegalArgumentException("maxDepth must be 1 or more, was " + maxDepth);
        if (maxNumberLength < 1) {
            throw new IllegalArgumentException("maxNumberLength must be 1 or more, was " + maxNumberLength);
        }
        if (maxFaults < 1) throw new IllegalArgumentException("maxFaults must be 1 or more, was " + maxFaults);
    }
}
