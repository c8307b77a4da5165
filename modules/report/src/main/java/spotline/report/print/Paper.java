package spotline.report.print;

/** What a sheet is printed on. Sources: ISO 216 for A4; ANSI/ASME Y14.1 for Letter. */
public enum Paper {
    A4(210, 297),
    LETTER(215.9, 279.4);

    private final double shortMm;
    private final double longMm;

    Paper(double shortMm, double longMm) {
        this.shortMm = shortMm;
        this.longMm = longMm;
    }

    /** The shorter side, mm. */
    public double shortMm() {
        return shortMm;
    }

    /** The longer side, mm. */
    public double longMm() {
        return longMm;
    }
}
