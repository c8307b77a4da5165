package spotline.formats.iso14976;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import spotline.spectra.HeaderField;

/** Hands every field back as it is and keeps a list of them: name and text, in file order, ordinates left out. */
final class FieldLister implements ItemPort {
    private final List<HeaderField> fields = new ArrayList<>();
    private final BitSet wanted;
    private boolean listening = true;

    /** Lists the identifiers and every item. */
    FieldLister() {
        this(InclusionList.COMPLETE.carried());
    }

    /** Lists the identifiers and the items with these prefix numbers. */
    FieldLister(BitSet wanted) {
        this.wanted = wanted;
    }

    List<HeaderField> fields() {
        return fields;
    }

    private void list(String name, String text) {
        if (listening) fields.add(new HeaderField(name, text));
    }

    @Override
    public boolean item(int number) {
        listening = wanted.get(number);
        return true;
    }

    @Override
    public void neverGiven(String field) {}

    @Override
    public String text(String field, String current) {
        list(field, current);
        return current;
    }

    @Override
    public Real number(String field, Real current) {
        list(field, current.text());
        return current;
    }

    @Override
    public int whole(String field, int current, int least, int greatest) {
        list(field, Integer.toString(current));
        return current;
    }

    @Override
    public int count(String field, int current) {
        list(field, Integer.toString(current));
        return current;
    }

    @Override
    public <T extends Enum<T> & Word> T choice(String field, T current, Class<T> type) {
        list(field, current.word());
        return current;
    }

    @Override
    public String word(String field, String current, List<String> words) {
        list(field, current);
        return current;
    }

    @Override
    public Ordinates ordinates(List<Variable> variables, Ordinates current) {
        return current;
    }
}
