package spotline.formats.iso14976;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.BitSet;
import java.util.List;
import spotline.formats.source.NumberText;

/** Writes each field it is given on a line of its own and hands it back. */
final class WriterPort implements ItemPort {
    private final Appendable out;
    private BitSet carried = InclusionList.COMPLETE.carried();

    WriterPort(Appendable out) {
        this.out = out;
    }

    /** Sets which items the next block carries. */
    void carry(BitSet items) {
        carried = items;
    }

    /** Errors: {@link UncheckedIOException} when the line cannot be written. */
    void line(String text) {
        try {
            out.append(text).append('\n');
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public boolean item(int number) {
        return carried.get(number);
    }

    @Override
    public void neverGiven(String field) {}

    @Override
    public String text(String field, String current) {
        line(current);
        return current;
    }

    @Override
    public Real number(String field, Real current) {
        line(current.canonical());
        return current;
    }

    @Override
    public int whole(String field, int current, int least, int greatest) {
        line(Integer.toString(current));
        return current;
    }

    @Override
    public int count(String field, int current) {
        line(Integer.toString(current));
        return current;
    }

    @Override
    public <T extends Enum<T> & Word> T choice(String field, T current, Class<T> type) {
        line(current.word());
        return current;
    }

    @Override
    public String word(String field, String current, List<String> words) {
        line(current);
        return current;
    }

    @Override
    public Ordinates ordinates(List<Variable> variables, Ordinates current) {
        line(Integer.toString(current.size()));
        for (int k = 0; k < current.variables(); k++) {
            number("minimum", current.minima().get(k));
            number("maximum", current.maxima().get(k));
        }
        for (int i = 0; i < current.size(); i++) line(NumberText.exact(current.value(i)));
        return current;
    }
}
