package spotline.core;

import java.io.Serial;

/** The one way a reader refuses an input: where, what was found, what was expected. */
public final class ReadException extends Exception {
    @Serial
    private static final long serialVersionUID = 1;

    private final transient Place place;
    private final String found;
    private final String expected;

    public ReadException(Place place, String found, String expected) {
        super(place + ": " + found + ", expected " + expected);
        this.place = place;
        this.found = found;
        this.expected = expected;
    }

    public Place place() {
        return place;
    }

    public String found() {
        return found;
    }

    public String expected() {
        return expected;
    }
}
