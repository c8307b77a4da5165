package spotline.reference;

import java.util.Optional;

/**
 * Something that lies under a line and forces a look at a second one.
 *
 * @param interfering a line or Auger group: "K 2p", "Ga LMM"
 * @param xraySource the source it holds for; empty when it holds for all
 * @param useInstead what to use instead or besides, for a person
 */
public record Overlap(Line line, String interfering, Optional<String> xraySource, String useInstead, String source) {
    /** Symbol of the element that interferes. */
    public String interferingElement() {
        int space = interfering.indexOf(' ');
        return space < 0 ? interfering : interfering.substring(0, space);
    }
}
