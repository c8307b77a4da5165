package spotline.report.sheet;

/** Which cut of the typeface. */
enum Weight {
    REGULAR("DejaVuSans.ttf"),
    BOLD("DejaVuSans-Bold.ttf");

    private final String file;

    Weight(String file) {
        this.file = file;
    }

    /** The font on the class path. */
    String resource() {
        return "/spotline/fonts/" + file;
    }
}
