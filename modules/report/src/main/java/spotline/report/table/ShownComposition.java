package spotline.report.table;

import java.util.ArrayList;
import java.util.List;
import spotline.report.facts.ElementOrder;
import spotline.report.facts.OwnSettings;
import spotline.report.facts.SampleValue;
import spotline.report.text.DisplayNumber;
import spotline.report.text.Shown;
import spotline.run.RunResult;
import spotline.run.SampleComposition;

/**
 * The composition table as a paper prints it: a row a sample, digits by uncertainty.
 *
 * @param notes on spots with settings of their own, which are marked
 */
record ShownComposition(List<String> elements, List<Row> rows, List<String> notes) {
    /** @param values one an element */
    record Row(String sample, String spots, List<Value> values) {}

    /**
     * One cell.
     *
     * @param relation {@code "<"} for a limit, a word or a dash where there is no number, else empty
     */
    record Value(String relation, String value, String uncertainty) {}

    static final String NOTE =
            "Atomic percent of the elements listed; hydrogen and helium are not seen. Replicate spots"
                    + " averaged; one standard uncertainty after the value. Less-than signs: below detection, less than this."
                    + " Dashes: not looked for. No overlayer is corrected for.";

    static ShownComposition of(RunResult result) {
        List<String> elements = List.copyOf(ElementOrder.ofSamples(result));
        OwnSettings own = OwnSettings.of(result);
        List<Row> rows = new ArrayList<>();
        List<String> notes = new ArrayList<>();
        for (SampleComposition sample : result.samples()) {
            String name =
                    sample.sample().isEmpty() ? "Sample of spot " + String.join(", ", sample.spots()) : sample.sample();
            rows.add(new Row(
                    Shown.text(name).replaceAll("\\s+", " "),
                    Shown.text(own.marked(sample.spots())).replaceAll("\\s+", " "),
                    elements.stream()
                            .map(element -> value(SampleValue.of(result, sample, element)))
                            .toList()));
            own.notes(sample.spots()).forEach(note -> notes.add(note.replaceAll("\\s+", " ")));
        }
        return new ShownComposition(elements, rows, notes);
    }

    private static Value value(SampleValue value) {
        if (value instanceof SampleValue.Mean mean) {
            DisplayNumber shown = DisplayNumber.of(mean.atomicPercent(), mean.standardUncertainty(), 1);
            return new Value("", shown.value(), shown.uncertainty());
        }
        if (value instanceof SampleValue.Below below) {
            return below.limit().isPresent()
                    ? new Value("<", DisplayNumber.limit(below.limit().getAsDouble()), "")
                    : new Value("below detection", "", "");
        }
        return new Value(value instanceof SampleValue.Withheld ? "withheld" : "\u2013", "", "");
    }
}
