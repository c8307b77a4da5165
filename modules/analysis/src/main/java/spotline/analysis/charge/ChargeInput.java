package spotline.analysis.charge;

import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import spotline.reference.Line;
import spotline.spectra.BindingScan;

/**
 * What a decision on a spot's energy reference may look at.
 *
 * @param lines narrow scans with their lines, in order of measurement: the first of a line is the one that counts, later
 *     ones tell drift
 * @param others narrow scans of no single photoelectron line: valence band, cutoff, Auger lines
 * @param survey the spot's survey
 * @param elements symbols declared or seen
 * @param sputtered whether the surface was etched before its carbon was measured
 * @param monochromated whether the source's own width is small
 * @param workingShiftEv shift under which the survey's lines fell into place, eV
 */
public record ChargeInput(
        SpotCondition condition,
        List<MeasuredLine> lines,
        List<OtherScan> others,
        Optional<BindingScan> survey,
        SortedSet<String> elements,
        boolean sputtered,
        boolean monochromated,
        double workingShiftEv) {
    /**
     * A narrow scan and the line it was taken of.
     *
     * @param start of the measurement
     */
    public record MeasuredLine(Line line, BindingScan scan, Optional<OffsetDateTime> start) {
        public MeasuredLine(Line line, BindingScan scan) {
            this(line, scan, Optional.empty());
        }

        /** Middle of the measurement; its start where nobody knows how long it took. */
        public Optional<OffsetDateTime> middle() {
            double seconds = scan.secondsPerChannel().orElse(0) * scan.channels();
            return start.map(t -> t.plus(Duration.ofMillis(Math.round(500 * seconds))));
        }
    }

    /** A narrow scan and what its file calls it: {@code "valence band"}, {@code "Ag MNN"}. */
    public record OtherScan(String region, BindingScan scan) {}

    static final Line CARBON = Line.parse("C 1s");

    public ChargeInput {
        lines = List.copyOf(lines);
        others = List.copyOf(others);
        elements = java.util.Collections.unmodifiableSortedSet(new TreeSet<>(elements));
    }

    /** C 1s scans in order of measurement. */
    List<MeasuredLine> carbon() {
        return scansOf(CARBON);
    }

    List<MeasuredLine> scansOf(Line line) {
        return lines.stream().filter(l -> l.line().whole().equals(line.whole())).toList();
    }

    /** The first scan of each line. */
    List<MeasuredLine> firstOfEachLine() {
        List<MeasuredLine> first = new ArrayList<>();
        for (MeasuredLine line : lines) {
            if (first.stream()
                    .noneMatch(f -> f.line().whole().equals(line.line().whole()))) first.add(line);
        }
        return first;
    }
}
