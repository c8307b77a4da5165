package spotline.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** The words of the command line with the characters that a POSIX locale has lost, as far as the system still has them. */
final class CommandWords {
    private static final char LOST = '\uFFFD';

    private CommandWords() {}

    static String[] recovered(String[] args) {
        boolean lost = Arrays.stream(args).anyMatch(arg -> arg.indexOf(LOST) >= 0);
        if (!lost) return args;
        try {
            return recovered(args, Files.readAllBytes(Path.of("/proc/self/cmdline")));
        } catch (IOException notOnThisSystem) {
            return args;
        }
    }

    /** @param raw the bytes of all words of the process, each with a zero behind it */
    static String[] recovered(String[] args, byte[] raw) {
        List<String> words = new ArrayList<>();
        int start = 0;
        for (int i = 0; i < raw.length; i++) {
            if (raw[i] != 0) continue;
            words.add(new String(raw, start, i - start, StandardCharsets.UTF_8));
            start = i + 1;
        }
        int before = words.size() - args.length;
        if (before < 0) return args;
        String[] found = new String[args.length];
        for (int i = 0; i < args.length; i++) {
            String word = words.get(before + i);
            boolean intact = args[i].indexOf(LOST) < 0;
            if (intact && !args[i].equals(word)) return args;
            found[i] = word;
        }
        return found;
    }
}
