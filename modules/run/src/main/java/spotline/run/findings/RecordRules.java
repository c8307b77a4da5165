package spotline.run.findings;

import static spotline.run.findings.Limit.PRACTICE;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import spotline.core.Finding;
import spotline.core.Severity;
import spotline.run.RunView;
import spotline.run.SpotView;

/** Records and mount: checks 1 to 8. All but the last are made before anything is loaded and repeated here. */
final class RecordRules {
    private static final Limit FEWEST_FOREIGN = Limit.own("swapFewestElements", 1, "elements", PRACTICE);

    private RecordRules() {}

    static List<Rule> rules() {
        return List.of(
                planned(
                        1,
                        "spot-record",
                        "A spot without declared sample, position, mount or electrical state",
                        Severity.CAUTION,
                        List.of(),
                        Set.of("labels-alike", "local-risk-review"),
                        s -> Optional.empty()),
                planned(
                        2,
                        "holder-overhang",
                        "Overhang, height or thickness outside the holder's limits",
                        Severity.STOP,
                        List.of(
                                Limit.of("planCheck.placement.overhangLimitMm", 0, "mm", PRACTICE),
                                Limit.of("planCheck.placement.usableLimitMm", 0, "mm", PRACTICE)),
                        Set.of(
                                "outside-usable-area",
                                "specimen-thickness",
                                "spot-height",
                                "spot-off-specimen",
                                "spot-off-holder",
                                "keep-out",
                                "specimen-overlap",
                                "clip-on-neighbour",
                                "stub-seat",
                                "geometry-unchecked"),
                        s -> s.spot().specimen().outline().isEmpty()
                                ? Optional.of("no outline of the specimen is declared")
                                : Optional.empty()),
                planned(
                        3,
                        "no-clearance",
                        "Analysis area too near an edge, a clip or a neighbour",
                        Severity.STOP,
                        List.of(
                                Limit.of("planCheck.clearance.cautionMm", 0.5, "mm", "derived from geometry"),
                                Limit.of("planCheck.clearance.stopMm", 0, "mm", "derived from geometry")),
                        Set.of("small-clearance"),
                        s -> s.spot().position().isEmpty() ? Optional.of("no position is declared") : Optional.empty()),
                planned(
                        4,
                        "powder-sputter",
                        "Loose powder and an ion gun, or a set-point beyond what a mount stands",
                        Severity.STOP,
                        List.of(Limit.of("planCheck.handling.tapeLimitC", 100, "C", PRACTICE)),
                        Set.of(
                                "stage-beyond-limit",
                                "stage-out-of-range",
                                "stage-bias",
                                "powder-patch",
                                "powder-quantity",
                                "powder-loose-grains",
                                "powder-record"),
                        s -> Optional.empty()),
                planned(
                        5,
                        "partly-grounded",
                        "An insulator that metal grounds at one face only",
                        Severity.CAUTION,
                        List.of(Limit.of(
                                "planCheck.electrical.negligiblePotentialV", 0.01, "V", "Ohm's law, common practice")),
                        Set.of("conduction-path", "expected-potential", "unlike-neighbours"),
                        s -> Optional.empty()),
                planned(
                        6,
                        "stage-margin",
                        "A set-point near what sample or mount stands",
                        Severity.CAUTION,
                        List.of(Limit.of("planCheck.handling.temperatureMarginC", 50, "C", PRACTICE)),
                        Set.of("stage-limit-unknown"),
                        s -> Optional.empty()),
                planned(
                        7,
                        "transfer-broken",
                        "A chain of protection from the air that is broken",
                        Severity.CAUTION,
                        List.of(),
                        Set.of("transfer-seat", "transfer-record", "profile-off-axis", "profile-unrotated"),
                        s -> Optional.empty()),
                Rule.ofSpot(
                        8,
                        "swapped-spots",
                        "A spot that shows what another spot's sample declares, and not what its own does",
                        Severity.CAUTION,
                        List.of(FEWEST_FOREIGN),
                        RecordRules::swapped));
    }

    private interface Missing {
        Optional<String> at(SpotView spot);
    }

    private static Rule planned(
            int number,
            String id,
            String title,
            Severity severity,
            List<Limit> limits,
            Set<String> adopted,
            Missing missing) {
        return Rule.elsewhere(number, id, title, severity, limits, adopted, (run, spot, in) -> {
            if (run.planFindings().isEmpty()) return RuleState.notChecked("the mounting checks were not made");
            return missing.at(spot).map(RuleState::notChecked).orElse(RuleState.PASSED);
        });
    }

    /** Elements that tell a sample from another: carbon and oxygen are everywhere. */
    private static SortedSet<String> telling(SpotView spot) {
        SortedSet<String> elements = new TreeSet<>(spot.declared());
        elements.removeAll(Set.of("C", "O"));
        return elements;
    }

    private static RuleState swapped(RunView run, SpotView spot, Limits limits) {
        SortedSet<String> own = telling(spot);
        if (own.isEmpty()) return RuleState.notChecked("no element but carbon and oxygen is declared");
        SortedSet<String> shown = spot.elements();
        List<String> found = own.stream().filter(shown::contains).toList();
        if (2 * found.size() >= own.size()) return RuleState.PASSED;
        List<Finding> findings = new ArrayList<>();
        for (SpotView other : run.others(spot)) {
            SortedSet<String> foreign = telling(other);
            foreign.removeAll(own);
            if (foreign.size() < limits.of(FEWEST_FOREIGN) || !shown.containsAll(foreign)) continue;
            if (!shown.containsAll(telling(other))) continue;
            findings.add(Finding.caution(
                    "swapped-spots",
                    Rule.words(
                            "Spot %s shows the elements declared for spot %s (%s) and %s of its own (%s): were the two"
                                    + " swapped?",
                            spot.id(),
                            other.id(),
                            String.join(", ", foreign),
                            found.isEmpty() ? "none" : "only " + String.join(", ", found),
                            String.join(", ", own))));
            break;
        }
        return RuleState.of(findings);
    }
}
