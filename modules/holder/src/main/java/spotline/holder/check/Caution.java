package spotline.holder.check;

import java.util.List;

/**
 * A reminder in general words that a plan calls for.
 *
 * @param topic what it is about, in a word or two
 * @param concerns labels of the specimens it concerns; empty for the whole load
 */
public record Caution(String topic, List<String> concerns, String text) {
    public Caution {
        if (topic.isBlank()) throw new IllegalArgumentException("a caution needs a topic");
        if (text.isBlank()) throw new IllegalArgumentException("a caution needs a text");
        concerns = List.copyOf(concerns);
    }
}
