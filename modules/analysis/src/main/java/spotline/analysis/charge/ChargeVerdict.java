package spotline.analysis.charge;

import java.util.Locale;

/** What the decision is worth. */
public enum ChargeVerdict {
    ACCEPTED,
    /** A grounded conductor: checked, not shifted. */
    NOT_NEEDED,
    DOUBTFUL,
    /** No reference found: referenced energies are withheld, compositions are not touched. */
    FAILED;

    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
