package spotline.formats.iso14976;

import java.util.ArrayList;
import java.util.List;
import spotline.core.ReadException;

/**
 * One field after another in the standard's order: a parser's port answers with what the file holds, a writer's port
 * writes what it is given and hands it back. So the order of the fields is stated once, for both.
 */
interface ItemPort {
    /** Begins the item with a prefix number; false when this block does not carry it. */
    boolean item(int number);

    /** An item applies, is not carried, and the block before has no value for it: it stays "not known". */
    void neverGiven(String field);

    String text(String field, String current) throws ReadException;

    Real number(String field, Real current) throws ReadException;

    /** A whole number from {@code least} to {@code greatest}. */
    int whole(String field, int current, int least, int greatest) throws ReadException;

    /** The number of entries of a list. */
    int count(String field, int current) throws ReadException;

    <T extends Enum<T> & Word> T choice(String field, T current, Class<T> type) throws ReadException;

    /** A text for which the standard has words, but on which nothing in the file's structure depends. */
    String word(String field, String current, List<String> words) throws ReadException;

    /** The number of ordinate values, the minimum and maximum of each variable, and the values. */
    Ordinates ordinates(List<Variable> variables, Ordinates current) throws ReadException;

    /** A list of texts behind its count. */
    default List<String> texts(String countField, String field, List<String> current) throws ReadException {
        return texts(count(countField, current.size()), field, current);
    }

    default List<String> texts(int count, String field, List<String> current) throws ReadException {
        List<String> texts = new ArrayList<>();
        for (int i = 0; i < count; i++)
            texts.add(text(field + " " + (i + 1), i < current.size() ? current.get(i) : ""));
        return same(texts, current);
    }

    default List<Variable> variables(String countField, String field, List<Variable> current) throws ReadException {
        int count = count(countField, current.size());
        List<Variable> variables = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            Variable before = i < current.size() ? current.get(i) : new Variable("", "");
            String label = text("label of " + field + " " + (i + 1), before.label());
            String unit = text("units of " + field + " " + (i + 1), before.unit());
            variables.add(new Variable(label, unit));
        }
        return same(variables, current);
    }

    default List<Real> numbers(int count, String field, List<Real> current) throws ReadException {
        List<Real> numbers = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            numbers.add(number(field + " " + (i + 1), i < current.size() ? current.get(i) : Real.UNKNOWN));
        }
        return same(numbers, current);
    }

    default List<Integer> wholes(int count, String field, List<Integer> current, int least, int greatest)
            throws ReadException {
        List<Integer> wholes = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            int before = i < current.size() ? current.get(i) : least;
            wholes.add(whole(field + " " + (i + 1), before, least, greatest));
        }
        return wholes;
    }

    /** The list of the block before where nothing changed: the blocks of a map share one. */
    private static <T> List<T> same(List<T> read, List<T> current) {
        return read.equals(current) ? current : read;
    }
}
