package spotline.reference;

/**
 * A chemical element.
 *
 * <p>Shape: one element. Units: atomic weight in g/mol. Errors: {@link IllegalArgumentException} for a number below 1, an
 * empty symbol or a weight that is not above 0. Source: IUPAC/CIAAW abridged standard atomic weights 2021 (from memory,
 * checked against Elam, Ravel, Sieber 2002); the mass number of the longest-lived isotope where there is no standard
 * weight.
 *
 * @param name IUPAC name in English, lower case
 */
public record Element(int z, String symbol, String name, double atomicWeight) implements Comparable<Element> {
    public Element {
        if (z < 1) throw new IllegalArgumentException("atomic number must be 1 or more, was " + z);
        if (symbol.isEmpty() || name.isEmpty()) throw new IllegalArgumentException("an element needs symbol and name");
        if (!(atomicWeight > 0)) {
            throw new IllegalArgumentException("atomic weight must be above 0 g/mol, was " + atomicWeight);
        }
    }

    @Override
    public int compareTo(Element other) {
        return Integer.compare(z, other.z);
    }

    @Override
    public String toString() {
        return symbol;
    }
}
