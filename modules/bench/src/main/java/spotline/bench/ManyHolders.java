package spotline.bench;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
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
    private static final int WARM_UP = 30;
    private static final int STRETCH = 4;
    private static final OperatingSystemMXBean BEAN =
            (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
    private static final int SPECTRA = 40;
    private static final int ARITHMETIC = 100_000_000;

    private ManyHolders() {}

    public static void main(String[] args) throws Exception {
        RunSource source = source(Path.of(args[0]));
        int count = args.length > 1 ? Integer.parseInt(args[1]) : 200;
        runs(source, WARM_UP, 2);
        arithmetic(1);
        arithmetic(2);
        System.out.printf(Locale.ROOT, "in use after warm-up %.1f MB%n", used() / 1e6);
        List<Double> shares = new ArrayList<>();
        Timed one = new Timed(0, 0);
        Timed two = new Timed(0, 0);
        Timed kernelOne = new Timed(0, 0);
        Timed kernelTwo = new Timed(0, 0);
        int done = 0;
        while (done < count) {
            Timed a = runs(source, STRETCH, 1);
            Timed k = arithmetic(1);
            Timed b = runs(source, STRETCH, 2);
            Timed m = arithmetic(2);
            done += 2 * STRETCH;
            one = one.plus(a);
            two = two.plus(b);
            kernelOne = kernelOne.plus(k);
            kernelTwo = kernelTwo.plus(m);
            shares.add(a.wall() / b.wall() / (k.wall() / m.wall()));
            if (done % 50 < 2 * STRETCH) {
                System.out.printf(Locale.ROOT, "after %d holder runs in use %.1f MB%n", done, used() / 1e6);
            }
        }
        Collections.sort(shares);
        System.out.printf(
                Locale.ROOT,
                "a holder run: processor time %.0f ms with one thread, %.0f ms with two%n"
                        + "wall: %.2f times faster with two, arithmetic %.2f times; share %.2f, median of rounds %.2f%n"
                        + "arithmetic: processor time with two over one %.2f%n",
                2e3 * one.busy() / done,
                2e3 * two.busy() / done,
                one.wall() / two.wall(),
                kernelOne.wall() / kernelTwo.wall(),
                one.wall() / two.wall() / (kernelOne.wall() / kernelTwo.wall()),
                shares.get(shares.size() / 2),
                kernelTwo.busy() / kernelOne.busy());
    }

    /** Seconds on the clock, and of the processor. */
    private record Timed(double wall, double busy) {
        Timed plus(Timed other) {
            return new Timed(wall + other.wall, busy + other.busy);
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

    private static Timed runs(RunSource source, int count, int threads) throws Exception {
        return timed(threads, count, () -> {
            ReferenceData reference = ReferenceData.shipped();
            HolderRun run = new HolderRunLoader(reference).load(source, Work.UNWATCHED);
            RunResult result = new RunPipeline(reference, "bench", RuleBook.standard()).treat(run, 1, Work.UNWATCHED);
            if (result.spots().size() != run.spots().size()) throw new IllegalStateException("a spot is missing");
        });
    }

    /** The same work in all whatever the threads. */
    private static Timed arithmetic(int threads) throws Exception {
        double[] kept = new double[2];
        Timed timed = timed(threads, 4, () -> {
            double value = kernel();
            synchronized (kept) {
                kept[0] += value;
            }
        });
        if (Double.isNaN(kept[0])) throw new IllegalStateException("the kernel went wrong");
        return timed;
    }

    private static double kernel() {
        double a = 0.5;
        double b = 0.25;
        double c = 0.75;
        double d = 0.125;
        for (int k = 0; k < ARITHMETIC; k++) {
            a = Math.fma(a, 0.999, 0.1);
            b = Math.fma(b, 0.998, 0.1);
            c = Math.fma(c, 0.997, 0.1);
            d = Math.fma(d, 0.996, 0.1);
        }
        return a + b + c + d;
    }

    private interface Job {
        void run() throws Exception;
    }

    private static Timed timed(int threads, int count, Job job) throws Exception {
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        try {
            long since = System.nanoTime();
            long busy = BEAN.getProcessCpuTime();
            List<Future<?>> futures = new ArrayList<>();
            for (int i = 0; i < count; i++) {
                futures.add(pool.submit(() -> {
                    job.run();
                    return null;
                }));
            }
            for (Future<?> future : futures) future.get();
            return new Timed((System.nanoTime() - since) / 1e9, (BEAN.getProcessCpuTime() - busy) / 1e9);
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
