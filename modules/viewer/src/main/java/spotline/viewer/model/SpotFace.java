package spotline.viewer.model;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import spotline.analysis.charge.ChargeVerdict;
import spotline.analysis.quantify.Quantified;
import spotline.core.Severity;
import spotline.report.text.DisplayNumber;
import spotline.report.text.Shown;
import spotline.run.SpotResult;

/**
 * What a spot shows on the holder: its charge verdict and its composition as shares.
 *
 * @param shares largest first, those without a number left out; they need not sum to 1 when some are withheld
 * @param worst severity of its findings
 * @param spoken the same for somebody who cannot see it
 */
public record SpotFace(
        String id, String sample, ChargeVerdict verdict, List<Share> shares, Severity worst, String spoken) {
    /** An element's part of a composition, 0 to 1. */
    public record Share(String element, double part) {}

    public SpotFace {
        shares = List.copyOf(shares);
    }

    public static SpotFace of(SpotResult spot, Words words) {
        List<Share> shares = new ArrayList<>();
        for (Quantified row : spot.composition()) {
            row.atomicPercent()
                    .filter(p -> p.value() > 0)
                    .ifPresent(p -> shares.add(new Share(row.element(), p.value() / 100)));
        }
        shares.sort(Comparator.comparingDouble(Share::part).reversed());
        Severity worst = spot.findings().stream()
                .map(f -> f.severity())
                .max(Comparator.naturalOrder())
                .orElse(Severity.NOTE);
        return new SpotFace(
                spot.spot(),
                Shown.label(spot.sample()),
                spot.charge().verdict(),
                shares,
                worst,
                spoken(spot, shares, words));
    }

    private static String spoken(SpotResult spot, List<Share> shares, Words words) {
        StringBuilder text = new StringBuilder(words.of("spot.name", spot.spot()));
        if (!spot.sample().isEmpty()) text.append(", ").append(Shown.label(spot.sample()));
        text.append("; ")
                .append(words.of(
                        "spot.reference", words.word(spot.charge().verdict().word())));
        if (shares.isEmpty()) text.append("; ").append(words.of("spot.no-composition"));
        for (Share share : shares) {
            text.append("; ").append(share.element()).append(' ');
            text.append(DisplayNumber.of(100 * share.part(), OptionalDouble.empty(), 1)
                            .value())
                    .append(" at.%");
        }
        return text.toString();
    }
}
