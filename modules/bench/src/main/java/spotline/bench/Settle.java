package spotline.bench;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.DoubleNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.IntFunction;
import spotline.analysis.intensity.Intensity;
import spotline.core.ReadException;
import spotline.core.Work;
import spotline.reference.Line;
import spotline.run.InputFiles;
import spotline.run.RunResult;
import spotline.run.document.Edit;
import spotline.run.document.Edits;
import spotline.run.document.HandEdits;
import spotline.run.document.History;
import spotline.run.document.Keeper;
import spotline.run.document.LivingRun;
import spotline.run.document.RunDocument;
import spotline.run.document.Scope;
import spotline.spectra.Window;

/**
 * How long a holder of 20 spots takes to settle after one edit on one spot: the spots are those of the demonstration, over
 * and over. Every edit is a new one, so that nothing of it is remembered. Arguments: the demonstration's folder, threads (1), part of a kind's
 * name to run it alone.
 */
public final class Settle {
    private static final int SPOTS = 20;
    private static final int WARM_UP = 40;
    private static final int MEASURED = 60;
    private static final String EDITED = "5";

    private Settle() {}

    public static void main(String[] args) throws ReadException {
        Path folder = Path.of(args[0]);
        int threads = args.length > 1 ? Integer.parseInt(args[1]) : 1;
        RunDocument demo = RunDocument.read(folder.resolve("footbridge-bearing.json"), 1);
        RunDocument document = RunDocument.of("twenty spots", repeated(demo.tree()), 1);
        try (LivingRun run = new LivingRun(
                History.of(document),
                InputFiles.in(folder),
                HandEdits.NOTHING_ASKED,
                Keeper.NOBODY,
                "bench",
                threads)) {
            long since = System.nanoTime();
            RunResult first = run.settle(Work.UNWATCHED);
            System.out.printf(Locale.ROOT, "first settling %.0f ms%n", (System.nanoTime() - since) / 1e6);
            Map<String, IntFunction<Edit>> kinds = kinds(run, first);
            String only = args.length > 2 ? args[2] : "";
            for (Map.Entry<String, IntFunction<Edit>> kind : kinds.entrySet()) {
                if (!kind.getKey().contains(only)) continue;
                double[] millis = new double[MEASURED];
                double[] busy = new double[MEASURED];
                for (int i = -WARM_UP; i < MEASURED; i++) {
                    Edit edit = kind.getValue().apply(i + WARM_UP);
                    since = System.nanoTime();
                    long worked = threadTime();
                    run.apply(edit);
                    run.settle(Work.UNWATCHED);
                    if (i >= 0) {
                        millis[i] = (System.nanoTime() - since) / 1e6;
                        busy[i] = (threadTime() - worked) / 1e6;
                    }
                    run.undo();
                }
                Arrays.sort(millis);
                Arrays.sort(busy);
                System.out.printf(
                        Locale.ROOT,
                        "%-30s processor time: median %6.1f ms, longest %6.1f ms; wall: median %6.1f ms, 95 %% %6.1f ms, longest %6.1f ms%n",
                        kind.getKey(),
                        busy[MEASURED / 2],
                        busy[MEASURED - 1],
                        millis[MEASURED / 2],
                        millis[MEASURED * 95 / 100],
                        millis[MEASURED - 1]);
            }
        }
    }

    /** Of this thread: what the machine does beside it does not count. Worth reading with one thread. */
    private static long threadTime() {
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    }

    private static Map<String, IntFunction<Edit>> kinds(LivingRun run, RunResult first) {
        List<Intensity> narrow = new ArrayList<>();
        first.spots().stream()
                .filter(s -> s.spot().equals(EDITED))
                .findFirst()
                .orElseThrow()
                .intensities()
                .forEach(m -> narrow.add(m.intensity()));
        Line line = Line.parse("O 1s");
        Window used = narrow.stream()
                .filter(i -> i.line().equals(line))
                .findFirst()
                .orElseThrow()
                .window();
        Map<String, IntFunction<Edit>> kinds = new LinkedHashMap<>();
        kinds.put(
                "window of a line",
                i -> Edits.window(
                        run.document(), EDITED, line, new Window(used.lowEv() + 0.001 * i, used.highEv() - 0.5)));
        kinds.put(
                "background of a line",
                i -> Edits.background(
                        run.document(),
                        Scope.spot(EDITED),
                        line,
                        JsonNodeFactory.instance
                                .objectNode()
                                .put("kind", "linear")
                                .put("endpointChannels", 2 + i)));
        kinds.put(
                "a setting of all its lines",
                i -> Edits.setting(
                        run.document(),
                        Scope.spot(EDITED),
                        "/narrow/smallestMarginEv",
                        DoubleNode.valueOf(3 + 0.001 * i)));
        kinds.put(
                "reference moved, all refitted",
                i -> Edits.charge(
                        run.document(),
                        Scope.spot(EDITED),
                        JsonNodeFactory.instance
                                .objectNode()
                                .put("method", "fixed")
                                .put("shiftEv", -2.5 + 0.001 * i)
                                .put("reason", "bench")));
        return kinds;
    }

    private static ObjectNode repeated(ObjectNode tree) {
        ArrayNode given = (ArrayNode) tree.get("spots");
        ArrayNode spots = JsonNodeFactory.instance.arrayNode();
        for (int i = 0; i < SPOTS; i++) {
            spots.add(((ObjectNode) given.get(i % given.size()).deepCopy()).put("id", "" + (i + 1)));
        }
        tree.set("spots", spots);
        return tree;
    }
}
