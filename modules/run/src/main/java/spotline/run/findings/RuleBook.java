package spotline.run.findings;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import spotline.core.Finding;
import spotline.core.Severity;
import spotline.holder.Silence;
import spotline.run.Led;
import spotline.run.RuleOutcome;
import spotline.run.RuleOutcome.State;
import spotline.run.RunRules;
import spotline.run.RunView;
import spotline.run.SpotView;

/** All checks, in the order of their numbers, and how their findings are shown. */
public final class RuleBook implements RunRules {
    private static final RuleBook STANDARD = new RuleBook(Stream.of(
                    RecordRules.rules(),
                    DataRules.rules(),
                    IdentificationRules.rules(),
                    ChargeRules.rules(),
                    FitRules.rules(),
                    QuantityRules.rules(),
                    ContaminationRules.rules(),
                    TransferRules.rules())
            .flatMap(List::stream)
            .toList());

    private final List<Rule> rules;

    RuleBook(List<Rule> rules) {
        this.rules = List.copyOf(rules);
    }

    public static RuleBook standard() {
        return STANDARD;
    }

    public List<Rule> rules() {
        return rules;
    }

    @Override
    public Judged judge(RunView run) {
        Set<Finding> all = new LinkedHashSet<>(run.findings());
        List<Map<String, RuleState>> states = new ArrayList<>();
        Set<String> withheld = new TreeSet<>();
        for (Rule rule : rules) {
            Map<String, RuleState> state = placed(run, rule.check().of(run));
            states.add(state);
            for (Finding f : raised(state)) {
                all.add(f);
                if (f.severity() == Severity.STOP && !f.spot().isEmpty()) withheld.add(f.spot());
            }
        }
        Map<Finding, Finding> shown = silenced(all, run.plan().file().silence());
        List<RuleOutcome> outcomes = new ArrayList<>();
        for (int i = 0; i < rules.size(); i++) outcomes.add(outcome(run, rules.get(i), states.get(i), shown));
        List<Finding> ordered = new ArrayList<>(new LinkedHashSet<>(shown.values()));
        ordered.addAll(idle(all, run.plan().file().silence()));
        ordered.sort(Comparator.comparing(Finding::severity).reversed());
        List<Led> led = Causes.of(List.copyOf(all)).stream()
                .map(l -> new Led(
                        shown(shown, l.leader()),
                        l.followers().stream().map(f -> shown(shown, f)).toList()))
                .toList();
        return new Judged(ordered, outcomes, led, withheld);
    }

    private static Finding shown(Map<Finding, Finding> shown, Finding finding) {
        return shown.getOrDefault(finding, finding);
    }

    /** A finding of a spot names the spot and its sample. */
    private static Map<String, RuleState> placed(RunView run, Map<String, RuleState> states) {
        Map<String, RuleState> placed = new LinkedHashMap<>();
        states.forEach((id, state) -> {
            Optional<SpotView> spot =
                    run.spots().stream().filter(s -> s.id().equals(id)).findFirst();
            placed.put(
                    id,
                    state instanceof RuleState.Fired fired && spot.isPresent()
                            ? RuleState.of(fired.findings().stream()
                                    .map(f -> f.at(id, spot.get().spot().sampleName()))
                                    .toList())
                            : state);
        });
        return placed;
    }

    private static List<Finding> raised(Map<String, RuleState> states) {
        List<Finding> findings = new ArrayList<>();
        for (RuleState state : states.values()) {
            if (state instanceof RuleState.Fired fired) findings.addAll(fired.findings());
        }
        return findings;
    }

    private static RuleOutcome outcome(
            RunView run, Rule rule, Map<String, RuleState> states, Map<Finding, Finding> shown) {
        Set<String> where = new LinkedHashSet<>();
        SortedMap<String, String> notChecked = new TreeMap<>();
        boolean passed = false;
        boolean open = false;
        boolean fired = false;
        for (Map.Entry<Finding, Finding> f : shown.entrySet()) {
            if (!rule.raises(f.getKey())) continue;
            fired = true;
            open |= f.getKey().equals(f.getValue());
            where.add(f.getKey().spot());
        }
        for (Map.Entry<String, RuleState> s : states.entrySet()) {
            if (where.contains(s.getKey())) continue;
            if (s.getValue() instanceof RuleState.NotChecked not) notChecked.put(s.getKey(), not.why());
            else passed = true;
        }
        State state = open ? State.FIRED : fired ? State.SILENCED : passed ? State.PASSED : State.NOT_CHECKED;
        where.remove("");
        return new RuleOutcome(
                rule.number(),
                rule.id(),
                rule.title(),
                rule.severity(),
                state,
                inForce(run, rule),
                List.copyOf(where),
                notChecked);
    }

    private static List<RuleOutcome.LimitInForce> inForce(RunView run, Rule rule) {
        return rule.limits().stream()
                .map(l -> new RuleOutcome.LimitInForce(
                        l.name(),
                        run.spots().isEmpty()
                                ? l.value()
                                : Limits.at(run, run.spots().get(0)).of(l),
                        l.unit(),
                        l.source()))
                .toList();
    }

    /** A silence with a wrong name in it looks like one that works. */
    private static List<Finding> idle(Set<Finding> findings, List<Silence> silences) {
        List<Finding> idle = new ArrayList<>();
        for (int i = 0; i < silences.size(); i++) {
            Silence silence = silences.get(i);
            if (findings.stream().anyMatch(silence::covers)) continue;
            idle.add(Finding.note(
                    "silence",
                    "/silence/" + i + " of the holder run silences " + silence.rule()
                            + silence.spot().map(s -> " at spot " + s).orElse("")
                            + ", and there is no such finding: its name or spot is not right, or its cause is gone."));
        }
        return idle;
    }

    /** A silenced finding stays as a note with the reason; a stop stays a stop. */
    private static Map<Finding, Finding> silenced(Set<Finding> findings, List<Silence> silences) {
        Map<Finding, Finding> shown = new LinkedHashMap<>();
        for (Finding f : findings) {
            Optional<Silence> silence =
                    silences.stream().filter(s -> s.covers(f)).findFirst();
            shown.put(
                    f,
                    silence.map(s -> new Finding(
                                    f.severity() == Severity.STOP ? Severity.STOP : Severity.NOTE,
                                    f.rule(),
                                    f.spot(),
                                    f.sample(),
                                    f.spectrum(),
                                    "Silenced (" + s.reason() + "): " + f.message()))
                            .orElse(f));
        }
        return shown;
    }
}
