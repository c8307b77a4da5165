package spotline.run.findings;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import spotline.core.Finding;
import spotline.reference.Elements;
import spotline.run.Led;

/**
 * Which finding explains which: a table of causes in the order in which they are asked. A cause explains findings of its
 * own spot, or of every spot it names; where the table says so, only those that speak of its elements.
 *
 * <p>Source: common practice, no source.
 */
final class Causes {
    private static final Pattern ELEMENT = Pattern.compile("\\b([A-Z][a-z]?)(?= [1-7][spdf]| is |:|,| and )");
    private static final Pattern SPOT_LIST = Pattern.compile("spots? ([^.;:()]*)");

    /** @param about whether only findings that name one of the leader's elements follow */
    private record Cause(String leader, boolean about, Set<String> followers) {}

    private static final Set<String> ENERGIES = Set.of(
            "grounded-conductor-off",
            "reference-line-weak",
            "reference-line-broad",
            "reference-line-misfit",
            "differential-charging",
            "references-disagree",
            "charge-reference-failed",
            "carbon-reference-weak",
            "siblings-differ",
            "metal-line-unmoved",
            "fermi-edge-off",
            "surface-potential-drifted",
            "state-outside-band",
            "auger-parameter-changed");

    private static final Set<String> ELEMENTS = Set.of(
            "undeclared-element",
            "declared-element-absent",
            "unassigned-peak",
            "undeclared-silicon",
            "silicone-film",
            "undeclared-fluorine",
            "salt-signals",
            "foil-metal",
            "clip-metal",
            "neighbour-transfer",
            "one-line-only",
            "narrow-scan-unassigned",
            "line-outside-scan",
            "argon-without-sputtering");

    private static final Set<String> AMOUNTS = Set.of(
            "survey-narrow-differ",
            "places-differ",
            "second-line-disagrees",
            "carbon-dominates",
            "carbon-on-metal",
            "carbon-oxygen-imbalance",
            "doublet-ratio",
            "elements-left-out");

    private static final Set<String> FITS = Set.of(
            "fit-residual-structure",
            "fit-not-converged",
            "fit-only-sum",
            "fit-component-broad",
            "fit-components-close",
            "fit-component-weak",
            "fit-at-bound",
            "reference-line-misfit",
            "fit-background-above-data",
            "end-on-structure",
            "shirley-capped",
            "background-fallback");

    private static final List<Cause> TABLE = List.of(
            new Cause(
                    "photon-energy-inconsistent",
                    false,
                    union(ENERGIES, ELEMENTS, AMOUNTS, FITS, Set.of("photon-energy-differs"))),
            new Cause(
                    "swapped-spots", false, union(ENERGIES, ELEMENTS, AMOUNTS, FITS, Set.of("element-on-most-spots"))),
            new Cause(
                    "transmission-applied-twice",
                    false,
                    union(AMOUNTS, Set.of("counts-not-poisson", "transmission-not-known"))),
            new Cause("pass-energies-differ", false, union(AMOUNTS, Set.of("transmission-not-known"))),
            new Cause("counts-not-poisson", false, union(FITS, AMOUNTS, Set.of("reference-line-weak"))),
            new Cause("count-rate-too-high", false, union(FITS, AMOUNTS, Set.of("counts-not-poisson"))),
            new Cause("clip-metal", true, union(ELEMENTS, Set.of("metal-line-unmoved", "element-on-most-spots"))),
            new Cause(
                    "clip-metal",
                    false,
                    union(
                            FITS,
                            Set.of(
                                    "differential-charging",
                                    "reference-line-broad",
                                    "references-disagree",
                                    "siblings-differ",
                                    "survey-narrow-differ",
                                    "places-differ",
                                    "second-line-disagrees"))),
            new Cause(
                    "foil-metal",
                    true,
                    Set.of("undeclared-element", "metal-line-unmoved", "neighbour-transfer", "element-on-most-spots")),
            new Cause(
                    "silicone-film", true, Set.of("undeclared-silicon", "undeclared-element", "element-on-most-spots")),
            new Cause("silicone-film", false, Set.of("carbon-dominates", "carbon-on-metal")),
            new Cause(
                    "undeclared-silicon",
                    true,
                    Set.of("undeclared-element", "salt-signals", "element-on-most-spots", "foil-metal")),
            new Cause("undeclared-fluorine", true, Set.of("undeclared-element", "element-on-most-spots")),
            new Cause("salt-signals", true, Set.of("undeclared-element", "element-on-most-spots")),
            new Cause("tape-signals", false, Set.of("carbon-dominates", "carbon-on-metal", "carbon-oxygen-imbalance")),
            new Cause("argon-without-sputtering", true, Set.of("undeclared-element")),
            new Cause("neighbour-transfer", true, Set.of("undeclared-element")),
            new Cause("element-on-most-spots", true, Set.of("undeclared-element")),
            new Cause(
                    "surface-potential-drifted",
                    false,
                    Set.of(
                            "differential-charging",
                            "reference-line-broad",
                            "siblings-differ",
                            "references-disagree",
                            "auger-parameter-changed")),
            new Cause(
                    "degradation",
                    false,
                    Set.of(
                            "survey-narrow-differ",
                            "places-differ",
                            "siblings-differ",
                            "surface-potential-drifted",
                            "fit-residual-structure")),
            new Cause("metal-line-unmoved", true, Set.of("undeclared-element")),
            new Cause(
                    "differential-charging",
                    false,
                    Set.of(
                            "reference-line-broad",
                            "reference-line-misfit",
                            "siblings-differ",
                            "fit-residual-structure")),
            new Cause("undeclared-element", true, Set.of("unassigned-peak")));

    private Causes() {}

    /** Each leader once with everything that follows it, whatever leads to it in turn named above it. */
    static List<Led> of(List<Finding> findings) {
        Map<Finding, Finding> leaderOf = new HashMap<>();
        for (Cause cause : TABLE) {
            for (Finding leader : findings) {
                if (!leader.rule().equals(cause.leader())) continue;
                for (Finding f : findings) {
                    if (f.equals(leader)
                            || leaderOf.containsKey(f)
                            || !cause.followers().contains(f.rule())) continue;
                    if (!reaches(leader, f) || (cause.about() && !shares(leader, f))) continue;
                    if (!root(leaderOf, leader).equals(f)) leaderOf.put(f, leader);
                }
            }
        }
        Map<Finding, List<Finding>> led = new LinkedHashMap<>();
        for (Finding f : findings) {
            Optional<Finding> leader = Optional.ofNullable(leaderOf.get(f)).map(l -> root(leaderOf, l));
            leader.ifPresent(l -> led.computeIfAbsent(l, k -> new ArrayList<>()).add(f));
        }
        return led.entrySet().stream()
                .map(e -> new Led(e.getKey(), e.getValue()))
                .toList();
    }

    private static Finding root(Map<Finding, Finding> leaderOf, Finding finding) {
        Finding at = finding;
        for (Finding up = leaderOf.get(at); up != null; up = leaderOf.get(at)) at = up;
        return at;
    }

    private static boolean reaches(Finding leader, Finding follower) {
        if (leader.spot().equals(follower.spot())) return true;
        if (follower.spot().isEmpty()) {
            return leader.sample().equals(follower.sample()) || spots(follower).contains(leader.spot());
        }
        return spots(leader).contains(follower.spot());
    }

    /** Spots that a finding about more than one names. */
    private static Set<String> spots(Finding finding) {
        Set<String> ids = new TreeSet<>();
        Matcher m = SPOT_LIST.matcher(finding.message());
        while (m.find()) {
            for (String id : m.group(1).split("[ ,]+|\\band\\b")) ids.add(id.strip());
        }
        return ids;
    }

    private static boolean shares(Finding leader, Finding follower) {
        SortedSet<String> a = elements(leader);
        a.retainAll(elements(follower));
        return !a.isEmpty();
    }

    private static SortedSet<String> elements(Finding finding) {
        SortedSet<String> symbols = new TreeSet<>();
        Matcher m = ELEMENT.matcher(finding.message());
        while (m.find()) {
            if (Elements.bySymbol(m.group(1)).isPresent()) symbols.add(m.group(1));
        }
        return symbols;
    }

    @SafeVarargs
    private static Set<String> union(Set<String>... sets) {
        Set<String> all = new TreeSet<>();
        for (Set<String> set : sets) all.addAll(set);
        return all;
    }
}
