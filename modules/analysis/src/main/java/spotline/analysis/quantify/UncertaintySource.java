package spotline.analysis.quantify;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** Groups of the sources that an estimate's contributions are keyed by. */
public enum UncertaintySource {
    COUNTING("counting/"),
    ENDPOINTS("endpoints/"),
    /** What another choice of background would have given. */
    BACKGROUND_CHOICE("background/"),
    /** What the window loses to the line's own tails, and what it may have missed. */
    WINDOW("tails/", "faint/"),
    PEAK_FIT("fit/"),
    CROSS_SECTION("factor/cross section"),
    MEAN_FREE_PATH("factor/mean free path"),
    TRANSMISSION("factor/transmission"),
    ANISOTROPY("factor/reduced asymmetry"),
    /** Of listed factors, whatever they come from. */
    FACTOR("factor/"),
    /** Of bringing an intensity from one spectrum to another's scale. */
    LINK("link/"),
    OVERLAP("overlap/"),
    BLANK("blank/"),
    OTHER("");

    private static final List<UncertaintySource> OF_ONE_SPECTRUM = List.of(COUNTING, ENDPOINTS, PEAK_FIT);

    private final List<String> prefixes;

    UncertaintySource(String... prefixes) {
        this.prefixes = List.of(prefixes);
    }

    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    /** The group as the name of a field: {@code backgroundChoice}. */
    public String field() {
        StringBuilder field = new StringBuilder();
        for (String part : word().split(" ", -1)) {
            field.append(field.isEmpty() ? part : part.substring(0, 1).toUpperCase(Locale.ROOT) + part.substring(1));
        }
        return field.toString();
    }

    /** The group a contribution belongs to: the first whose beginning its key has. */
    public static UncertaintySource of(String key) {
        return Arrays.stream(values())
                .filter(group -> group.prefixes.stream().anyMatch(key::startsWith))
                .findFirst()
                .orElse(OTHER);
    }

    /** Whether a contribution is drawn anew with each spectrum, so that it averages down over spots. */
    public static boolean ofOneSpectrum(String key) {
        return OF_ONE_SPECTRUM.contains(of(key));
    }
}
