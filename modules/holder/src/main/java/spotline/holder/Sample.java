package spotline.holder;

import static java.util.Objects.requireNonNull;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the owner handed in.
 *
 * @param id the owner's or the lab's identifier
 * @param family whose treatment applies
 * @param expectedElements chemical symbols in the order given; empty when not known
 * @param surface which surface is to be analysed
 * @param sensitivities what changes it
 * @param stability temperatures between which it is declared stable
 * @param resistivityOhmCm of its volume, ohm cm
 * @param filmThicknessUm of a film on a conducting base, um
 * @param hazards known hazards in free words, or that there are none
 * @param openingSentence whether the analyst lets the owner's page begin with the sentence that the program offers
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
        Optional<String> surface,
        List<Sensitivity> sensitivities,
        StabilityLimits stability,
        OptionalDouble resistivityOhmCm,
        OptionalDouble filmThicknessUm,
        Optional<String> notes,
        Optional<OpeningSentence> openingSentence) {
    /** A sample of which nobody has judged an opening sentence. */
    public Sample(
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
            Optional<String> surface,
            List<Sensitivity> sensitivities,
            StabilityLimits stability,
            OptionalDouble resistivityOhmCm,
            OptionalDouble filmThicknessUm,
            Optional<String> notes) {
        this(
                id,
                name,
                owner,
                form,
                family,
                conductivity,
                carbon,
                expectedElements,
                history,
                storage,
                hazards,
                surface,
                sensitivities,
                stability,
                resistivityOhmCm,
                filmThicknessUm,
                notes,
                Optional.empty());
    }

    public Sample {
        if (name.isBlank()) throw new IllegalArgumentException("a sample needs a name");
        requireNonNull(form, "form");
        requireNonNull(conductivity, "conductivity");
        requireNonNull(carbon, "carbon");
        requireNonNull(stability, "stability");
        requireNonNull(openingSentence, "openingSentence");
        expectedElements = List.copyOf(expectedElements);
        sensitivities = List.copyOf(sensitivities);
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
                Optional.empty(),
                List.of(),
                StabilityLimits.UNKNOWN,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty());
    }

    /** Whether it must not meet the air on its way. */
    public boolean airSensitive() {
        return sensitivities.contains(Sensitivity.AIR) || sensitivities.contains(Sensitivity.MOISTURE);
    }

    /** What tells one sample from another: its id, or its name where it has none. */
    public String key() {
        return id.orElse(name);
    }
}
