package spotline.run;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import spotline.core.Finding;
import spotline.core.Work;
import spotline.holder.Silence;
import spotline.reference.ReferenceData;

/**
 * Treats every spot of a holder run and combines the results.
 *
 * <p>Errors: none beyond being cancelled. The result does not depend on the number of threads: spots are treated by
 * themselves and gathered in the order of the holder run.
 */
public final class RunPipeline {
    private final ReferenceData reference;
    private final String programVersion;
    private final Memo memo;

    public RunPipeline(ReferenceData reference, String programVersion) {
        this(reference, programVersion, Memo.NONE);
    }

    /** @param memo of steps that ran before */
    public RunPipeline(ReferenceData reference, String programVersion, Memo memo) {
        this.reference = reference;
        this.programVersion = programVersion;
        this.memo = memo;
    }

    /** @param planFindings of the mounting checks, repeated in the result */
    public RunResult treat(HolderRun run, List<Finding> planFindings, int threads, Work work) {
        List<SpotResult> treated = ChargeAcrossSpots.compare(run, treatSpots(run, threads, work));
        List<SpotResult> spots = lessBlanks(run, treated);
        List<SampleComposition> samples = ReplicateMean.of(run.plan(), spots);
        List<Finding> findings = new ArrayList<>(planFindings);
        findings.addAll(run.findings());
        spots.forEach(s -> findings.addAll(s.findings()));
        findings.addAll(RunChecks.acrossSpots(run, spots));
        findings.addAll(RunChecks.homogeneity(samples));
        List<Finding> shown = silenced(findings, run.plan().file().silence());
        SortedMap<String, JsonNode> treatments = new TreeMap<>();
        for (int i = 0; i < spots.size(); i++) {
            treatments.put(
                    spots.get(i).spot(),
                    withModels(
                            run.spots().get(i).treatment().json(), spots.get(i).fits()));
        }
        return new RunResult(run.plan(), spots, samples, shown, treatments, run.files(), programVersion, run.seed());
    }

    /** The settings in force with the default models as they were used, so that the record makes the same fits again. */
    private static JsonNode withModels(JsonNode settings, List<LineFit> fits) {
        ObjectNode record = settings.deepCopy();
        for (LineFit fit : fits) {
            if (!fit.byDefault()) continue;
            fit.model()
                    .ifPresent(m -> ((ObjectNode) record.at("/peakFit/models"))
                            .set(fit.line().toString(), m));
        }
        return record;
    }

    private static List<SpotResult> lessBlanks(HolderRun run, List<SpotResult> spots) {
        List<SpotResult> all = new ArrayList<>();
        for (int i = 0; i < spots.size(); i++) {
            Optional<QuantifySettings.Blank> blank =
                    run.spots().get(i).treatment().quantify().blank();
            SpotResult spot = spots.get(i);
            if (blank.isEmpty() || blank.get().spot().equals(spot.spot())) {
                all.add(spot);
                continue;
            }
            Optional<SpotResult> measured = spots.stream()
                    .filter(s -> s.spot().equals(blank.get().spot()))
                    .findFirst();
            all.add(BlankVariant.added(spot, blank.get(), measured));
        }
        return all;
    }

    private List<SpotResult> treatSpots(HolderRun given, int threads, Work work) {
        SpotTreatment treatment = new SpotTreatment(reference, memo);
        HolderRun run = new ReferenceSpots(reference, treatment, memo).applied(given, work);
        int count = run.spots().size();
        if (threads <= 1 || count <= 1) {
            List<SpotResult> results = new ArrayList<>();
            for (SpotInput input : run.spots()) {
                work.progress(
                        (double) results.size() / count,
                        "treating spot " + input.spot().id());
                results.add(treatment.treat(input, work));
            }
            return results;
        }
        ExecutorService pool = Executors.newFixedThreadPool(Math.min(threads, count));
        try {
            AtomicInteger done = new AtomicInteger();
            List<Future<SpotResult>> futures = new ArrayList<>();
            for (SpotInput input : run.spots()) {
                futures.add(pool.submit(() -> {
                    SpotResult result = treatment.treat(input, work);
                    work.progress(
                            (double) done.incrementAndGet() / count,
                            "treated spot " + input.spot().id());
                    return result;
                }));
            }
            List<SpotResult> results = new ArrayList<>();
            for (Future<SpotResult> future : futures) results.add(future.get());
            return results;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new java.util.concurrent.CancellationException("interrupted");
        } catch (ExecutionException e) {
            if (e.getCause() instanceof RuntimeException cause) throw cause;
            throw new IllegalStateException(e.getCause());
        } finally {
            pool.shutdownNow();
        }
    }

    /** A silenced finding stays as a note with the reason; a stop cannot be silenced. Sorted by severity, then as found. */
    private static List<Finding> silenced(List<Finding> findings, List<Silence> silences) {
        List<Finding> shown = new ArrayList<>();
        for (Finding f : findings) {
            Finding kept = f;
            for (Silence silence : silences) {
                if (!silence.covers(f)) continue;
                String prefix = "Silenced (" + silence.reason() + "): ";
                kept = new Finding(
                        f.severity() == spotline.core.Severity.STOP ? f.severity() : spotline.core.Severity.NOTE,
                        f.rule(),
                        f.spot(),
                        f.sample(),
                        f.spectrum(),
                        prefix + f.message());
                break;
            }
            if (!shown.contains(kept)) shown.add(kept);
        }
        shown.sort(Comparator.comparing(Finding::severity).reversed());
        return shown;
    }
}
