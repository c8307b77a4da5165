package spotline.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** Names of result directories for several holder runs: plain, and each once on any file system. */
final class SafeNames {
    private static final int LONGEST = 80;

    private SafeNames() {}

    static List<String> of(List<Path> files) {
        Set<String> used = new HashSet<>();
        List<String> names = new ArrayList<>();
        for (Path file : files) {
            String plain = plain(file);
            String name = plain;
            for (int i = 2; !used.add(name.toLowerCase(Locale.ROOT)); i++) name = plain + "-" + i;
            names.add(name);
        }
        return names;
    }

    private static String plain(Path file) {
        String last = String.valueOf(file.getFileName());
        int dot = last.lastIndexOf('.');
        String stem = dot > 0 ? last.substring(0, dot) : last;
        String plain = stem.replaceAll("[^A-Za-z0-9._-]", "_").replaceAll("^[.]+", "_");
        if (plain.isEmpty()) return "run";
        return plain.length() <= LONGEST ? plain : plain.substring(0, LONGEST);
    }
}
