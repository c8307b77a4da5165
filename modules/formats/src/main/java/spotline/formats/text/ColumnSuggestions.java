package spotline.formats.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import spotline.core.Decimal;

/**
 * What the columns of a text file seem to be, each with its reason: for a person to check and declare, never used.
 *
 * <p>Source: the words that writers put into header lines are common practice, no source.
 */
final class ColumnSuggestions {
    private static final String NUMBER = "([0-9]{1,6}(?:[.,][0-9]{1,6})?)";
    private static final Pattern BINDING = Pattern.compile("binding|\\bb\\.?\\s?e\\.?(?![a-z])");
    private static final Pattern KINETIC = Pattern.compile("kinetic|\\bk\\.?\\s?e\\.?(?![a-z])");
    private static final Pattern RATE = Pattern.compile("counts? ?(/|per) ?s|\\bcps\\b|\\bc/s\\b|counts s-1");
    private static final Pattern PHOTON =
            Pattern.compile("(?:photon|excitation|source|x-?ray|h ?nu|\\bhv\\b)[^0-9\\n]{0,40}?" + NUMBER);
    private static final Pattern PASS = Pattern.compile("pass ?energy[^0-9\\n]{0,20}?" + NUMBER);
    private static final Pattern DWELL = Pattern.compile("dwell[^0-9\\n]{0,20}?" + NUMBER);
    private static final Pattern SCANS = Pattern.compile("(?:scans|sweeps)[^0-9\\n]{0,20}?([0-9]{1,6})");

    private final List<ColumnCourse> courses;
    private final String header;
    private final List<TextLook.Suggestion> all = new ArrayList<>();

    ColumnSuggestions(List<ColumnCourse> courses, List<String> comments) {
        this.courses = courses;
        this.header = String.join("\n", comments).toLowerCase(Locale.ROOT);
    }

    /** In the order of the holder run's fields; a field of which nothing can be said is left out. */
    List<TextLook.Suggestion> all() {
        int energy = energy();
        int ordinate = ordinate(energy);
        scale();
        kind(ordinate);
        number("dwellSeconds", DWELL);
        number("scans", SCANS);
        number("passEnergyEv", PASS);
        number("photonEnergyEv", PHOTON);
        return all;
    }

    private void suggest(String field, String value, String reason) {
        all.add(new TextLook.Suggestion(field, value, reason));
    }

    private int energy() {
        int found = -1;
        for (int k = courses.size() - 1; k >= 0; k--) {
            ColumnCourse c = courses.get(k);
            if (!c.runsOneWay() || !c.withinEnergies()) continue;
            if (found < 0 || c.equalSteps() || !courses.get(found).equalSteps()) found = k;
        }
        if (found < 0) return found;
        ColumnCourse c = courses.get(found);
        String steps = c.equalSteps() ? " in equal steps" : "";
        suggest(
                "energy",
                Integer.toString(found + 1),
                "it runs one way" + steps + ", from " + Decimal.text(c.first()) + " to " + Decimal.text(c.last()));
        return found;
    }

    private int ordinate(int energy) {
        for (int k = 0; k < courses.size(); k++) {
            if (k == energy || !courses.get(k).changes() || !courses.get(k).neverNegative()) continue;
            suggest("ordinate", Integer.toString(k + 1), "the first other column that changes and is never negative");
            return k;
        }
        return -1;
    }

    private void scale() {
        boolean binding = BINDING.matcher(header).find();
        boolean kinetic = KINETIC.matcher(header).find();
        if (binding == kinetic) return;
        String word = binding ? "binding" : "kinetic";
        suggest("scale", "\"" + word + "\"", "the lines above speak of " + word + " energy");
    }

    private void kind(int ordinate) {
        if (RATE.matcher(header).find()) {
            suggest("ordinateKind", "\"counts-per-second\"", "the lines above speak of counts per second");
        } else if (ordinate >= 0 && courses.get(ordinate).wholeNumbers()) {
            suggest("ordinateKind", "\"counts\"", "all its values are whole numbers");
        }
    }

    private void number(String field, Pattern pattern) {
        Matcher matcher = pattern.matcher(header);
        if (!matcher.find()) return;
        double value = Double.parseDouble(matcher.group(1).replace(',', '.'));
        if (value > 0) suggest(field, Decimal.text(value), "the lines above say so");
    }
}
