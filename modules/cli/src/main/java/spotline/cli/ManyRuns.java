package spotline.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import spotline.core.ReadException;
import spotline.core.Work;
import spotline.report.ResultFiles;
import spotline.report.WholeFile;
import spotline.report.table.HolderSummary;
import spotline.report.table.SummaryCsv;
import spotline.run.RunResult;

/** Several holder runs, side by side; each is written as soon as it is done, and only its summary is kept. */
final class ManyRuns {
    /** What became of one: its summary, or why there is none. */
    record Done(Path file, String name, Optional<HolderSummary> summary, Optional<Exception> fault) {}

    private final TreatmentOptions options;
    private final Path out;

    ManyRuns(TreatmentOptions options, Path out) {
        this.options = options;
        this.out = out;
    }

    /** Errors: {@link IOException} when the directory or the tables over all runs cannot be written. */
    List<Done> treat(List<Path> files, Work work) throws IOException, InterruptedException {
        List<String> names = SafeNames.of(files);
        AtomicInteger count = new AtomicInteger();
        ExecutorService pool = Executors.newFixedThreadPool(Math.min(options.threads(), files.size()));
        try {
            List<Future<Done>> futures = new ArrayList<>();
            for (int i = 0; i < files.size(); i++) {
                Path file = files.get(i);
                String name = names.get(i);
                futures.add(pool.submit(() -> {
                    Done done = one(file, name, work);
                    work.progress((double) count.incrementAndGet() / files.size(), name);
                    return done;
                }));
            }
            List<Done> all = new ArrayList<>();
            for (Future<Done> future : futures) all.add(future.get());
            List<HolderSummary> summaries =
                    all.stream().flatMap(d -> d.summary().stream()).toList();
            // Of nothing there is no summary.
            if (summaries.isEmpty()) return all;
            Files.createDirectories(out);
            WholeFile.write(out.resolve(SummaryCsv.FILE), SummaryCsv.of(summaries));
            WholeFile.write(out.resolve(SummaryCsv.CONTROL_FILE), SummaryCsv.controls(summaries));
            return all;
        } catch (ExecutionException e) {
            if (e.getCause() instanceof RuntimeException cause) throw cause;
            throw new IllegalStateException(e.getCause());
        } finally {
            pool.shutdownNow();
        }
    }

    private Done one(Path file, String name, Work work) {
        try (RunInput input = RunInput.open(file, options)) {
            RunResult result = input.treat(1, new Quiet(work));
            ResultFiles.write(result, out.resolve(name));
            return new Done(file, name, Optional.of(HolderSummary.of(name, result)), Optional.empty());
        } catch (ReadException | IOException e) {
            return new Done(file, name, Optional.empty(), Optional.of(e));
        } catch (java.util.concurrent.CancellationException e) {
            throw e;
        } catch (RuntimeException e) {
            // A fault of the program in one run must not cost the others.
            return new Done(file, name, Optional.empty(), Optional.of(e));
        }
    }

    /** The bar tells of whole runs, not of the spots inside each. */
    private record Quiet(Work work) implements Work {
        @Override
        public void check() {
            work.check();
        }

        @Override
        public void progress(double done, String what) {}
    }
}
