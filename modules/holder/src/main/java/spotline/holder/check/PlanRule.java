package spotline.holder.check;

import java.util.Locale;
import spotline.core.Finding;
import spotline.core.Severity;

/**
 * The rules of {@link PlanCheck} with their weight; their thresholds stand in {@link PlanCheckSettings}. All are common
 * practice unless a source is named.
 */
public enum PlanRule {
    /** No named local risk review on record: the load does not count as ready. */
    LOCAL_RISK_REVIEW(Severity.CAUTION),
    /** A spot without declared sample, position, mount or electrical state. Source: ISO 20579-1 and -2, scopes. */
    SPOT_RECORD(Severity.CAUTION),
    /** Two labels that people will take for one. */
    LABELS_ALIKE(Severity.CAUTION),
    /** A specimen, or a part of its mount, reaches beyond the holder's outline. */
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
    /** The analysis area may reach onto something else. Source: geometry, with ISO 18516 for what a width means. */
    NO_CLEARANCE(Severity.STOP),
    /** Little room between the analysis area and something else. Source: as for {@link #NO_CLEARANCE}. */
    SMALL_CLEARANCE(Severity.CAUTION),
    /** Two specimens cover the same place. */
    SPECIMEN_OVERLAP(Severity.CAUTION),
    /** A clip of one specimen lies on another. */
    CLIP_ON_NEIGHBOUR(Severity.CAUTION),
    /** An insulator, or a sample of mixed conductivity, that metal grounds at one face only. Source: Baer et al. (2020). */
    PARTLY_GROUNDED(Severity.CAUTION),
    /** What the mount is made of, or a measured resistance, contradicts the declared state. Source: Ohm's law. */
    CONDUCTION_PATH(Severity.CAUTION),
    /** The current through a resistive film or body lifts its surface though its back is grounded. Source: Ohm's law. */
    EXPECTED_POTENTIAL(Severity.CAUTION),
    /** A grounded and an isolated specimen side by side. */
    UNLIKE_NEIGHBOURS(Severity.CAUTION),
    /** Loose powder in front of an ion gun. */
    POWDER_SPUTTER(Severity.STOP),
    /** A patch of powder on tape that is too wide. */
    POWDER_PATCH(Severity.CAUTION),
    /** More or less powder than covers the tape. */
    POWDER_QUANTITY(Severity.CAUTION),
    /** Loose grains that were not removed. */
    POWDER_LOOSE_GRAINS(Severity.CAUTION),
    /** What the record of a powder on tape leaves out. */
    POWDER_RECORD(Severity.NOTE),
    /** The stage would be set to what the holder's record does not allow. */
    STAGE_OUT_OF_RANGE(Severity.STOP),
    /** A set-point beyond what a sample or its mount stands. */
    STAGE_BEYOND_LIMIT(Severity.STOP),
    /** A set-point near what a sample or its mount stands. */
    STAGE_MARGIN(Severity.CAUTION),
    /** Heating a sample that declares no limit. */
    STAGE_LIMIT_UNKNOWN(Severity.CAUTION),
    /** A bias on a holder that has none. */
    STAGE_BIAS(Severity.CAUTION),
    /** A stub seat that the holder has not, or that is too small. */
    STUB_SEAT(Severity.CAUTION),
    /** A specimen that must not meet the air and does not sit in a stub seat. */
    TRANSFER_SEAT(Severity.CAUTION),
    /** A chain of protection that is broken. */
    TRANSFER_BROKEN(Severity.CAUTION),
    /** What the record of a transfer leaves out. */
    TRANSFER_RECORD(Severity.CAUTION),
    /** A depth profile off the rotation axis. */
    PROFILE_OFF_AXIS(Severity.CAUTION),
    /** A depth profile without rotation. */
    PROFILE_UNROTATED(Severity.CAUTION),
    /** What the geometry checks could not look at. */
    GEOMETRY_UNCHECKED(Severity.NOTE);

    private final Severity severity;
    private final String id;

    PlanRule(Severity severity) {
        this.severity = severity;
        this.id = name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The identifier in files, lower-case words joined by hyphens. */
    public String id() {
        return id;
    }

    public Severity severity() {
        return severity;
    }

    Finding finding(String message) {
        return Finding.of(severity, id, message);
    }
}
