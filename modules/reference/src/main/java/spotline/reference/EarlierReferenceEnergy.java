package spotline.reference;

/** A superseded reference energy, to recognise how an old data set was calibrated: set, line and binding energy in eV. */
public record EarlierReferenceEnergy(String set, String line, double bindingEv, String note, String source) {}
