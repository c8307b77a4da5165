package spotline.reference;

/**
 * Where a line lies in a chemical state. Good for labels and sanity tests, no certified value.
 *
 * @param valueEv middle of the binding energies commonly reported, hydrocarbon C 1s at 285.0 eV
 * @param halfRangeEv usual half range between laboratories, eV
 * @param satellite a shake-up feature that goes with a state, not a state
 * @param representative stands for the line where one position is wanted: the element itself, or its most common state
 *     where the element is never met as such
 */
public record ChemicalState(
        Line line,
        String state,
        double valueEv,
        double halfRangeEv,
        boolean satellite,
        boolean representative,
        String source) {}
