package spotline.run.findings;

import static spotline.run.findings.Limit.PRACTICE;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import spotline.core.Finding;
import spotline.core.Severity;
import spotline.holder.SpotPurpose;
import spotline.run.RunView;
import spotline.run.SpotView;

/** Signals that only more than one spot, or the order of things, can tell: checks 62 to 66. */
final class TransferRules {
    private static final Limit SPOTS = Limit.own("sameElementSpots", 3, "spots", PRACTICE);
    private static final Set<String> EVERYWHERE = Set.of("C", "O");

    private TransferRules() {}

    static List<Rule> rules() {
        return List.of(
                Rule.ofRun(
                        62,
                        "element-on-most-spots",
                        "The same undeclared element on most spots of a holder",
                        Severity.CAUTION,
                        List.of(SPOTS),
                        TransferRules::everywhere),
                Rule.ofSpot(
                        63,
                        "neighbour-transfer",
                        "An element that only a neighbour declares",
                        Severity.CAUTION,
                        List.of(Limit.fixed("amount", 3, "u", Limit.DERIVED)),
                        TransferRules::transfer),
                Rule.ofSpot(
                        64,
                        "argon-without-sputtering",
                        "Argon at a spot that was not sputtered",
                        Severity.NOTE,
                        List.of(Limit.fixed("amount", 3, "u", Limit.DERIVED)),
                        TransferRules::argon),
                ContaminationRules.carbonOnMetal(),
                Rule.ofSpot(
                        66,
                        "sputter-reduction",
                        "Lines that change their shape with sputtering",
                        Severity.CAUTION,
                        List.of(Sputtering.SHARE, Sputtering.SIGMAS),
                        Sputtering::check));
    }

    private static Map<String, RuleState> everywhere(RunView run) {
        List<SpotView> judged = run.spots().stream()
                .filter(s -> s.spot().purpose() == SpotPurpose.SAMPLE
                        && !s.declared().isEmpty())
                .toList();
        if (judged.isEmpty()) return Map.of("", RuleState.notChecked("no sample declares elements"));
        double fewest = Limits.at(run, judged.get(0)).of(SPOTS);
        if (judged.size() < fewest) {
            return Map.of("", RuleState.notChecked("fewer than " + (int) fewest + " spots declare elements"));
        }
        Map<String, List<String>> spots = new LinkedHashMap<>();
        for (SpotView spot : judged) {
            for (String element : spot.elements()) {
                if (EVERYWHERE.contains(element) || !spot.showsUndeclared(element)) continue;
                spots.computeIfAbsent(element, e -> new ArrayList<>()).add(spot.id());
            }
        }
        List<Finding> findings = new ArrayList<>();
        spots.forEach((element, ids) -> {
            if (ids.size() < fewest || 2 * ids.size() <= judged.size()) return;
            findings.add(Finding.caution(
                    "element-on-most-spots",
                    Rule.words(
                            "%s is undeclared and found on %d of %d spots (spots %s; limit %.0f): a common source,"
                                    + " holder, tool or chamber.",
                            element, ids.size(), judged.size(), String.join(", ", ids), fewest)));
        });
        return Map.of("", RuleState.of(findings));
    }

    private static RuleState transfer(RunView run, SpotView spot, Limits limits) {
        if (spot.declared().isEmpty()) return RuleState.notChecked("the sample declares no elements");
        if (run.others(spot).stream().allMatch(s -> s.declared().isEmpty())) {
            return RuleState.notChecked("no other sample declares elements");
        }
        List<Finding> findings = new ArrayList<>();
        for (String element : spot.elements()) {
            if (EVERYWHERE.contains(element) || !spot.showsUndeclared(element)) continue;
            Optional<SpotView> source = run.others(spot).stream()
                    .filter(s ->
                            s.declared().contains(element) || s.mountElements().contains(element))
                    .filter(s -> s.shows(element))
                    .min(Comparator.comparingDouble(s -> s.distanceMm(spot).orElse(Double.POSITIVE_INFINITY)));
            if (source.isEmpty() || spot.mountElements().contains(element)) continue;
            if (!fallsOff(run, source.get(), element)) continue;
            SortedSet<String> ids = new TreeSet<>();
            for (SpotView s : run.spots()) if (s.showsUndeclared(element)) ids.add(s.id());
            OptionalDouble distance = spot.distanceMm(source.get());
            findings.add(Finding.caution(
                    "neighbour-transfer",
                    Rule.words(
                            "%s is seen at spots %s and declared for spot %s alone%s: transfer from there?",
                            element,
                            String.join(", ", ids),
                            source.get().id(),
                            distance.isPresent() ? Rule.words(", %.0f mm away", distance.getAsDouble()) : "")));
        }
        return RuleState.of(findings);
    }

    /** Whether the foreign amounts do not grow with the distance from their source; true of a single one. */
    private static boolean fallsOff(RunView run, SpotView source, String element) {
        List<SpotView> foreign = run.spots().stream()
                .filter(s -> s.showsUndeclared(element) && s.distanceMm(source).isPresent())
                .sorted(Comparator.comparingDouble(s -> s.distanceMm(source).orElseThrow()))
                .toList();
        if (foreign.size() < 2) return true;
        SpotView nearest = foreign.get(0);
        SpotView farthest = foreign.get(foreign.size() - 1);
        return nearest.percent(element) >= farthest.percent(element);
    }

    private static RuleState argon(RunView run, SpotView spot, Limits limits) {
        if (spot.spot().sputtered()) return RuleState.notChecked("the spot was sputtered");
        if (spot.elements().isEmpty()) return RuleState.notChecked("no element was found at all");
        if (!spot.shows("Ar") || spot.declared().contains("Ar")) return RuleState.PASSED;
        return RuleState.fired(Finding.note(
                "argon-without-sputtering",
                "Ar is found at a spot without a sputter step: was it sputtered earlier, or beside a"
                        + " neighbour's crater?"));
    }
}
