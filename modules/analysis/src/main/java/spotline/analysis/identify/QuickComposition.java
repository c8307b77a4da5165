package spotline.analysis.identify;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import spotline.core.Estimate;

/**
 * Atomic percent of the elements present, from the amplitudes of a survey's model. Overlapped lines are shared out by what the elements' other
 * lines say.
 *
 * <p>Units: atomic percent of the elements called present, of all where none is. Errors: none; empty without an element.
 *
 * <p>Source: uncertainty of a cross section with mean free path, 7 %: common practice, no source.
 */
final class QuickComposition {
    private static final double FACTOR_DEVIATION = 0.07;
    private static final double LEAST_GAIN = 22;
    /** What is only possible cannot be a main part. */
    private static final double LARGEST_UNPROVEN = 0.15;

    private static final double PLAINLY_EXPECTED = 8;

    private QuickComposition() {}

    /** Present, or possible with nothing better in its place: to leave it out would blow up the rest. */
    private static boolean counts(ElementSeen e) {
        if (e.verdict() == Verdict.PRESENT) return true;
        boolean rival = e.evidence().alternatives().stream().anyMatch(a -> !Double.isNaN(a.likelihoodGain()));
        double least = ModelSelection.EVERYWHERE.contains(e.element()) ? 0 : LEAST_GAIN;
        boolean plainlyMissing =
                e.evidence().missing().stream().anyMatch(m -> m.expectedSignificance() > PLAINLY_EXPECTED);
        return !rival && !plainlyMissing && e.evidence().likelihoodGain() > least;
    }

    static List<QuickShare> of(SurveyModelFit model, List<ElementSeen> elements) {
        boolean anyPresent = elements.stream().anyMatch(e -> e.verdict() == Verdict.PRESENT);
        List<Integer> owners = new ArrayList<>();
        List<Estimate> amounts = new ArrayList<>();
        double proven = 0;
        for (int e = 0; e < model.members.size(); e++) {
            String symbol = model.members.get(e).symbol();
            boolean present =
                    elements.stream().anyMatch(s -> s.element().equals(symbol) && s.verdict() == Verdict.PRESENT);
            if (present && model.active(e)) proven += model.amount(e);
        }
        for (int e = 0; e < model.members.size(); e++) {
            double amount = model.active(e) ? model.amount(e) : 0;
            if (!(amount > 0)) continue;
            String symbol = model.members.get(e).symbol();
            boolean modest = amount < LARGEST_UNPROVEN * proven || ModelSelection.EVERYWHERE.contains(symbol);
            boolean counted = elements.stream()
                    .anyMatch(s ->
                            s.element().equals(symbol) && (s.verdict() == Verdict.PRESENT || (counts(s) && modest)));
            if (anyPresent && !counted) continue;
            owners.add(e);
            amounts.add(Estimate.of(amount, "survey model " + symbol, model.amountDeviation(e))
                    .with("survey factor " + symbol, FACTOR_DEVIATION * amount));
        }
        if (owners.isEmpty()) return List.of();
        Estimate sum = Estimate.sum(amounts);
        List<QuickShare> shares = new ArrayList<>();
        for (int k = 0; k < owners.size(); k++) {
            Member member = model.members.get(owners.get(k));
            shares.add(new QuickShare(
                    member.symbol(),
                    member.atom().main().line().toString(),
                    amounts.get(k).dividedBy(sum).times(100)));
        }
        shares.sort(
                Comparator.comparingDouble((QuickShare s) -> -s.atomicPercent().value()));
        return shares;
    }
}
