package spotline.report;

import java.text.Normalizer;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/**
 * File names for samples: a number that makes them unique and keeps their order, then what is left of the name when only
 * plain letters, digits and single hyphens may stay. A name from a file never leads anywhere else.
 */
final class SampleFileNames {
    private static final int LONGEST = 48;

    private SampleFileNames() {}

    static List<String> of(List<String> samples) {
        int digits = Math.max(2, Integer.toString(samples.size()).length());
        return IntStream.range(0, samples.size())
                .mapToObj(i -> String.format(Locale.ROOT, "%0" + digits + "d", i + 1) + plain(samples.get(i)))
                .toList();
    }

    private static String plain(String name) {
        String letters = Normalizer.normalize(name, Normalizer.Form.NFKD)
                .toLowerCase(Locale.ROOT)
                .replaceAll("\\p{M}+", "")
                .replaceAll("[^a-z0-9]+", "-")
                .replaceAll("^-+|-+$", "");
        String cut = letters.substring(0, Math.min(LONGEST, letters.length())).replaceAll("-+$", "");
        return cut.isEmpty() ? "" : "-" + cut;
    }
}
