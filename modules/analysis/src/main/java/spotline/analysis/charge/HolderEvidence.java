package spotline.analysis.charge;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.analysis.charge.ChargeEvidence.SiblingLine;
import spotline.analysis.charge.ChargeEvidence.Width;
import spotline.core.Finding;
import spotline.core.Outcome;

/**
 * What the spots of one holder say of each other's energy references: widths of the same lines, referenced positions at
 * spots of one sample.
 *
 * <p>Shape: one outcome a spot, in the order of the spots. Errors: none. No finding is a stop.
 */
public final class HolderEvidence {
    /**
     * One spot as far as the comparison goes.
     *
     * @param sample what tells one sample from another
     * @param carbonAtPercent how much carbon was found, at.%
     */
    public record SpotCharge(
            String spot,
            String sample,
            ChargeReference charge,
            ChargeSettings settings,
            OptionalDouble carbonAtPercent) {}

    private HolderEvidence() {}

    public static List<Outcome<ChargeReference>> compare(List<SpotCharge> spots) {
        Siblings siblings = new Siblings(spots);
        List<Outcome<ChargeReference>> results = new ArrayList<>();
        for (SpotCharge spot : spots) {
            List<Finding> findings = new ArrayList<>();
            List<String> doubts = new ArrayList<>();
            Widths widths = new Widths(spot, spots);
            List<Width> compared = widths.compared();
            if (shifted(spot.charge())) {
                widths.doubts(findings).forEach(doubts::add);
                tooLittleCarbon(spot, findings).ifPresent(doubts::add);
                siblings.doubts(spot, findings).forEach(doubts::add);
            }
            List<SiblingLine> lines = siblings.lines(spot);
            ChargeReference charge = spot.charge()
                    .with(spot.charge().evidence().across(compared, lines))
                    .doubted(doubts);
            results.add(Outcome.done(charge, findings));
        }
        return results;
    }

    static boolean shifted(ChargeReference charge) {
        return charge.method() != ChargeMethod.NONE && charge.verdict() != ChargeVerdict.FAILED;
    }

    private static Optional<String> tooLittleCarbon(SpotCharge spot, List<Finding> findings) {
        boolean byCarbon = spot.charge().method() == ChargeMethod.ADVENTITIOUS_CARBON
                || spot.charge().method() == ChargeMethod.WORK_FUNCTION;
        double least = spot.settings().limits().carbonAtPercent();
        if (!byCarbon || spot.carbonAtPercent().orElse(100) >= least) return Optional.empty();
        String little = Decision.ev(
                "only %.1f at.%% of carbon was found", spot.carbonAtPercent().orElseThrow());
        findings.add(Finding.caution(
                "carbon-reference-weak",
                Decision.ev(
                        "Only %.1f at.%% of carbon was found (limit %.1f at.%%): too little to trust as a reference.",
                        spot.carbonAtPercent().orElseThrow(), least)));
        return Optional.of(little);
    }
}
