package spotline.core;

import java.io.Serial;
import java.util.List;

/**
 * The one way a reader refuses an input: where, what was found, what was expected. A reader that can see several faults
 * at once throws the first and lets it carry the others.
 */
public final class ReadException extends Exception {
    @Serial
    private static final long serialVersionUID = 1;

    private final transient Place place;
    private final String found;
    private final String expected;
    private final transient List<ReadException> others;

    public ReadException(Place place, String found, String expected) {
        this(place, found, expected, List.of());
    }

    private ReadException(Place place, String found, String expected, List<ReadException> others) {
        super(place + ": " + found + ", expected " + expected);
        this.place = place;
        this.found = found;
        this.expected = expected;
        this.others = List.copyOf(others);
    }

    /** All faults as one exception, in their order. Errors: {@link IllegalArgumentException} without a fault. */
    public static ReadException all(List<ReadException> faults) {
        if (faults.isEmpty()) throw new IllegalArgumentException("no fault to throw");
        ReadException first = faults.get(0);
        return new ReadException(first.place, first.found, first.expected, faults.subList(1, faults.size()));
    }

    /** The faults found besides this one. */
    public List<ReadException> others() {
        return others;
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
