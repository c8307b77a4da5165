package spotline.viewer.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import spotline.analysis.quantify.Quantified;
import spotline.core.Estimate;
import spotline.report.facts.ElementOrder;
import spotline.report.facts.RowState;
import spotline.report.facts.SampleValue;
import spotline.report.text.DisplayNumber;
import spotline.report.text.Shown;
import spotline.run.RunResult;
import spotline.run.SampleComposition;
import spotline.run.SpotResult;
import spotline.run.document.SpotException;

/**
 * Samples by elements: a row a sample, and below a sample of several spots a row for each of them.
 *
 * @param elements by atomic number
 */
public record CompositionGrid(List<String> elements, List<Row> rows) {
    /**
     * @param spot empty for the mean of several
     * @param cells one an element
     * @param own in which settings the spot, or spots of the sample, differ from all others; empty when in none
     */
    public record Row(String sample, String spot, boolean replicate, List<Cell> cells, String own) {
        public Row {
            cells = List.copyOf(cells);
        }
    }

    /**
     * @param text as a person reads it; empty where the element was not looked for
     * @param spot,spectrum,line what stands behind it; empty where there is nothing to show
     */
    public record Cell(String text, String spot, String spectrum, String line) {
        static final Cell NOTHING = new Cell("", "", "", "");
    }

    public CompositionGrid {
        elements = List.copyOf(elements);
        rows = List.copyOf(rows);
    }

    /** @param exceptions settings of single spots */
    public static CompositionGrid of(RunResult result, List<SpotException> exceptions, Words words) {
        Map<String, String> own = OwnSettings.of(exceptions, words);
        List<String> elements = List.copyOf(ElementOrder.ofSamples(result));
        List<Row> rows = new ArrayList<>();
        for (SampleComposition sample : result.samples()) {
            List<SpotResult> spots = result.spots().stream()
                    .filter(s -> sample.spots().contains(s.spot()))
                    .toList();
            boolean several = spots.size() > 1;
            if (several) rows.add(mean(result, sample, spots, elements, own, words));
            for (SpotResult spot : spots) rows.add(ofSpot(spot, sample, several, elements, own, words));
        }
        return new CompositionGrid(elements, rows);
    }

    private static Row mean(
            RunResult result,
            SampleComposition sample,
            List<SpotResult> spots,
            List<String> elements,
            Map<String, String> own,
            Words words) {
        List<Cell> cells = new ArrayList<>();
        for (String element : elements) {
            SampleValue value = SampleValue.of(result, sample, element);
            Cell first = spots.stream()
                    .map(s -> cell(s, element, words))
                    .filter(c -> !c.spectrum().isEmpty())
                    .findFirst()
                    .orElse(Cell.NOTHING);
            cells.add(new Cell(text(value, words), first.spot(), first.spectrum(), first.line()));
        }
        String ofSpots = spots.stream()
                .filter(s -> own.containsKey(s.spot()))
                .map(s -> words.of("own.of-spot", s.spot(), own.getOrDefault(s.spot(), "")))
                .collect(Collectors.joining("; "));
        return new Row(Shown.label(sample.sample()), "", false, cells, ofSpots);
    }

    private static String text(SampleValue value, Words words) {
        if (value instanceof SampleValue.Mean mean) {
            return DisplayNumber.of(mean.atomicPercent(), mean.standardUncertainty(), 1)
                    .text();
        }
        if (value instanceof SampleValue.Below below) return below(below.limit(), words);
        return value instanceof SampleValue.Withheld ? words.of("composition.withheld") : "";
    }

    private static Row ofSpot(
            SpotResult spot,
            SampleComposition sample,
            boolean replicate,
            List<String> elements,
            Map<String, String> own,
            Words words) {
        return new Row(
                Shown.label(sample.sample()),
                spot.spot(),
                replicate,
                elements.stream().map(e -> cell(spot, e, words)).toList(),
                own.getOrDefault(spot.spot(), ""));
    }

    private static Cell cell(SpotResult spot, String element, Words words) {
        Optional<Quantified> row = spot.composition().stream()
                .filter(r -> r.element().equals(element))
                .findFirst();
        return row.map(r -> new Cell(text(r, RowState.of(spot, r), words), spot.spot(), r.spectrum(), r.line()))
                .orElse(Cell.NOTHING);
    }

    /** An atomic percentage, a limit, or the word that stands for it. */
    static String text(Quantified row, RowState state, Words words) {
        if (state instanceof RowState.Withheld) return words.of("composition.withheld");
        if (row.atomicPercent().isEmpty()) return below(row.detectionLimit(), words);
        Estimate percent = row.atomicPercent().get();
        return DisplayNumber.of(percent.value(), percent.standardUncertainty(), 1)
                .text();
    }

    private static String below(OptionalDouble limit, Words words) {
        return limit.isPresent() ? "< " + DisplayNumber.limit(limit.getAsDouble()) : words.of("composition.not-seen");
    }
}
