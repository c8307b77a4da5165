package spotline.bench;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.openjdk.jmh.profile.GCProfiler;
import org.openjdk.jmh.results.IterationResult;
import org.openjdk.jmh.results.Result;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.CommandLineOptionException;
import org.openjdk.jmh.runner.options.CommandLineOptions;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/**
 * Runs the benchmarks and sets the peers side by side: processor time a fit, and how many fits each does in the time that
 * Commons Math with analytic derivatives takes for one, medians over iterations.
 */
public final class Run {
    private static final List<String> PEERS =
            List.of("spotline", "commonsAnalytic", "commonsDifferences", "hipparchusAnalytic");

    private static final List<String> LINES = List.of(
            "voigtNarrowWindow",
            "voigtWideWindow",
            "voigtNearlyGaussian",
            "gaussianLorentzianSum",
            "pointwiseFaddeevaValue");

    private Run() {}

    /** Arguments as JMH takes them: part of a class name runs that class alone. */
    public static void main(String[] args) throws RunnerException, CommandLineOptionException {
        Collection<RunResult> results = new Runner(new OptionsBuilder()
                        .parent(new CommandLineOptions(args))
                        .addProfiler(GCProfiler.class)
                        .build())
                .run();
        StringBuilder out = new StringBuilder();
        out.append(String.format(Locale.ROOT, "%nprocessor: %s, Java %s%n", processor(), Runtime.version()));
        for (RunResult result : results) out.append(lines(result));
        System.out.print(out);
    }

    private static String lines(RunResult result) {
        String name = result.getParams().getBenchmark();
        name = name.substring(name.lastIndexOf('.', name.lastIndexOf('.') - 1) + 1);
        List<Map<String, Result>> iterations = new ArrayList<>();
        result.getBenchmarkResults().forEach(fork -> {
            for (IterationResult iteration : fork.getIterationResults()) {
                iterations.add(Map.copyOf(iteration.getSecondaryResults()));
            }
        });
        StringBuilder out = new StringBuilder(String.format(Locale.ROOT, "%n%s%n", name));
        if (iterations.get(0).containsKey("spotlineNanos")) {
            for (String peer : PEERS) {
                double nanos = median(iterations, i -> perFit(i, peer));
                double multiple = median(iterations, i -> perFit(i, "commonsAnalytic") / perFit(i, peer));
                out.append(
                        String.format(Locale.ROOT, "  %-20s %12.1f us a fit %8.2f x%n", peer, nanos / 1e3, multiple));
            }
        } else if (iterations.get(0).containsKey("parserNanos")) {
            for (String way : List.of("parser", "readerToSpectra", "bareLoop")) {
                double rate = median(iterations, i -> value(i, "bytes") / value(i, way + "Nanos"));
                double share = median(iterations, i -> value(i, "bareLoopNanos") / value(i, way + "Nanos"));
                out.append(String.format(
                        Locale.ROOT, "  %-20s %8.1f MB/s %8.2f of the bare loop%n", way, 1e3 * rate, share));
            }
        } else if (iterations.get(0).containsKey("fitsOneThread")) {
            double fits = median(iterations, i -> value(i, "fitsOneThread") / value(i, "fitsTwoThreads"));
            double most = median(iterations, i -> value(i, "arithmeticOneThread") / value(i, "arithmeticTwoThreads"));
            out.append(String.format(
                    Locale.ROOT,
                    "  two threads: fits %.2f x, arithmetic %.2f x, share %.2f%n",
                    fits,
                    most,
                    fits / most));
        } else if (iterations.get(0).containsKey("voigtNarrowWindow")) {
            for (String line : LINES) {
                double nanos = median(iterations, i -> value(i, line) / value(i, "turns")) / 1000;
                out.append(String.format(Locale.ROOT, "  %-24s %8.2f ns a point%n", line, nanos));
            }
        } else {
            out.append(String.format(
                    Locale.ROOT,
                    "  %.3f %s, %.0f B allocated%n",
                    result.getPrimaryResult().getScore(),
                    result.getPrimaryResult().getScoreUnit(),
                    median(iterations, Run::allocated)));
        }
        return out.toString();
    }

    private static double perFit(Map<String, Result> iteration, String peer) {
        return value(iteration, peer + "Nanos") / value(iteration, peer + "Fits");
    }

    private static double value(Map<String, Result> iteration, String name) {
        Result<?> result = iteration.get(name);
        return result == null ? Double.NaN : result.getScore();
    }

    private static double allocated(Map<String, Result> iteration) {
        for (Map.Entry<String, Result> entry : iteration.entrySet()) {
            if (entry.getKey().endsWith("gc.alloc.rate.norm"))
                return entry.getValue().getScore();
        }
        return Double.NaN;
    }

    private interface Measure {
        double of(Map<String, Result> iteration);
    }

    private static double median(List<Map<String, Result>> iterations, Measure measure) {
        double[] values = iterations.stream().mapToDouble(measure::of).sorted().toArray();
        return Arrays.stream(values).skip(values.length / 2).findFirst().orElse(Double.NaN);
    }

    private static String processor() {
        try {
            for (String line : Files.readAllLines(Path.of("/proc/cpuinfo"), StandardCharsets.UTF_8)) {
                if (line.startsWith("model name"))
                    return line.substring(line.indexOf(':') + 1).strip();
            }
        } catch (IOException e) {
            return System.getProperty("os.arch");
        }
        return System.getProperty("os.arch");
    }
}
