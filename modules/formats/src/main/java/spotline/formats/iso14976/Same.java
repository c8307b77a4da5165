package spotline.formats.iso14976;

/** Lets the blocks of a map share what is equal in all of them. */
final class Same {
    private Same() {}

    /** The value of the block before where it is the same. */
    static <T> T of(T now, T before) {
        return now.equals(before) ? before : now;
    }
}
