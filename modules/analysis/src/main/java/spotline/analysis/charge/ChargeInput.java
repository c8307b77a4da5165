package spotline.analysis.charge;

import java.util.List;
import java.util.Optional;
import spotline.reference.Line;
import spotline.spectra.BindingScan;

/**
 * What a decision on a spot's energy reference may look at.
 *
 * @param carbon earliest C 1s narrow scan
 * @param lastCarbon latest one, if there is more than one
 * @param lines the other narrow scans, each with its line
 * @param workingShiftEv shift under which the survey's lines fell into place, eV
 */
public record ChargeInput(
        SpotCondition condition,
        Optional<BindingScan> carbon,
        Optional<BindingScan> lastCarbon,
        List<MeasuredLine> lines,
        double workingShiftEv) {
    /** A narrow scan and the line it was taken of. */
    public record MeasuredLine(Line line, BindingScan scan) {}

    public ChargeInput {
        lines = List.copyOf(lines);
    }
}
