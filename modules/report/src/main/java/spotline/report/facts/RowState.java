package spotline.report.facts;

import java.util.List;
import java.util.stream.Collectors;
import spotline.analysis.quantify.Quantified;
import spotline.core.Finding;
import spotline.core.Severity;
import spotline.run.SpotResult;

/** What stands where an atomic percentage may stand. */
public sealed interface RowState {
    /** A number that can be defended. */
    record Known() implements RowState {}

    /** Not told from noise. */
    record BelowDetection() implements RowState {}

    /** @param reason why there is no number, in sentences */
    record Withheld(String reason) implements RowState {}

    static RowState of(SpotResult spot, Quantified row) {
        if (row.atomicPercent().isPresent()) return new Known();
        if (row.belowDetection()) return new BelowDetection();
        if (row.line().isEmpty()) return new Withheld("No line of " + row.element() + " was measured.");
        return new Withheld(reason(spot, row));
    }

    private static String reason(SpotResult spot, Quantified row) {
        List<Finding> stops = spot.findings().stream()
                .filter(f -> f.severity() == Severity.STOP)
                .toList();
        List<Finding> own =
                stops.stream().filter(f -> f.spectrum().equals(row.spectrum())).toList();
        String text = (own.isEmpty() ? stops : own)
                .stream().map(Finding::message).distinct().collect(Collectors.joining(" "));
        return text.isEmpty() ? "The reason is among the findings." : text;
    }

    /** Empty unless withheld. */
    default String reason() {
        return this instanceof Withheld withheld ? withheld.reason() : "";
    }
}
