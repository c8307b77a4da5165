package spotline.analysis.quantify;

import java.util.Locale;

/** What a set of relative sensitivity factors is. Source: ISO 18118. */
public enum FactorKind {
    /** From pure elements. */
    ELEMENTAL,
    /** Elemental factors brought to one average matrix. */
    AVERAGE_MATRIX,
    /** Computed from cross sections. */
    THEORETICAL,
    /** From a material of known composition, measured by the lab. */
    REFERENCE_MATERIAL;

    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
