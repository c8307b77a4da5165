package spotline.viewer.model;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import spotline.analysis.charge.ChargeEvidence;
import spotline.analysis.charge.ChargeReference;
import spotline.analysis.identify.ElementSeen;
import spotline.analysis.identify.Feature;
import spotline.analysis.identify.Identification;
import spotline.analysis.identify.Verdict;
import spotline.analysis.quantify.Quantified;
import spotline.core.Estimate;
import spotline.core.Finding;
import spotline.core.Severity;
import spotline.report.facts.RowState;
import spotline.report.text.DisplayNumber;
import spotline.report.text.Shown;
import spotline.run.FittedPeak;
import spotline.run.MeasuredIntensity;
import spotline.run.SpotResult;

/**
 * What was decided at one spot, in the order in which the data go: each step as one plain sentence, with the facts behind
 * it.
 */
public record Account(String spot, String sample, List<Card> cards) {
    /** The steps. */
    public enum Step {
        REFERENCE,
        IDENTIFICATION,
        WINDOWS,
        FIT,
        COMPOSITION,
        FINDINGS;

        /** Key of its name in the resource bundle. */
        public String key() {
            return "card." + name().toLowerCase(java.util.Locale.ROOT);
        }
    }

    /**
     * A fact behind a sentence.
     *
     * @param spectrum where to look; empty when it is not of one scan
     */
    public record Fact(String name, String value, String spectrum) {}

    /** @param standing how much the worst finding of this step weighs: {@link Severity#NOTE} when all is well */
    public record Card(Step step, String sentence, Severity standing, List<Fact> facts, List<Finding> findings) {
        public Card {
            facts = List.copyOf(facts);
            findings = List.copyOf(findings);
        }
    }

    public Account {
        cards = List.copyOf(cards);
    }

    /** @param findings of this spot and of the run as a whole */
    public static Account of(SpotResult spot, List<Finding> findings, Words words) {
        return new Account(
                spot.spot(),
                Shown.label(spot.sample()),
                List.of(
                        reference(spot, words),
                        identification(spot, words),
                        windows(spot, words),
                        fit(spot, words),
                        composition(spot, words),
                        findings(findings, words)));
    }

    private static Card reference(SpotResult spot, Words words) {
        ChargeReference charge = spot.charge();
        List<Fact> facts = new ArrayList<>();
        facts.add(new Fact(words.of("fact.verdict"), words.word(charge.verdict().word()), ""));
        facts.add(new Fact(words.of("fact.method"), words.word(charge.method().word()), ""));
        number(facts, of(words, "fact.measured", charge.referenceLine()), charge.measuredEv(), charge.measurementU());
        number(facts, of(words, "fact.set-to", charge.referenceLine()), charge.referenceEv(), charge.referenceU());
        number(facts, words.of("fact.shift"), charge.shiftEv(), charge.standardUncertainty());
        if (!charge.evidence().declared().isEmpty()) {
            facts.add(new Fact(
                    words.of("fact.declared"),
                    String.join(", ", charge.evidence().declared()),
                    ""));
        }
        charge.evidence().drift().ifPresent(d -> facts.add(new Fact(words.of("fact.drift"), ev(d.changeEv()), "")));
        for (ChargeEvidence.Position p : charge.evidence().positions()) {
            facts.add(new Fact(
                    p.line(),
                    p.referenced()
                            .map(r -> words.of("fact.both", ev(p.measured()), ev(r)))
                            .orElseGet(() -> words.of("fact.as-measured", ev(p.measured()))),
                    p.spectrum()));
        }
        for (ChargeEvidence.Candidate c : charge.evidence().candidates()) {
            facts.add(new Fact(
                    words.of("fact.candidate"),
                    words.of("fact.candidate-value", c.line(), c.state(), DisplayNumber.signed(c.shiftEv(), 2)),
                    c.spectrum()));
        }
        Severity standing = switch (charge.verdict()) {
            case ACCEPTED, NOT_NEEDED -> Severity.NOTE;
            case DOUBTFUL -> Severity.CAUTION;
            case FAILED -> Severity.STOP;
        };
        return new Card(Step.REFERENCE, charge.sentence(), standing, facts, List.of());
    }

    private static String of(Words words, String key, String line) {
        return line.isEmpty() ? words.of(key) : words.of("fact.of-line", line, words.of(key));
    }

    private static void number(List<Fact> facts, String name, OptionalDouble value, OptionalDouble u) {
        if (value.isEmpty()) return;
        facts.add(new Fact(name, DisplayNumber.of(value.getAsDouble(), u, 2).text() + " eV", ""));
    }

    private static String ev(Estimate e) {
        return DisplayNumber.of(e.value(), e.standardUncertainty(), 2).text() + " eV";
    }

    private static Card identification(SpotResult spot, Words words) {
        if (spot.identification().isEmpty()) {
            return new Card(Step.IDENTIFICATION, words.of("say.no-survey"), Severity.NOTE, List.of(), List.of());
        }
        Identification seen = spot.identification().get();
        String present = symbols(seen, Verdict.PRESENT);
        String possible = symbols(seen, Verdict.POSSIBLE);
        String proved = present.isEmpty() ? words.of("say.nothing-proved") : words.of("say.proved", present);
        String sentence = possible.isEmpty() ? proved : words.of("say.and-possible", proved, possible);
        List<Fact> facts = new ArrayList<>();
        for (ElementSeen element : seen.elements()) {
            String lines = element.lines().stream()
                    .map(l -> words.of("fact.line-at", l.line(), DisplayNumber.fixed(l.energyEv(), 1)))
                    .collect(Collectors.joining(", "));
            facts.add(new Fact(
                    element.element() + " " + words.word(element.verdict().word()), lines, ""));
        }
        seen.detail().ifPresent(d -> {
            for (Feature f : d.features()) {
                facts.add(new Fact(
                        words.of(
                                "fact.unexplained", DisplayNumber.fixed(f.peak().energyEv(), 1)),
                        f.explanations().isEmpty()
                                ? words.of("fact.no-explanation")
                                : String.join("; ", f.explanations()),
                        ""));
            }
        });
        return new Card(Step.IDENTIFICATION, words.of("say.stop", sentence), Severity.NOTE, facts, List.of());
    }

    private static String symbols(Identification seen, Verdict verdict) {
        return seen.elements().stream()
                .filter(e -> e.verdict() == verdict)
                .map(ElementSeen::element)
                .collect(Collectors.joining(", "));
    }

    private static Card windows(SpotResult spot, Words words) {
        List<Fact> facts = new ArrayList<>();
        for (MeasuredIntensity m : spot.intensities()) {
            facts.add(new Fact(
                    m.intensity().line() + " (" + words.word(m.basis().word()) + ")",
                    words.of(
                            "fact.window",
                            DisplayNumber.fixed(m.intensity().window().highEv(), 1),
                            DisplayNumber.fixed(m.intensity().window().lowEv(), 1),
                            m.intensity().background()),
                    m.intensity().spectrum()));
        }
        long detected = spot.intensities().stream()
                .filter(m -> m.intensity().detected())
                .count();
        String sentence = spot.intensities().isEmpty()
                ? words.of("say.no-intensity")
                : words.of("say.detected", detected, spot.intensities().size());
        return new Card(Step.WINDOWS, sentence, Severity.NOTE, facts, List.of());
    }

    private static Card fit(SpotResult spot, Words words) {
        List<Fact> facts = new ArrayList<>();
        for (FittedPeak p : spot.peaks()) {
            facts.add(new Fact(
                    p.line() + " " + p.peak(),
                    words.of("fact.peak", ev(p.measuredPosition()), ev(p.fwhm())),
                    p.spectrum()));
        }
        long lines = spot.peaks().stream().map(FittedPeak::spectrum).distinct().count();
        String sentence = spot.peaks().isEmpty()
                ? words.of("say.no-peak")
                : words.of("say.fitted", spot.peaks().size(), lines);
        return new Card(Step.FIT, sentence, Severity.NOTE, facts, List.of());
    }

    private static Card composition(SpotResult spot, Words words) {
        List<Fact> facts = new ArrayList<>();
        List<String> main = new ArrayList<>();
        boolean withheld = false;
        for (Quantified row : spot.composition()) {
            RowState state = RowState.of(spot, row);
            withheld |= state instanceof RowState.Withheld;
            String text = CompositionGrid.text(row, state, words);
            facts.add(new Fact(
                    row.element(),
                    row.line().isEmpty() ? text : words.of("fact.by-line", text, row.line()),
                    row.spectrum()));
            if (state instanceof RowState.Known) main.add(row.element() + " " + text);
        }
        String sentence =
                main.isEmpty() ? words.of("say.no-percentage") : words.of("say.percentages", String.join(", ", main));
        return new Card(Step.COMPOSITION, sentence, withheld ? Severity.STOP : Severity.NOTE, facts, List.of());
    }

    private static Card findings(List<Finding> findings, Words words) {
        long stops =
                findings.stream().filter(f -> f.severity() == Severity.STOP).count();
        long cautions =
                findings.stream().filter(f -> f.severity() == Severity.CAUTION).count();
        long notes = findings.size() - stops - cautions;
        String sentence =
                findings.isEmpty() ? words.of("say.nothing") : words.of("say.findings", stops, cautions, notes);
        Severity standing = stops > 0 ? Severity.STOP : cautions > 0 ? Severity.CAUTION : Severity.NOTE;
        return new Card(Step.FINDINGS, sentence, standing, List.of(), findings);
    }
}
