package spotline.report.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Labels in a row beside the holder, each as near as can be to what it belongs to, in the same order and apart. */
final class Callouts {
    /**
     * @param atMm where it would best stand, mm along the row
     * @param widthMm of the label with its margin
     */
    record Wish(double atMm, double widthMm) {}

    /** Neighbours that push each other: they stand where the mean of their wishes is. */
    private static final class Block {
        private final int first;
        private int last;
        private double width;
        private double sum;

        private Block(int index, Wish wish) {
            first = index;
            last = index;
            width = wish.widthMm();
            sum = wish.atMm() - wish.widthMm() / 2;
        }

        private double start(double low, double high) {
            double wished = sum / (last - first + 1);
            return Math.max(low, Math.min(wished, high - width));
        }

        private void take(Block next) {
            // What is wished is where each label would begin, less what stands before it in the block.
            sum += next.sum - (next.last - next.first + 1) * width;
            width += next.width;
            last = next.last;
        }
    }

    private Callouts() {}

    /** How many rows the labels need between two ends. */
    static int rows(List<Wish> wishes, double lowMm, double highMm) {
        double all = wishes.stream().mapToDouble(Wish::widthMm).sum();
        return Math.max(1, (int) Math.ceil(all / (highMm - lowMm) - 1e-9));
    }

    /**
     * The middle of each label, in the order of the wishes. Labels that do not fit between the ends run over the right
     * one.
     */
    static double[] middles(List<Wish> wishes, double lowMm, double highMm) {
        List<Integer> order = new ArrayList<>();
        for (int i = 0; i < wishes.size(); i++) order.add(i);
        order.sort(Comparator.comparingDouble(i -> wishes.get(i).atMm()));
        List<Block> blocks = new ArrayList<>();
        for (int i = 0; i < order.size(); i++) {
            blocks.add(new Block(i, wishes.get(order.get(i))));
            while (blocks.size() > 1) {
                Block before = blocks.get(blocks.size() - 2);
                Block after = blocks.get(blocks.size() - 1);
                if (before.start(lowMm, highMm) + before.width <= after.start(lowMm, highMm)) break;
                before.take(after);
                blocks.remove(blocks.size() - 1);
            }
        }
        double[] middles = new double[wishes.size()];
        for (Block block : blocks) {
            double at = block.start(lowMm, highMm);
            for (int i = block.first; i <= block.last; i++) {
                double width = wishes.get(order.get(i)).widthMm();
                middles[order.get(i)] = at + width / 2;
                at += width;
            }
        }
        return middles;
    }
}
