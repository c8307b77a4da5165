package spotline.report.print;

/** Which cut of the typeface. */
public enum Weight {
    REGULAR("DejaVuSans.ttf"),
    BOLD("DejaVuSans-Bold.ttf");

    private final String file;

    Weight(String file) {
        this.file = file;
    }

    /** The font on the class path. */
    public String resource() {
        return "/spotline/fonts/" + file;
    }
}
