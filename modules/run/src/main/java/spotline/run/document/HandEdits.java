package spotline.run.document;

import spotline.core.Place;
import spotline.core.ReadException;

/**
 * What must be said of an edit that moves a reported number by hand.
 *
 * @param whoRequired whether it must name who made it
 * @param whyRequired whether it must say why
 */
public record HandEdits(boolean whoRequired, boolean whyRequired) {
    /** Both are asked for: a number that was moved by hand is only as good as the reason for it. */
    public static final HandEdits WHO_AND_WHY = new HandEdits(true, true);

    public static final HandEdits NOTHING_ASKED = new HandEdits(false, false);

    /** Errors: {@link ReadException} when the edit is by hand and leaves out what is asked for. */
    public void check(Edit edit) throws ReadException {
        if (!edit.byHand()) return;
        boolean who = whoRequired && edit.who().isBlank();
        boolean why = whyRequired && edit.why().isBlank();
        if (!who && !why) return;
        String missing = who && why ? "no name and no reason" : who ? "no name" : "no reason";
        throw new ReadException(
                Place.file("edit \"" + edit.title() + "\""),
                missing,
                "who made it and why, because it moves reported numbers by hand");
    }
}
