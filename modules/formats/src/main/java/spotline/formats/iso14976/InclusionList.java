package spotline.formats.iso14976;

import java.util.BitSet;
import java.util.List;

/**
 * Which items the blocks after the first carry; an item that is absent keeps the value of the block before.
 *
 * @param exclusion whether the listed items are absent; otherwise they alone are present
 * @param items prefix numbers, in the file's order; an empty list leaves every block complete
 */
public record InclusionList(boolean exclusion, List<Integer> items) {
    /** Prefix numbers of ISO 14976:1998 run from 1 to this. */
    static final int LAST_ITEM = 40;

    public static final InclusionList COMPLETE = new InclusionList(false, List.of());

    public InclusionList {
        items = List.copyOf(items);
        if (exclusion && items.isEmpty()) throw new IllegalArgumentException("an empty list excludes nothing");
        for (int item : items) {
            if (item < 1 || item > LAST_ITEM) {
                throw new IllegalArgumentException("a prefix number is 1 to " + LAST_ITEM + ", was " + item);
            }
        }
    }

    /** Items that a block after the first carries. */
    BitSet carried() {
        BitSet carried = new BitSet(LAST_ITEM + 1);
        for (int item : items) carried.set(item);
        if (exclusion || items.isEmpty()) carried.flip(1, LAST_ITEM + 1);
        return carried;
    }
}
