package spotline.report.table;

import java.util.List;
import java.util.OptionalDouble;
import spotline.report.facts.ElementOrder;
import spotline.report.facts.OpeningLine;
import spotline.report.facts.SampleValue;
import spotline.run.RunResult;
import spotline.run.SampleComposition;

/** One sample's table for its owner: a row an element. */
public final class SampleCsv {
    private static final List<String> COLUMNS = List.of(
            "sample",
            "element",
            "name",
            "atomic_percent",
            "standard_uncertainty",
            "less_than_atomic_percent",
            "remark");

    private SampleCsv() {}

    public static byte[] of(RunResult result, SampleComposition sample) {
        CsvTable table = new CsvTable(COLUMNS);
        for (String element : ElementOrder.ofSamples(result)) {
            SampleValue value = SampleValue.of(result, sample, element);
            if (value instanceof SampleValue.NotLookedFor) continue;
            CsvTable.Row row =
                    new CsvTable.Row().text(sample.sample()).text(element).text(OpeningLine.name(element));
            if (value instanceof SampleValue.Mean mean) {
                row.number(mean.atomicPercent())
                        .number(mean.standardUncertainty())
                        .number(OptionalDouble.empty())
                        .text("");
            } else {
                boolean below = value instanceof SampleValue.Below;
                row.number(OptionalDouble.empty()).number(OptionalDouble.empty());
                row.number(value instanceof SampleValue.Below b ? b.limit() : OptionalDouble.empty());
                row.text(below ? "below detection" : "withheld");
            }
            table.add(row);
        }
        return table.bytes();
    }
}
