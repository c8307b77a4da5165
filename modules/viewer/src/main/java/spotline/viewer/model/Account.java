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
    public static Account of(SpotResult spot, List<Finding> findings) {
        return new Account(
                spot.spot(),
                Shown.label(spot.sample()),
                List.of(
                        reference(spot),
                        identification(spot),
                        windows(spot),
                        fit(spot),
                        composition(spot),
                        findings(findings)));
    }

    private static Card reference(SpotResult spot) {
        ChargeReference charge = spot.charge();
        List<Fact> facts = new ArrayList<>();
        facts.add(new Fact("verdict", charge.verdict().word(), ""));
        facts.add(new Fact("method", charge.method().word(), ""));
        number(facts, "measured", charge.measuredEv(), charge.measurementU(), charge.referenceLine());
        number(facts, "set to", charge.referenceEv(), charge.referenceU(), charge.referenceLine());
        number(facts, "shift", charge.shiftEv(), charge.standardUncertainty(), "");
        for (String declared : charge.evidence().declared()) facts.add(new Fact("declared", declared, ""));
        charge.evidence().drift().ifPresent(d -> facts.add(new Fact("last less first scan", ev(d.changeEv()), "")));
        for (ChargeEvidence.Position p : charge.evidence().positions()) {
            facts.add(new Fact(
                    p.line(),
                    ev(p.measured()) + " measured"
                            + p.referenced()
                                    .map(r -> ", " + ev(r) + " referenced")
                                    .orElse(""),
                    p.spectrum()));
        }
        for (ChargeEvidence.Candidate c : charge.evidence().candidates()) {
            facts.add(new Fact(
                    "could be referenced to",
                    c.line() + " of " + c.state() + ": shift " + DisplayNumber.signed(c.shiftEv(), 2) + " eV",
                    c.spectrum()));
        }
        Severity standing = switch (charge.verdict()) {
            case ACCEPTED, NOT_NEEDED -> Severity.NOTE;
            case DOUBTFUL -> Severity.CAUTION;
            case FAILED -> Severity.STOP;
        };
        return new Card(Step.REFERENCE, charge.sentence(), standing, facts, List.of());
    }

    private static void number(List<Fact> facts, String name, OptionalDouble value, OptionalDouble u, String line) {
        if (value.isEmpty()) return;
        String text = DisplayNumber.of(value.getAsDouble(), u, 2).text() + " eV";
        facts.add(new Fact(line.isEmpty() ? name : line + " " + name, text, ""));
    }

    private static String ev(Estimate e) {
        return DisplayNumber.of(e.value(), e.standardUncertainty(), 2).text() + " eV";
    }

    private static Card identification(SpotResult spot) {
        if (spot.identification().isEmpty()) {
            return new Card(
                    Step.IDENTIFICATION,
                    "Not checked: there is no survey, so nothing beyond the narrow scans was looked for.",
                    Severity.NOTE,
                    List.of(),
                    List.of());
        }
        Identification seen = spot.identification().get();
        String present = symbols(seen, Verdict.PRESENT);
        String possible = symbols(seen, Verdict.POSSIBLE);
        String sentence = present.isEmpty() ? "No element is proved by the survey" : "The survey proves " + present;
        if (!possible.isEmpty()) sentence += "; possible, not proved: " + possible;
        List<Fact> facts = new ArrayList<>();
        for (ElementSeen element : seen.elements()) {
            String lines = element.lines().stream()
                    .map(l -> l.line() + " at " + DisplayNumber.fixed(l.energyEv(), 1) + " eV")
                    .collect(Collectors.joining(", "));
            facts.add(new Fact(element.element() + " " + element.verdict().word(), lines, ""));
        }
        seen.detail().ifPresent(d -> {
            for (Feature f : d.features()) {
                facts.add(new Fact(
                        "unexplained at " + DisplayNumber.fixed(f.peak().energyEv(), 1) + " eV",
                        f.explanations().isEmpty() ? "no explanation near" : String.join("; ", f.explanations()),
                        ""));
            }
        });
        return new Card(Step.IDENTIFICATION, sentence + ".", Severity.NOTE, facts, List.of());
    }

    private static String symbols(Identification seen, Verdict verdict) {
        return seen.elements().stream()
                .filter(e -> e.verdict() == verdict)
                .map(ElementSeen::element)
                .collect(Collectors.joining(", "));
    }

    private static Card windows(SpotResult spot) {
        List<Fact> facts = new ArrayList<>();
        for (MeasuredIntensity m : spot.intensities()) {
            facts.add(new Fact(
                    m.intensity().line() + " (" + m.basis().word() + ")",
                    DisplayNumber.fixed(m.intensity().window().highEv(), 1) + " to "
                            + DisplayNumber.fixed(m.intensity().window().lowEv(), 1) + " eV, "
                            + m.intensity().background(),
                    m.intensity().spectrum()));
        }
        long detected = spot.intensities().stream()
                .filter(m -> m.intensity().detected())
                .count();
        String sentence = spot.intensities().isEmpty()
                ? "No intensity was taken."
                : detected + " of " + spot.intensities().size() + " lines stand clear of their background.";
        return new Card(Step.WINDOWS, sentence, Severity.NOTE, facts, List.of());
    }

    private static Card fit(SpotResult spot) {
        List<Fact> facts = new ArrayList<>();
        for (FittedPeak p : spot.peaks()) {
            facts.add(new Fact(
                    p.line() + " " + p.peak(), ev(p.measuredPosition()) + ", FWHM " + ev(p.fwhm()), p.spectrum()));
        }
        long lines = spot.peaks().stream().map(FittedPeak::spectrum).distinct().count();
        String sentence = spot.peaks().isEmpty()
                ? "No peak was fitted."
                : spot.peaks().size() + " components in " + lines + (lines == 1 ? " scan" : " scans") + " were fitted.";
        return new Card(Step.FIT, sentence, Severity.NOTE, facts, List.of());
    }

    private static Card composition(SpotResult spot) {
        List<Fact> facts = new ArrayList<>();
        List<String> main = new ArrayList<>();
        boolean withheld = false;
        for (Quantified row : spot.composition()) {
            RowState state = RowState.of(spot, row);
            withheld |= state instanceof RowState.Withheld;
            String text = CompositionGrid.text(row, state);
            facts.add(
                    new Fact(row.element(), text + (row.line().isEmpty() ? "" : " by " + row.line()), row.spectrum()));
            if (state instanceof RowState.Known) main.add(row.element() + " " + text);
        }
        String sentence = main.isEmpty() ? "No atomic percentage can be given." : String.join(", ", main) + " at.%.";
        return new Card(Step.COMPOSITION, sentence, withheld ? Severity.STOP : Severity.NOTE, facts, List.of());
    }

    private static Card findings(List<Finding> findings) {
        long stops =
                findings.stream().filter(f -> f.severity() == Severity.STOP).count();
        long cautions =
                findings.stream().filter(f -> f.severity() == Severity.CAUTION).count();
        long notes = findings.size() - stops - cautions;
        String sentence = findings.isEmpty()
                ? "Nothing to say."
                : count(stops, "stop") + ", " + count(cautions, "caution") + ", " + count(notes, "note") + ".";
        Severity standing = stops > 0 ? Severity.STOP : cautions > 0 ? Severity.CAUTION : Severity.NOTE;
        return new Card(Step.FINDINGS, sentence, standing, List.of(), findings);
    }

    private static String count(long n, String what) {
        return n + " " + what + (n == 1 ? "" : "s");
    }
}
