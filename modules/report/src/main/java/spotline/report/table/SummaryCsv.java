package spotline.report.table;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import spotline.analysis.quantify.Replicates;
import spotline.run.SampleComposition;

/** Tables over several holder runs. */
public final class SummaryCsv {
    public static final String FILE = "summary.csv";
    public static final String CONTROL_FILE = "control.csv";

    private SummaryCsv() {}

    /** A row a holder run, sample and element. */
    public static byte[] of(List<HolderSummary> runs) {
        CsvTable table = new CsvTable(
                List.of("run", "date", "sample", "spots", "element", "atomic_percent", "standard_uncertainty"));
        for (HolderSummary run : runs) {
            for (SampleComposition sample : run.samples()) {
                for (SampleComposition.Mean mean : sample.elements()) {
                    table.add(new CsvTable.Row()
                            .text(run.run())
                            .text(run.date().map(Object::toString).orElse(""))
                            .text(sample.sample())
                            .text(String.join("; ", sample.spots()))
                            .text(mean.element())
                            .number(mean.atomicPercent())
                            .number(mean.standardUncertainty()));
                }
            }
        }
        return table.bytes();
    }

    /**
     * The trend of control samples: a row a holder run, control sample and element, against the mean of all these runs. The
     * last column is the difference over what of the run's standard uncertainty is its own: factors and exponents are the
     * same in all of them and would hide a trend.
     */
    public static byte[] controls(List<HolderSummary> runs) {
        CsvTable table = new CsvTable(List.of(
                "run",
                "date",
                "sample",
                "element",
                "atomic_percent",
                "standard_uncertainty",
                "mean_of_runs",
                "difference",
                "difference_over_u"));
        Map<String, List<Double>> values = new LinkedHashMap<>();
        each(
                runs,
                (run, sample, mean) -> mean.atomicPercent()
                        .ifPresent(v -> values.computeIfAbsent(key(sample, mean), k -> new ArrayList<>())
                                .add(v)));
        each(runs, (run, sample, mean) -> {
            OptionalDouble centre = values.getOrDefault(key(sample, mean), List.of()).stream()
                    .mapToDouble(Double::doubleValue)
                    .average();
            OptionalDouble difference = mean.atomicPercent().isPresent() && centre.isPresent()
                    ? OptionalDouble.of(mean.atomicPercent().getAsDouble() - centre.getAsDouble())
                    : OptionalDouble.empty();
            OptionalDouble u = mean.standardUncertainty();
            OptionalDouble own = mean.places().map(Replicates::ownUncertainty).orElse(OptionalDouble.empty());
            table.add(new CsvTable.Row()
                    .text(run.run())
                    .text(run.date().map(Object::toString).orElse(""))
                    .text(sample.sample())
                    .text(mean.element())
                    .number(mean.atomicPercent())
                    .number(u)
                    .number(centre)
                    .number(difference)
                    .number(
                            difference.isPresent() && own.isPresent() && own.getAsDouble() > 0
                                    ? OptionalDouble.of(difference.getAsDouble() / own.getAsDouble())
                                    : OptionalDouble.empty()));
        });
        return table.bytes();
    }

    private interface Row {
        void add(HolderSummary run, SampleComposition sample, SampleComposition.Mean mean);
    }

    private static void each(List<HolderSummary> runs, Row row) {
        for (HolderSummary run : runs) {
            for (SampleComposition sample : run.samples()) {
                if (!run.controls().contains(sample.sample())) continue;
                for (SampleComposition.Mean mean : sample.elements()) row.add(run, sample, mean);
            }
        }
    }

    private static String key(SampleComposition sample, SampleComposition.Mean mean) {
        return sample.sample() + "\n" + mean.element();
    }
}
