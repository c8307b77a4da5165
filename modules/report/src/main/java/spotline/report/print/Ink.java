package spotline.report.print;

/**
 * A colour, each part 0 to 1. Every ink here is told from the paper on a black-and-white printer too.
 */
public record Ink(double red, double green, double blue) {
    public static final Ink BLACK = grey(0);
    public static final Ink DARK = grey(0.3);
    public static final Ink MIDDLE = grey(0.55);
    public static final Ink PALE = grey(0.88);
    public static final Ink PAPER = grey(1);
    public static final Ink ALARM = new Ink(0.7, 0.05, 0.05);

    public static Ink grey(double lightness) {
        return new Ink(lightness, lightness, lightness);
    }
}
