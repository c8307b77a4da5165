package spotline.formats.source;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import spotline.core.Finding;
import spotline.core.Place;
import spotline.core.Severity;

/**
 * Gathers the faults a reader can live with: the first of each rule in full with its line, the others counted, so that a
 * file with one habit does not drown its other faults.
 */
public final class Warnings {
    private final String file;
    private final Map<String, Entry> byRule = new LinkedHashMap<>();

    private static final class Entry {
        final Finding first;
        int more;
        int lastLine;

        Entry(Finding first, int line) {
            this.first = first;
            this.lastLine = line;
        }
    }

    public Warnings(String file) {
        this.file = file;
    }

    /** @param line counted from 1; 0 for the whole file */
    public void add(Severity severity, String rule, int line, String message) {
        Entry known = byRule.get(rule);
        if (known == null) {
            Finding finding = Finding.of(severity, rule, at(line) + ": " + message);
            byRule.put(rule, new Entry(finding, line));
        } else {
            known.more++;
            known.lastLine = line;
        }
    }

    public void note(String rule, int line, String message) {
        add(Severity.NOTE, rule, line, message);
    }

    public void caution(String rule, int line, String message) {
        add(Severity.CAUTION, rule, line, message);
    }

    /** One finding a rule, in the order of first sight. */
    public List<Finding> findings() {
        List<Finding> findings = new ArrayList<>();
        for (Entry entry : byRule.values()) findings.add(finding(entry));
        return findings;
    }

    private static Finding finding(Entry entry) {
        Finding first = entry.first;
        if (entry.more == 0) return first;
        String places = entry.more == 1 ? " more place" : " more places";
        String message =
                first.message() + " (and in " + entry.more + places + ", the last at line " + entry.lastLine + ")";
        return Finding.of(first.severity(), first.rule(), message);
    }

    private Place at(int line) {
        return line > 0 ? Place.line(file, line) : Place.file(file);
    }
}
