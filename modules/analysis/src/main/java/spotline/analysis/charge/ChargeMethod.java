package spotline.analysis.charge;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** How the energy reference of a spot is found. */
public enum ChargeMethod {
    /** Chosen from what the record says of the sample and its mount. */
    BY_RECORD,
    NONE,
    ADVENTITIOUS_CARBON,
    SAMPLE_CARBON,
    INTERNAL_LINE,
    FERMI_EDGE,
    WORK_FUNCTION,
    FIXED;

    /** The word used in files. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    public static Optional<ChargeMethod> of(String word) {
        return Arrays.stream(values()).filter(m -> m.word().equals(word)).findFirst();
    }

    public static String words() {
        return Arrays.stream(values()).map(ChargeMethod::word).collect(Collectors.joining(", "));
    }
}
