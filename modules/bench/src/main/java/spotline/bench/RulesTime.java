package spotline.bench;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import spotline.core.ReadException;
import spotline.core.Work;
import spotline.holder.HolderRunReader;
import spotline.reference.ReferenceData;
import spotline.run.HolderRun;
import spotline.run.HolderRunLoader;
import spotline.run.InputFiles;
import spotline.run.RunPipeline;
import spotline.run.RunRules;
import spotline.run.RunSource;
import spotline.run.RunView;
import spotline.run.findings.RuleBook;

/** All checks over a holder of twenty spots: those of the demonstration, over and over. Prints ms of processor time. */
public final class RulesTime {
    private static final int SPOTS = 20;
    private static final int WARM_UP = 100;
    private static final int MEASURED = 101;

    private RulesTime() {}

    /** @param arguments the folder of the demonstration */
    public static void main(String[] arguments) throws IOException, ReadException {
        RunView view = view(Path.of(arguments.length > 0 ? arguments[0] : "demo-spectra"));
        RuleBook rules = RuleBook.standard();
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        double[] ms = new double[MEASURED];
        long outcomes = 0;
        for (int i = -WARM_UP; i < MEASURED; i++) {
            long since = threads.getCurrentThreadCpuTime();
            outcomes += rules.judge(view).outcomes().size();
            if (i >= 0) ms[i] = (threads.getCurrentThreadCpuTime() - since) / 1e6;
        }
        Arrays.sort(ms);
        System.out.printf(
                Locale.ROOT,
                "%d checks over %d spots: median %.2f ms, largest %.2f ms%n",
                outcomes / (WARM_UP + MEASURED),
                view.spots().size(),
                ms[MEASURED / 2],
                ms[MEASURED - 1]);
    }

    private static RunView view(Path folder) throws IOException, ReadException {
        Path file = folder.resolve("footbridge-bearing.json");
        ObjectNode holder = (ObjectNode) new ObjectMapper().readTree(Files.readAllBytes(file));
        ArrayNode spots = holder.withArray("/spots");
        int count = spots.size();
        for (int i = count; i < SPOTS; i++) {
            ObjectNode copy = spots.get(i % count).deepCopy();
            spots.add(copy.put("id", "again " + i));
        }
        ReferenceData reference = ReferenceData.shipped();
        RunSource source = new RunSource(
                "twenty.json",
                HolderRunReader.read("twenty.json", holder),
                Optional.empty(),
                InputFiles.beside(file),
                1);
        HolderRun run = new HolderRunLoader(reference).load(source, Work.UNWATCHED);
        AtomicReference<RunView> seen = new AtomicReference<>();
        RunRules looking = view -> {
            seen.set(view);
            return new RunRules.Judged(List.of(), List.of(), List.of(), java.util.Set.of());
        };
        new RunPipeline(reference, "bench", looking).treat(run, 1, Work.UNWATCHED);
        return java.util.Objects.requireNonNull(seen.get());
    }
}
