package spotline.report.table;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.SortedSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import spotline.report.facts.ElementOrder;
import spotline.run.RunResult;
import spotline.run.SampleComposition;
import spotline.run.SampleComposition.Mean;

/** A row a sample, its replicate spots averaged; two columns an element, elements by atomic number. */
public final class SamplesCsv {
    public static final String FILE = "composition-table.csv";

    private SamplesCsv() {}

    public static byte[] of(RunResult result) {
        return table(result).bytes();
    }

    public static CsvTable table(RunResult result) {
        SortedSet<String> elements = ElementOrder.ofSamples(result);
        List<String> columns = new ArrayList<>(List.of("sample", "spots"));
        for (String element : elements) {
            columns.add(element + "_at_percent");
            columns.add(element + "_u");
        }
        CsvTable table = new CsvTable(columns);
        for (SampleComposition sample : result.samples()) {
            Map<String, Mean> means = sample.elements().stream()
                    .collect(Collectors.toMap(Mean::element, Function.identity(), (first, second) -> first));
            CsvTable.Row row = new CsvTable.Row().text(sample.sample()).text(String.join("; ", sample.spots()));
            for (String element : elements) {
                Mean mean =
                        means.getOrDefault(element, new Mean(element, OptionalDouble.empty(), OptionalDouble.empty()));
                row.number(mean.atomicPercent()).number(mean.standardUncertainty());
            }
            table.add(row);
        }
        return table;
    }
}
