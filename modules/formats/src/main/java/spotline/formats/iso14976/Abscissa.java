package spotline.formats.iso14976;

/** Item 31: the abscissa of a regular scan. A negative increment runs downwards. */
public record Abscissa(String label, String unit, Real start, Real increment) {
    static final Abscissa UNKNOWN = new Abscissa("", "", Real.UNKNOWN, Real.UNKNOWN);

    public Abscissa {
        Text.check("abscissa label", label);
        Text.check("abscissa units", unit);
    }
}
