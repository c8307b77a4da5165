package spotline.formats.iso14976;

import static java.util.Objects.requireNonNull;

import java.util.BitSet;
import java.util.List;
import spotline.core.ReadException;

/** A whole file of the standard: it can be written as it stands, and reads back equal. */
public record Experiment(ExperimentHeader header, List<ExperimentBlock> blocks) {
    /**
     * Errors: {@link IllegalArgumentException} without a block, when a block has not just the items that the modes and
     * its technique ask for, or when an item that the inclusion or exclusion list leaves out differs from the block
     * before.
     */
    public Experiment {
        requireNonNull(header, "header");
        blocks = List.copyOf(blocks);
        if (blocks.isEmpty()) throw new IllegalArgumentException("an experiment needs a block");
        BitSet complete = InclusionList.COMPLETE.carried();
        BitSet carried = header.inclusion().carried();
        try {
            for (int i = 0; i < blocks.size(); i++) {
                ExperimentBlock before = i == 0 ? ExperimentBlock.UNKNOWN : blocks.get(i - 1);
                check(header, i + 1, blocks.get(i), before, i == 0 ? complete : carried);
            }
        } catch (ReadException impossible) {
            throw new IllegalStateException("a value in memory cannot fail to be read", impossible);
        }
    }

    private static void check(
            ExperimentHeader header, int number, ExperimentBlock block, ExperimentBlock before, BitSet carried)
            throws ReadException {
        String name = "block " + number + " (" + block.blockId() + ")";
        if (block.variables().isEmpty()) throw new IllegalArgumentException(name + " has no corresponding variable");
        if (!BlockItems.exchange(header, new FieldLister(), block).equals(block)) {
            throw new IllegalArgumentException(
                    name + " must have just the items of mode " + header.mode().word()
                            + ", scan " + header.scanMode().word() + ", technique "
                            + block.technique().word()
                            + ", with a value an experimental variable and " + header.futureBlockEntries()
                            + " future-upgrade entries");
        }
        if (carried.cardinality() == InclusionList.LAST_ITEM) return;
        if (!Iso14976Writer.readsBack(header, block, before, carried)) {
            throw new IllegalArgumentException(
                    name + " differs from the block before in an item that the inclusion or exclusion list leaves out");
        }
    }
}
