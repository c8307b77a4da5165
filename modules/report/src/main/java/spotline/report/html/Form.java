package spotline.report.html;

/** How much a report tells. */
public enum Form {
    /** What a report must hold at the least: record, composition, energy reference, findings, method. */
    SHORT,
    /** Everything: with every spectrum, window, background, fit and setting. */
    FULL
}
