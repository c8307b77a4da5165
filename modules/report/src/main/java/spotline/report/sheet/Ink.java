package spotline.report.sheet;

/**
 * A colour, each part 0 to 1. Every ink here is told from the paper on a black-and-white printer too.
 */
record Ink(double red, double green, double blue) {
    static final Ink BLACK = grey(0);
    static final Ink DARK = grey(0.3);
    static final Ink MIDDLE = grey(0.55);
    static final Ink PALE = grey(0.88);
    static final Ink PAPER = grey(1);
    static final Ink ALARM = new Ink(0.7, 0.05, 0.05);

    static Ink grey(double lightness) {
        return new Ink(lightness, lightness, lightness);
    }
}
