package spotline.formats.iso14976;

/** An experimental or corresponding variable. */
public record Variable(String label, String unit) {
    public Variable {
        Text.check("label of a variable", label);
        Text.check("unit of a variable", unit);
    }
}
