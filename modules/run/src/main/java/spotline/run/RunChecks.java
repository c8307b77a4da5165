package spotline.run;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import spotline.analysis.charge.ChargeMethod;
import spotline.analysis.charge.ChargeReference;
import spotline.core.Finding;
import spotline.holder.Sample;
import spotline.holder.Spot;

/** Checks that need more than one spot. */
final class RunChecks {
    private RunChecks() {}

    static List<Finding> acrossSpots(HolderRun run, List<SpotResult> spots) {
        List<Finding> findings = new ArrayList<>();
        Map<String, List<SpotResult>> bySample = new LinkedHashMap<>();
        for (int i = 0; i < spots.size(); i++) {
            Spot spot = run.spots().get(i).spot();
            String key = spot.sample().map(Sample::key).orElse("spot " + spot.id());
            bySample.computeIfAbsent(key, k -> new ArrayList<>()).add(spots.get(i));
        }
        for (List<SpotResult> replicates : bySample.values()) {
            SpotResult first = replicates.get(0);
            if (replicates.size() == 1) {
                boolean measured = first.composition().stream()
                        .anyMatch(r -> r.atomicPercent().isPresent());
                if (measured) {
                    findings.add(Finding.note(
                                    "one-spot-only",
                                    "One spot was measured: nothing is known of the scatter"
                                            + " between places of this sample.")
                            .at(first.spot(), first.sample()));
                }
            }
        }
        findings.addAll(adventitiousValues(spots));
        return findings;
    }

    /** Two adventitious-carbon reference values in one report. */
    private static List<Finding> adventitiousValues(List<SpotResult> spots) {
        TreeSet<String> values = new TreeSet<>();
        for (SpotResult spot : spots) {
            ChargeReference charge = spot.charge();
            OptionalDouble value = charge.referenceEv();
            if (charge.method() == ChargeMethod.ADVENTITIOUS_CARBON && value.isPresent()) {
                values.add(String.format(Locale.ROOT, "%.2f", value.getAsDouble()));
            }
        }
        Optional<Finding> two = values.size() > 1
                ? Optional.of(Finding.caution(
                        "two-carbon-reference-values",
                        "Adventitious carbon is set to " + String.join(" and ", values)
                                + " eV at spots of one run: binding energies of these spots must not be compared."))
                : Optional.empty();
        return two.stream().toList();
    }
}
