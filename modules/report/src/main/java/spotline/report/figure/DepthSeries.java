package spotline.report.figure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeSet;
import spotline.analysis.quantify.Quantified;
import spotline.report.facts.HeaderFacts;
import spotline.run.LinkedSpectrum;
import spotline.run.SpotResult;

/**
 * A depth profile out of a holder run that gives each level a spot of its own: depth or etch time from the headers of the
 * spectra, composition from the treatment.
 *
 * <p>Errors: {@link IllegalArgumentException} with what was found, unless two spots or more carry a level, all by the same
 * name and unit, and every spot one alone.
 */
public final class DepthSeries {
    private record Row(double level, SpotResult spot) {}

    private DepthSeries() {}

    public static DepthTable of(List<SpotResult> spots) {
        List<Row> rows = new ArrayList<>();
        TreeSet<String> axes = new TreeSet<>();
        for (SpotResult spot : spots) {
            Optional<HeaderFacts.Level> level = level(spot);
            if (level.isEmpty()) continue;
            axes.add(level.get().axis());
            rows.add(new Row(level.get().value(), spot));
        }
        if (rows.size() < 2) {
            throw new IllegalArgumentException(
                    rows.size() + " spots whose spectra carry a depth or an etch time in their headers");
        }
        if (axes.size() > 1) throw new IllegalArgumentException("levels called " + String.join(" and ", axes));
        rows.sort(Comparator.comparingDouble(Row::level));
        List<String> elements = rows.stream()
                .flatMap(r -> r.spot().composition().stream())
                .map(Quantified::element)
                .distinct()
                .toList();
        return new DepthTable(
                axes.first(),
                rows.stream().map(Row::level).toList(),
                elements.stream()
                        .map(e -> profile(e, rows))
                        .filter(p -> p.atomicPercent().stream().anyMatch(v -> !v.isNaN()))
                        .toList());
    }

    private static Optional<HeaderFacts.Level> level(SpotResult spot) {
        List<HeaderFacts.Level> levels = new ArrayList<>();
        for (LinkedSpectrum spectrum : spot.spectra()) {
            HeaderFacts.level(spectrum).filter(l -> !levels.contains(l)).ifPresent(levels::add);
        }
        if (levels.size() > 1) {
            throw new IllegalArgumentException(
                    String.format(Locale.ROOT, "spectra of %d levels at spot %s", levels.size(), spot.spot()));
        }
        return levels.stream().findFirst();
    }

    private static DepthTable.Profile profile(String element, List<Row> rows) {
        List<Double> percent = new ArrayList<>();
        List<Double> uncertainty = new ArrayList<>();
        for (Row row : rows) {
            Optional<Quantified> found = row.spot().composition().stream()
                    .filter(q -> q.element().equals(element))
                    .findFirst();
            percent.add(
                    found.flatMap(Quantified::atomicPercent).map(e -> e.value()).orElse(Double.NaN));
            uncertainty.add(found.flatMap(Quantified::atomicPercent)
                    .map(e -> e.standardUncertainty().orElse(Double.NaN))
                    .orElse(Double.NaN));
        }
        return new DepthTable.Profile(element, percent, uncertainty);
    }
}
