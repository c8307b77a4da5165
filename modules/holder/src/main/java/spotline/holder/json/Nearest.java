package spotline.holder.json;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/** The word somebody probably meant. */
public final class Nearest {
    private Nearest() {}

    /** The nearest of the words, when it is near enough to be a slip: a third of its letters, case aside. */
    public static Optional<String> of(String word, Collection<String> words) {
        String wanted = word.toLowerCase(Locale.ROOT);
        String best = null;
        int least = Integer.MAX_VALUE;
        for (String candidate : words) {
            if (Math.abs(candidate.length() - word.length()) > 8) continue;
            int distance = distance(wanted, candidate.toLowerCase(Locale.ROOT));
            if (distance < least && distance <= slips(candidate.length())) {
                least = distance;
                best = candidate;
            }
        }
        return Optional.ofNullable(best);
    }

    /** In a word of one or two letters any change makes another word, so that only its case may be wrong. */
    private static int slips(int length) {
        return length < 3 ? 0 : Math.max(1, length / 3);
    }

    /** Least number of letters to insert, drop, change or swap with their neighbour (optimal string alignment). */
    private static int distance(String a, String b) {
        int[][] d = new int[a.length() + 1][b.length() + 1];
        for (int i = 0; i <= a.length(); i++) d[i][0] = i;
        for (int j = 0; j <= b.length(); j++) d[0][j] = j;
        for (int i = 1; i <= a.length(); i++) {
            for (int j = 1; j <= b.length(); j++) {
                int change = d[i - 1][j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                d[i][j] = Math.min(change, 1 + Math.min(d[i - 1][j], d[i][j - 1]));
                boolean swapped =
                        i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1);
                if (swapped) d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
            }
        }
        return d[a.length()][b.length()];
    }
}
