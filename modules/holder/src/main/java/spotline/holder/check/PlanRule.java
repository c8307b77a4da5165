package spotline.holder.check;

import java.util.Locale;
import spotline.core.Finding;
import spotline.core.Severity;

/**
 * The rules of {@link PlanCheck} with their weight; their thresholds stand in {@link PlanCheckSettings}. All are common
 * practice unless a source is named.
 */
public enum PlanRule {
    /** A spot without declared sample, position, mount or electrical state. Source: ISO 20579-1 and -2, scopes. */
    SPOT_RECORD(Severity.CAUTION),
    /** A specimen reaches beyond the holder's outline. */
    HOLDER_OVERHANG(Severity.STOP),
    /** A specimen reaches beyond the holder's usable area, but not beyond its outline. */
    OUTSIDE_USABLE_AREA(Severity.CAUTION),
    /** A specimen covers an area that must stay free. */
    KEEP_OUT(Severity.CAUTION),
    /** A specimen is thicker than the holder allows. */
    SPECIMEN_THICKNESS(Severity.STOP),
    /** A spot's surface lies outside the heights at which the holder can be analysed. */
    SPOT_HEIGHT(Severity.STOP),
    /** A spot lies beside the specimen it names. */
    SPOT_OFF_SPECIMEN(Severity.STOP),
    /** A spot on a specimen of unknown outline lies beside the holder. */
    SPOT_OFF_HOLDER(Severity.STOP),
    /** Two specimens cover the same place. */
    SPECIMEN_OVERLAP(Severity.CAUTION),
    /** An insulator, or a sample of mixed conductivity, that metal grounds at one face only. Source: Baer et al. (2020). */
    PARTLY_GROUNDED(Severity.CAUTION),
    /** The measured resistance contradicts the declared electrical state. Source: Ohm's law. */
    CONDUCTION_PATH(Severity.CAUTION),
    /** Loose powder in front of an ion gun. */
    POWDER_SPUTTER(Severity.STOP),
    /** What the geometry checks could not look at. */
    GEOMETRY_UNCHECKED(Severity.NOTE);

    private final Severity severity;

    PlanRule(Severity severity) {
        this.severity = severity;
    }

    /** The identifier in files, lower-case words joined by hyphens. */
    public String id() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    public Severity severity() {
        return severity;
    }

    Finding finding(String message) {
        return Finding.of(severity, id(), message);
    }
}
