package spotline.formats.iso14976;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import spotline.core.ReadException;
import spotline.formats.source.LineSource;
import spotline.formats.source.NumberText;
import spotline.formats.source.ReadLimits;
import spotline.formats.source.Warnings;

/** Answers each field with the next line of the file, and says what is wrong with the line when it cannot. */
final class ParserPort implements ItemPort {
    /** Room for ordinates that is taken before any of them has been read, when the file's length is not known. */
    private static final int FIRST_ROOM = 1 << 16;

    private final LineSource lines;
    private final ReadLimits limits;
    private final Warnings warnings;
    private BitSet carried = InclusionList.COMPLETE.carried();

    private boolean endsKnown;
    private boolean endsCrLf;
    private boolean endsMixed;

    ParserPort(LineSource lines, ReadLimits limits, Warnings warnings) {
        this.lines = lines;
        this.limits = limits;
        this.warnings = warnings;
    }

    /** Sets which items the next block carries. */
    void carry(BitSet items) {
        carried = items;
    }

    ReadException fault(String found, String expected) {
        return new ReadException(lines.place(), found, expected);
    }

    /** Moves to the line of a field. */
    private void advance(String field) throws ReadException {
        if (!lines.next()) throw fault("the file ends here", field + " on a line after it");
        watchLineEnd();
    }

    void watchLineEnd() {
        if (!lines.terminated() || endsMixed) return;
        if (!endsKnown) {
            endsKnown = true;
            endsCrLf = lines.crLf();
            if (lines.loneCarriageReturns()) {
                warnings.note(
                        "iso14976-cr-line-ends", lines.line(), "the lines end with CR alone, as on computers of old");
            }
        } else if (lines.crLf() != endsCrLf) {
            endsMixed = true;
            String here = lines.crLf() ? "CR LF" : "LF";
            String before = lines.crLf() ? "LF" : "CR LF";
            warnings.note(
                    "iso14976-mixed-line-ends",
                    lines.line(),
                    "the line ends with " + here + ", the lines before it with " + before);
        }
    }

    @Override
    public boolean item(int number) {
        return carried.get(number);
    }

    @Override
    public void neverGiven(String field) {
        warnings.caution(
                "iso14976-item-never-given",
                lines.line(),
                "the inclusion or exclusion list leaves out " + field
                        + ", which the block before does not have; it is taken as not known");
    }

    @Override
    public String text(String field, String current) throws ReadException {
        advance(field);
        if (lines.beyondAscii()) {
            warnings.note(
                    "iso14976-not-ascii",
                    lines.line(),
                    field + " has characters beyond ASCII, " + lines.quoted() + "; kept as they read");
            return lines.text();
        }
        return holds(current, lines.start(), lines.end()) ? current : lines.text();
    }

    private boolean holds(String text, int from, int to) {
        if (text.length() != to - from) return false;
        byte[] bytes = lines.bytes();
        for (int i = from; i < to; i++) if (bytes[i] != text.charAt(i - from)) return false;
        return true;
    }

    @Override
    public Real number(String field, Real current) throws ReadException {
        advance(field);
        int from = trimmedStart();
        int to = trimmedEnd(from);
        if (holds(current.text(), from, to)) {
            notePadding(field);
            return current;
        }
        double value = NumberText.parse(lines.bytes(), from, to);
        if (Double.isNaN(value)) throw fault("found " + lines.quoted(), "a number: " + field);
        notePadding(field);
        return Real.read(value, new String(lines.bytes(), from, to - from, StandardCharsets.US_ASCII));
    }

    private int trimmedStart() {
        byte[] bytes = lines.bytes();
        int from = lines.start();
        while (from < lines.end() && isBlank(bytes[from])) from++;
        return from;
    }

    private int trimmedEnd(int from) {
        byte[] bytes = lines.bytes();
        int to = lines.end();
        while (to > from && isBlank(bytes[to - 1])) to--;
        return to;
    }

    private static boolean isBlank(byte b) {
        return b == ' ' || b == '\t';
    }

    private void notePadding(String field) {
        boolean padded = lines.start() < lines.end()
                && (isBlank(lines.bytes()[lines.start()]) || isBlank(lines.bytes()[lines.end() - 1]));
        if (padded) {
            warnings.note("iso14976-padded-value", lines.line(), field + " has blanks beside it, " + lines.quoted());
        }
    }

    @Override
    public int whole(String field, int current, int least, int greatest) throws ReadException {
        Real number = number(field, Real.UNKNOWN);
        int value = number.whole().orElse(Integer.MIN_VALUE);
        if (number.whole().isEmpty() || value < least || value > greatest) {
            throw fault("found " + lines.quoted(), "a whole number from " + least + " to " + greatest + ": " + field);
        }
        return value;
    }

    @Override
    public int count(String field, int current) throws ReadException {
        return whole(field, current, 0, limits.listEntries());
    }

    @Override
    public <T extends Enum<T> & Word> T choice(String field, T current, Class<T> type) throws ReadException {
        advance(field);
        String found = lines.text().strip();
        T[] all = type.getEnumConstants();
        for (T one : all) {
            if (one.word().equals(found)) {
                notePadding(field);
                return one;
            }
        }
        for (T one : all) {
            if (one.word().equalsIgnoreCase(found)) {
                noteCase(field, one.word());
                return one;
            }
        }
        String words = Stream.of(all).map(Word::word).collect(Collectors.joining(", "));
        throw fault("found " + lines.quoted(), field + ", one of " + words);
    }

    private void noteCase(String field, String word) {
        warnings.note(
                "iso14976-keyword-case",
                lines.line(),
                field + " is spelled " + lines.quoted() + ", in the standard \"" + word + "\"");
    }

    @Override
    public String word(String field, String current, List<String> words) throws ReadException {
        String found = text(field, current);
        String stripped = found.strip();
        if (words.contains(stripped)) {
            notePadding(field);
            return found;
        }
        for (String word : words) {
            if (word.equalsIgnoreCase(stripped)) {
                noteCase(field, word);
                return found;
            }
        }
        warnings.note(
                "iso14976-unusual-word",
                lines.line(),
                field + " is " + lines.quoted() + ", which is none of " + String.join(", ", words)
                        + "; kept as it stands");
        return found;
    }

    @Override
    public Ordinates ordinates(List<Variable> variables, Ordinates current) throws ReadException {
        int v = variables.size();
        if (v == 0) throw fault("found no corresponding variable", "1 or more corresponding variables");
        int count = whole("number of ordinate values", 0, 0, limits.valuesPerBlock());
        if (count % v != 0) {
            throw fault(
                    "found " + count + " ordinate values",
                    "a multiple of the " + v + " corresponding variables: number of ordinate values");
        }
        List<Real> minima = new ArrayList<>();
        List<Real> maxima = new ArrayList<>();
        List<Integer> minimumLines = new ArrayList<>();
        for (int k = 0; k < v; k++) {
            String of = " ordinate value of \"" + variables.get(k).label() + "\"";
            minima.add(number(
                    "minimum" + of, k < current.variables() ? current.minima().get(k) : Real.UNKNOWN));
            minimumLines.add(lines.line());
            maxima.add(number(
                    "maximum" + of, k < current.variables() ? current.maxima().get(k) : Real.UNKNOWN));
        }
        Ordinates ordinates = Ordinates.owning(minima, maxima, values(v, count));
        for (int k = 0; count > 0 && k < v; k++) {
            checkExtremes(variables.get(k), minima.get(k), maxima.get(k), ordinates, k, minimumLines.get(k));
        }
        return ordinates;
    }

    private double[][] values(int variables, int count) throws ReadException {
        int points = count / variables;
        // Each value takes at least a digit and a line end, so a count the file cannot hold takes no room.
        long possible = lines.sizeKnown() ? lines.bytesLeft() / (2L * variables) + 1 : FIRST_ROOM / variables + 1;
        double[][] values = new double[variables][(int) Math.min(points, possible)];
        for (int i = 0; i < points; i++) {
            if (i == values[0].length) {
                int room = (int) Math.min(points, 2L * i + 1);
                for (int k = 0; k < variables; k++) values[k] = Arrays.copyOf(values[k], room);
            }
            for (int k = 0; k < variables; k++) values[k][i] = value(i * variables + k, count);
        }
        return values;
    }

    private double value(int index, int count) throws ReadException {
        if (lines.next()) {
            watchLineEnd();
            double value = NumberText.parse(lines.bytes(), lines.start(), lines.end());
            if (!Double.isNaN(value)) return value;
            int from = trimmedStart();
            value = NumberText.parse(lines.bytes(), from, trimmedEnd(from));
            if (!Double.isNaN(value)) {
                notePadding("ordinate value");
                return value;
            }
        } else {
            throw fault("the file ends here", ordinal(index, count) + " on a line after it");
        }
        throw fault("found " + lines.quoted(), "a number: " + ordinal(index, count));
    }

    private static String ordinal(int index, int count) {
        return String.format(Locale.ROOT, "ordinate value %d of %d", index + 1, count);
    }

    private void checkExtremes(Variable variable, Real minimum, Real maximum, Ordinates ordinates, int k, int line) {
        double least = ordinates.leastOf(k);
        double greatest = ordinates.greatestOf(k);
        if (agrees(minimum, least) && agrees(maximum, greatest)) return;
        warnings.note(
                "iso14976-minimum-maximum",
                line,
                "minimum and maximum of \"" + variable.label() + "\" are given as " + minimum + " and " + maximum
                        + ", the values run from " + NumberText.exact(least) + " to " + NumberText.exact(greatest)
                        + "; the values are used");
    }

    /** Writers round the extremes: a difference in the sixth digit is no contradiction. */
    private static boolean agrees(Real stated, double found) {
        double tolerance = 1e-5 * Math.max(Math.abs(found), Math.abs(stated.raw()));
        return Math.abs(stated.raw() - found) <= tolerance;
    }
}
