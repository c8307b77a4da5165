package spotline.analysis.calibration;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.core.Decimal;
import spotline.core.Finding;
import spotline.core.Place;
import spotline.core.ReadException;

/**
 * Reference lines measured over time, a row a line and day, as a CSV table that grows.
 *
 * <p>Shape: rows in order of date. Units: eV, counts eV per second of a channel.
 */
public record CalibrationHistory(List<Row> rows) {
    private static final List<String> COLUMNS = List.of(
            "date",
            "instrument",
            "source",
            "pass_energy_ev",
            "line",
            "reference_ev",
            "measured_ev",
            "measured_u_ev",
            "deviation_ev",
            "fwhm_ev",
            "intensity",
            "tolerance_ev",
            "verdict");

    /** Ratios of intensities may differ from their mean by this share: common practice, no source. */
    private static final double RATIO = 0.02;
    /** An intensity, and a position, may differ this much from their mean: common practice, no source. */
    private static final double INTENSITY = 0.10;

    private static final double WIDTH = 0.05;

    /** One line on one day. */
    public record Row(
            LocalDate date,
            String instrument,
            String source,
            OptionalDouble passEnergyEv,
            String line,
            double referenceEv,
            double measuredEv,
            OptionalDouble measuredU,
            OptionalDouble fwhmEv,
            OptionalDouble intensity,
            double toleranceEv,
            String verdict) {
        public double deviationEv() {
            return measuredEv - referenceEv;
        }

        boolean comparable(Row other) {
            return instrument.equals(other.instrument)
                    && source.equals(other.source)
                    && passEnergyEv.equals(other.passEnergyEv);
        }
    }

    public CalibrationHistory {
        rows = rows.stream().sorted(Comparator.comparing(Row::date)).toList();
    }

    public static CalibrationHistory empty() {
        return new CalibrationHistory(List.of());
    }

    public CalibrationHistory plus(CalibrationRecord record) {
        List<Row> more = new ArrayList<>(rows);
        String source = record.source() + (record.monochromated() ? ", monochromated" : "");
        for (CalibrationRecord.Line line : record.lines()) {
            more.add(new Row(
                    record.date(),
                    record.instrument(),
                    source,
                    record.passEnergyEv(),
                    line.line(),
                    line.referenceEv(),
                    line.measuredEv(),
                    line.measurementU(),
                    line.fwhmEv(),
                    line.intensity(),
                    record.toleranceEv(),
                    record.verdict().name().toLowerCase(java.util.Locale.ROOT).replace('_', '-')));
        }
        return new CalibrationHistory(more);
    }

    /** What the last day says against the days before it: width of Ag 3d5/2, ratios of intensities. */
    public List<Finding> findings() {
        List<Finding> findings = new ArrayList<>();
        if (rows.isEmpty()) return findings;
        List<Row> last = day(rows.get(rows.size() - 1).date());
        for (Row row : last) {
            List<Row> before = earlier(row);
            if (before.isEmpty()) continue;
            width(row, before).ifPresent(findings::add);
            intensity(row, before).ifPresent(findings::add);
        }
        findings.addAll(ratios(last));
        return findings;
    }

    private List<Row> day(LocalDate date) {
        return rows.stream().filter(r -> r.date().equals(date)).toList();
    }

    private List<Row> earlier(Row row) {
        return rows.stream()
                .filter(r -> r.date().isBefore(row.date()) && r.line().equals(row.line()) && r.comparable(row))
                .toList();
    }

    private static Optional<Finding> width(Row row, List<Row> before) {
        OptionalDouble mean = mean(before.stream().map(Row::fwhmEv).toList());
        if (!row.line().equals("Ag 3d5/2") || row.fwhmEv().isEmpty() || mean.isEmpty()) return Optional.empty();
        double now = row.fwhmEv().getAsDouble();
        if (Math.abs(now - mean.getAsDouble()) <= WIDTH) return Optional.empty();
        return Optional.of(Finding.caution(
                "resolution-changed",
                Texts.ev(
                        "Ag 3d5/2 is %.2f eV wide, %.2f eV on average before (limit %.2f eV).",
                        now, mean.getAsDouble(), WIDTH)));
    }

    private static Optional<Finding> intensity(Row row, List<Row> before) {
        OptionalDouble mean = mean(before.stream().map(Row::intensity).toList());
        if (row.intensity().isEmpty() || mean.isEmpty()) return Optional.empty();
        double ratio = row.intensity().getAsDouble() / mean.getAsDouble();
        if (Math.abs(ratio - 1) <= INTENSITY) return Optional.empty();
        return Optional.of(Finding.note(
                "intensity-changed",
                Texts.ev("%s has %.0f %% of its usual intensity (limit 10 %% away).", row.line(), 100 * ratio)));
    }

    /** Ratios of line pairs against the mean of their logarithms. Source: ISO 24237:2005 for the idea. */
    private List<Finding> ratios(List<Row> last) {
        List<Finding> findings = new ArrayList<>();
        for (int i = 0; i < last.size(); i++) {
            for (int k = i + 1; k < last.size(); k++) {
                Row one = last.get(i);
                Row other = last.get(k);
                if (!one.comparable(other)) continue;
                OptionalDouble now = logRatio(one, other);
                Map<LocalDate, Double> before = new LinkedHashMap<>();
                for (Row row : earlier(one)) {
                    for (Row partner : earlier(other)) {
                        OptionalDouble then = logRatio(row, partner);
                        if (row.date().equals(partner.date()) && then.isPresent()) {
                            before.put(row.date(), then.getAsDouble());
                        }
                    }
                }
                if (now.isEmpty() || before.isEmpty()) continue;
                double mean = before.values().stream()
                        .mapToDouble(Double::doubleValue)
                        .average()
                        .orElseThrow();
                double off = Math.expm1(now.getAsDouble() - mean);
                if (Math.abs(off) <= RATIO) continue;
                findings.add(Finding.caution(
                        "intensity-ratio-changed",
                        Texts.ev(
                                "The intensity ratio %s / %s is %+.1f %% from its mean (limit %.0f %%): the intensity scale"
                                        + " is not constant.",
                                one.line(), other.line(), 100 * off, 100 * RATIO)));
            }
        }
        return findings;
    }

    private static OptionalDouble logRatio(Row one, Row other) {
        boolean both = one.intensity().orElse(0) > 0 && other.intensity().orElse(0) > 0;
        return both
                ? OptionalDouble.of(Math.log(
                        one.intensity().getAsDouble() / other.intensity().getAsDouble()))
                : OptionalDouble.empty();
    }

    private static OptionalDouble mean(List<OptionalDouble> values) {
        return values.stream()
                .filter(OptionalDouble::isPresent)
                .mapToDouble(OptionalDouble::getAsDouble)
                .average();
    }

    /** The table as text, UTF-8, with its header. */
    public String csv() {
        StringBuilder text = new StringBuilder(String.join(",", COLUMNS)).append('\n');
        for (Row r : rows) {
            List<String> cells = List.of(
                    r.date().toString(),
                    Cells.quoted(r.instrument()),
                    Cells.quoted(r.source()),
                    Decimal.text(r.passEnergyEv()),
                    Cells.quoted(r.line()),
                    Decimal.text(r.referenceEv()),
                    Decimal.text(r.measuredEv()),
                    Decimal.text(r.measuredU()),
                    Decimal.text(r.deviationEv()),
                    Decimal.text(r.fwhmEv()),
                    Decimal.text(r.intensity()),
                    Decimal.text(r.toleranceEv()),
                    Cells.quoted(r.verdict()));
            text.append(String.join(",", cells)).append('\n');
        }
        return text.toString();
    }

    /** Reads what {@link #csv} writes. @param name for messages */
    public static CalibrationHistory read(String name, String text) throws ReadException {
        List<String> lines = text.lines().toList();
        if (lines.isEmpty() || !lines.get(0).equals(String.join(",", COLUMNS))) {
            throw new ReadException(
                    Place.line(name, 1),
                    lines.isEmpty() ? "an empty file" : "\"" + lines.get(0) + "\"",
                    "the header of a calibration history: " + String.join(",", COLUMNS));
        }
        List<Row> rows = new ArrayList<>();
        for (int i = 1; i < lines.size(); i++) {
            if (!lines.get(i).isBlank()) rows.add(row(Place.line(name, i + 1), lines.get(i)));
        }
        return new CalibrationHistory(rows);
    }

    private static Row row(Place place, String line) throws ReadException {
        List<String> cells = Cells.of(line);
        if (cells.size() != COLUMNS.size()) {
            throw new ReadException(place, cells.size() + " cells", COLUMNS.size() + " cells");
        }
        Cells of = new Cells(place, COLUMNS, cells);
        LocalDate date;
        try {
            date = LocalDate.parse(cells.get(0));
        } catch (DateTimeException e) {
            throw new ReadException(place, "\"" + cells.get(0) + "\"", "a date such as 2026-05-12");
        }
        return new Row(
                date,
                of.text(1),
                of.text(2),
                of.optional(3),
                of.text(4),
                of.number(5),
                of.number(6),
                of.optional(7),
                of.optional(9),
                of.optional(10),
                of.number(11),
                of.text(12));
    }
}
