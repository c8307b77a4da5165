package spotline.formats.iso14976;

/** One of the additional numerical parameters, item 39. */
public record AdditionalParameter(String label, String unit, Real value) {
    static final AdditionalParameter UNKNOWN = new AdditionalParameter("", "", Real.UNKNOWN);

    public AdditionalParameter {
        Text.check("additional parameter label", label);
        Text.check("additional parameter units", unit);
    }
}
