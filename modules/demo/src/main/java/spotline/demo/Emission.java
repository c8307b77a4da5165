package spotline.demo;

import java.util.List;

/**
 * Zero-loss shapes that share a depth, so that one transfer function makes the tails of them all.
 *
 * @param element chemical symbol
 * @param line {@code "2p"}, or an Auger group: {@code "KL23L23"}
 * @param state chemical state the electrons come from; empty for an Auger group, to which all states add
 */
public record Emission(String element, String line, String state, Depth depth, List<? extends ZeroLoss> peaks) {
    public Emission {
        peaks = List.copyOf(peaks);
    }

    /** Sum of the zero-loss areas, counts·eV before transmission. */
    public double area() {
        return peaks.stream().mapToDouble(ZeroLoss::area).sum();
    }
}
