package spotline.holder;

import static java.util.Objects.requireNonNull;

import java.util.List;
import java.util.Optional;

/**
 * What the owner handed in.
 *
 * @param id the owner's or the lab's identifier
 * @param family whose treatment applies
 * @param expectedElements chemical symbols in the order given; empty when not known
 * @param hazards known hazards in free words, or that there are none
 */
public record Sample(
        Optional<String> id,
        String name,
        Optional<String> owner,
        SampleForm form,
        Optional<String> family,
        Conductivity conductivity,
        CarbonOrigin carbon,
        List<String> expectedElements,
        Optional<String> history,
        Optional<String> storage,
        Optional<String> hazards,
        Optional<String> notes) {
    public Sample {
        if (name.isBlank()) throw new IllegalArgumentException("a sample needs a name");
        requireNonNull(form, "form");
        requireNonNull(conductivity, "conductivity");
        requireNonNull(carbon, "carbon");
        expectedElements = List.copyOf(expectedElements);
    }

    /** A sample of which only the name is known. */
    public static Sample named(String name) {
        return new Sample(
                Optional.empty(),
                name,
                Optional.empty(),
                SampleForm.UNKNOWN,
                Optional.empty(),
                Conductivity.UNKNOWN,
                CarbonOrigin.UNKNOWN,
                List.of(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    /** What tells one sample from another: its id, or its name where it has none. */
    public String key() {
        return id.orElse(name);
    }
}
