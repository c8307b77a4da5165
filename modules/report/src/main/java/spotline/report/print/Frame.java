package spotline.report.print;

/**
 * Where the printed matter stands on the paper. It is as large as both papers allow with a margin, and stands in the
 * middle, so that a sheet made for one paper loses nothing when it is printed at full size on the other.
 */
public record Frame(double paperWidthMm, double paperHeightMm, double widthMm, double heightMm) {
    private static final double MARGIN_MM = 12;

    public static Frame of(Paper paper, boolean landscape) {
        double acrossShort = Math.min(Paper.A4.shortMm(), Paper.LETTER.shortMm()) - 2 * MARGIN_MM;
        double acrossLong = Math.min(Paper.A4.longMm(), Paper.LETTER.longMm()) - 2 * MARGIN_MM;
        return landscape
                ? new Frame(paper.longMm(), paper.shortMm(), acrossLong, acrossShort)
                : new Frame(paper.shortMm(), paper.longMm(), acrossShort, acrossLong);
    }

    /** An upright page with a margin all round. */
    public static Frame within(Paper paper, double marginMm) {
        return new Frame(
                paper.shortMm(), paper.longMm(), paper.shortMm() - 2 * marginMm, paper.longMm() - 2 * marginMm);
    }

    /** A page that is nothing but what is drawn on it. */
    public static Frame tight(double widthMm, double heightMm) {
        return new Frame(widthMm, heightMm, widthMm, heightMm);
    }

    public double leftMm() {
        return (paperWidthMm - widthMm) / 2;
    }

    public double topMm() {
        return (paperHeightMm - heightMm) / 2;
    }
}
