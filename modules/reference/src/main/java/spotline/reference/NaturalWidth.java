package spotline.reference;

/** Natural width of a level: full width at half maximum of its Lorentzian, eV, and the table it comes from. */
public record NaturalWidth(double fwhmEv, String source) {}
