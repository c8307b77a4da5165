package spotline.run;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import spotline.analysis.charge.ChargeReference;
import spotline.analysis.charge.HolderEvidence;
import spotline.core.Estimate;
import spotline.core.Finding;
import spotline.core.Outcome;
import spotline.holder.Sample;
import spotline.holder.Spot;

/** Energy references of a holder's spots held against each other; compositions are not touched. */
final class ChargeAcrossSpots {
    private ChargeAcrossSpots() {}

    static List<SpotResult> compare(HolderRun run, List<SpotResult> spots) {
        List<HolderEvidence.SpotCharge> charges = new ArrayList<>();
        for (int i = 0; i < spots.size(); i++) {
            SpotInput input = run.spots().get(i);
            SpotResult result = spots.get(i);
            charges.add(new HolderEvidence.SpotCharge(
                    result.spot(),
                    sample(input.spot()),
                    result.charge(),
                    input.treatment().charge(),
                    carbon(result)));
        }
        List<Outcome<ChargeReference>> outcomes = HolderEvidence.compare(charges);
        List<SpotResult> compared = new ArrayList<>();
        for (int i = 0; i < spots.size(); i++) compared.add(with(spots.get(i), outcomes.get(i)));
        return compared;
    }

    private static String sample(Spot spot) {
        return spot.sample().map(Sample::key).orElse("spot " + spot.id());
    }

    private static OptionalDouble carbon(SpotResult result) {
        return result.composition().stream()
                .filter(r -> r.element().equals("C"))
                .flatMap(r -> r.atomicPercent().stream())
                .mapToDouble(Estimate::value)
                .findFirst();
    }

    private static SpotResult with(SpotResult spot, Outcome<ChargeReference> outcome) {
        List<Finding> findings = outcome.allFindings().stream()
                .map(f -> f.at(spot.spot(), spot.sample()))
                .toList();
        return spot.with(outcome.result().orElse(spot.charge()), findings);
    }
}
