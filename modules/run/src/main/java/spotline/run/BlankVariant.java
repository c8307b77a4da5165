package spotline.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.analysis.quantify.Composition;
import spotline.analysis.quantify.Contribution;
import spotline.analysis.quantify.Quantified;
import spotline.analysis.quantify.UncertaintySource;
import spotline.core.Estimate;
import spotline.core.Finding;
import spotline.spectra.Window;

/**
 * A spot's composition less that of a blank, as a variant beside the primary one.
 *
 * <p>With x the atomic fractions of the spot and b those of the blank, x_i - k b_i is what is left of element i, k = share
 * x_e / b_e scaled by the stated element e; what is left is brought to 100 again. An element of which less is left than
 * 1.645 standard uncertainties is below detection. The blank's material must cover part of the area beside the sample, not
 * lie over or under it: attenuation is not considered.
 *
 * <p>Errors: a finding instead of a variant where the blank or its element was not measured. Source: derived.
 */
final class BlankVariant {
    static final String NAME = "less-blank";

    private static final double CRITICAL = 1.645;
    private static final double DETECTION = 3.29;
    private static final Window NO_WINDOW = new Window(0, 1);

    private BlankVariant() {}

    static SpotResult added(SpotResult spot, QuantifySettings.Blank blank, Optional<SpotResult> measured) {
        Optional<Estimate> own = percent(spot, blank.element());
        Optional<Estimate> other = measured.flatMap(b -> percent(b, blank.element()));
        if (measured.isEmpty()) return refused(spot, blank, "there is no such spot");
        if (own.isEmpty() || other.isEmpty()) {
            return refused(spot, blank, blank.element() + " was not found at both places");
        }
        Estimate scale = own.get().dividedBy(other.get()).times(blank.share());
        List<Contribution> left = new ArrayList<>();
        for (Quantified row : spot.composition()) {
            if (row.atomicPercent().isEmpty()) continue;
            Estimate of = percent(measured.orElseThrow(), row.element())
                    .map(b -> b.times(scale))
                    .orElse(Estimate.exact(0));
            Estimate rest = row.atomicPercent().get().minus(of);
            // Factors scale what is there and hide nothing; the element scaled by cancels to the last digit.
            OptionalDouble ofRest = ofCounting(rest);
            OptionalDouble ofOwn = ofCounting(row.atomicPercent().get());
            if (ofRest.isEmpty() || ofOwn.isEmpty()) {
                return refused(spot, blank, "the counting uncertainty of " + row.element() + " is not known");
            }
            double u = Math.max(ofRest.getAsDouble(), ofOwn.getAsDouble());
            boolean detected = rest.value() > CRITICAL * u && rest.value() > 1e-9;
            left.add(new Contribution(
                    row.element(), row.line(), row.spectrum(), row.basis(), NO_WINDOW, rest, DETECTION * u, detected));
        }
        String message = String.format(
                java.util.Locale.ROOT,
                "The variant %s is without %.2f times the blank of spot %s, scaled by %s (share %.2f).",
                NAME,
                scale.value(),
                blank.spot(),
                blank.element(),
                blank.share());
        return spot.with(
                new SpotResult.Variant(NAME, Composition.of(left)),
                List.of(Finding.note("blank-taken-off", message).at(spot.spot(), spot.sample())));
    }

    private static SpotResult refused(SpotResult spot, QuantifySettings.Blank blank, String why) {
        String message = "The blank at spot " + blank.spot() + " cannot be taken off: " + why + ".";
        return spot.with(
                new SpotResult.Variant(NAME, List.of()),
                List.of(Finding.caution("blank-not-usable", message).at(spot.spot(), spot.sample())));
    }

    private static OptionalDouble ofCounting(Estimate estimate) {
        return estimate.uncertaintyFrom(UncertaintySource::ofOneSpectrum);
    }

    private static Optional<Estimate> percent(SpotResult spot, String element) {
        return spot.composition().stream()
                .filter(row -> row.element().equals(element))
                .findFirst()
                .flatMap(Quantified::atomicPercent);
    }
}
