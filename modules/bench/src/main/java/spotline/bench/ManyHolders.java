package spotline.bench;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import spotline.core.ReadException;
import spotline.core.Work;
import spotline.reference.ReferenceData;
import spotline.run.HolderRun;
import spotline.run.HolderRunLoader;
import spotline.run.InputFiles;
import spotline.run.RunPipeline;
import spotline.run.RunResult;
import spotline.run.RunSource;
import spotline.run.document.RunDocument;
import spotline.run.findings.RuleBook;

/**
 * Many holder runs with one and with two threads, in turn with a kernel of nothing but arithmetic, which shows what a second
 * thread can bring on the machine at that moment; and the memory that is left in use as their number grows. Arguments: a
 * holder run, how many times (200).
 */
public final class ManyHolders {
    private static final int ROUNDS = 5;
    private static final int SPECTRA = 40;
    private static final long ARITHMETIC = 400_000_000L;

    private ManyHolders() {}

    public static void main(String[] args) throws Exception {
        RunSource source = source(Path.of(args[0]));
        int count = args.length > 1 ? Integer.parseInt(args[1]) : 200;
        int share = Math.max(2, count / (2 * ROUNDS));
        runs(source, 4, 2);
        long used = used();
        System.out.printf(Locale.ROOT, "in use after warm-up %.1f MB%n", used / 1e6);
        double[] walls = new double[4];
        for (int round = 0; round < ROUNDS; round++) {
            walls[0] += runs(source, share, 1);
            walls[2] += arithmetic(1);
            walls[1] += runs(source, share, 2);
            walls[3] += arithmetic(2);
            System.out.printf(
                    Locale.ROOT,
                    "after %d holder runs: in use %.1f MB; scaling %.3f, of arithmetic %.3f, share %.3f%n",
                    2 * share * (round + 1),
                    used() / 1e6,
                    walls[0] / walls[1],
                    walls[2] / walls[3],
                    walls[0] / walls[1] / (walls[2] / walls[3]));
        }
    }

    /** The holder run's spots over and over, until they have as many spectra as the bar asks for. */
    private static RunSource source(Path holder) throws ReadException {
        RunDocument demo = RunDocument.read(holder, 1);
        InputFiles files = InputFiles.in(holder.resolveSibling(""));
        ObjectNode tree = demo.tree();
        ArrayNode given = (ArrayNode) tree.get("spots");
        ArrayNode spots = JsonNodeFactory.instance.arrayNode();
        tree.set("spots", spots);
        int spectra = 0;
        RunSource source = new RunSource("given", demo.file(), Optional.empty(), files, 1);
        while (spectra < SPECTRA) {
            ObjectNode spot = given.get(spots.size() % given.size()).deepCopy();
            spots.add(spot.put("id", "" + (spots.size() + 1)));
            RunDocument document = RunDocument.of("repeated", tree, 1);
            source = new RunSource("repeated", document.file(), Optional.empty(), files, 1);
            HolderRun run = new HolderRunLoader(ReferenceData.shipped()).load(source, Work.UNWATCHED);
            spectra = run.spots().stream().mapToInt(s -> s.spectra().size()).sum();
        }
        System.out.printf(Locale.ROOT, "%d spots, %d spectra a holder run%n", spots.size(), spectra);
        return source;
    }

    private static double runs(RunSource source, int count, int threads) throws Exception {
        return timed(threads, count, () -> {
            ReferenceData reference = ReferenceData.shipped();
            HolderRun run = new HolderRunLoader(reference).load(source, Work.UNWATCHED);
            RunResult result = new RunPipeline(reference, "bench", RuleBook.standard()).treat(run, 1, Work.UNWATCHED);
            if (result.spots().size() != run.spots().size()) throw new IllegalStateException("a spot is missing");
        });
    }

    /** The same work in all whatever the threads. */
    private static double arithmetic(int threads) throws Exception {
        double[] kept = new double[2];
        double wall = timed(threads, 2, () -> {
            double a = 0.5;
            for (long k = 0; k < ARITHMETIC; k++) a = Math.fma(a, 0.999, 0.1);
            synchronized (kept) {
                kept[0] += a;
            }
        });
        if (Double.isNaN(kept[0])) throw new IllegalStateException("the kernel went wrong");
        return wall;
    }

    private interface Job {
        void run() throws Exception;
    }

    private static double timed(int threads, int count, Job job) throws Exception {
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        try {
            long since = System.nanoTime();
            List<Future<?>> futures = new ArrayList<>();
            for (int i = 0; i < count; i++) {
                futures.add(pool.submit(() -> {
                    job.run();
                    return null;
                }));
            }
            for (Future<?> future : futures) future.get();
            return (System.nanoTime() - since) / 1e9;
        } finally {
            pool.shutdownNow();
        }
    }

    private static long used() {
        System.gc();
        System.gc();
        return ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed();
    }
}
