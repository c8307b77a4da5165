package spotline.run;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import spotline.analysis.quantify.ListedFactors;
import spotline.core.Finding;
import spotline.core.Work;
import spotline.reference.ReferenceData;

/**
 * Treats every spot of a holder run and combines the results.
 *
 * <p>Errors: none beyond being cancelled. The result does not depend on the number of threads: spots are treated by
 * themselves and gathered in the order of the holder run.
 */
public final class RunPipeline {
    private static final int STEPS_KEPT = 20_000;

    private final ReferenceData reference;
    private final String programVersion;
    private final RunRules rules;
    private final Memo memo;

    public RunPipeline(ReferenceData reference, String programVersion, RunRules rules) {
        this(reference, programVersion, rules, Memo.NONE);
    }

    /** @param memo of steps that ran before */
    public RunPipeline(ReferenceData reference, String programVersion, RunRules rules, Memo memo) {
        this.reference = reference;
        this.programVersion = programVersion;
        this.rules = rules;
        this.memo = memo;
    }

    /**
     * The factor sets that the run's own reference spots give, one a material that a treatment asks for.
     *
     * <p>Errors: {@link IllegalArgumentException} with the reason why one cannot be had.
     */
    public List<ListedFactors> referenceFactors(HolderRun run, Work work) {
        return new ReferenceSpots(reference, new SpotTreatment(reference, Memo.NONE), Memo.NONE).sets(run, work);
    }

    /** The findings of the mounting checks are repeated in the result. */
    public RunResult treat(HolderRun run, int threads, Work work) {
        // Some spots are treated twice: only what differs runs again.
        Memo steps = memo == Memo.NONE ? new BoundedMemo(STEPS_KEPT) : memo;
        SpotTreatment treatment = new SpotTreatment(reference, steps);
        List<SpotInput> inputs = new ReferenceSpots(reference, treatment, steps)
                .applied(run, work)
                .spots();
        List<SpotResult> first = treatSpots(treatment, inputs, threads, work);
        List<SpotInput> alike = ReplicateBackgrounds.alike(inputs, first);
        List<SpotResult> again = treatedAgain(treatment, inputs, alike, first, threads, work);
        List<SpotResult> treated = ChargeAcrossSpots.compare(run, again);
        List<SpotResult> measured = lessBlanks(run, treated);
        List<SampleComposition> means = ReplicateMean.of(run.plan(), measured);
        List<Finding> findings = new ArrayList<>(run.planFindings().orElse(List.of()));
        findings.addAll(run.findings());
        measured.forEach(s -> findings.addAll(s.findings()));
        findings.addAll(RunChecks.acrossSpots(run, measured));
        findings.addAll(RunChecks.homogeneity(means));
        findings.addAll(RunChecks.incomplete(means, measured));
        findings.addAll(ReplicateBackgrounds.different(alike, again));
        RunRules.Judged judged = rules.judge(RunView.of(run, measured, means, run.planFindings(), findings, reference));
        List<SpotResult> spots = measured.stream()
                .map(s -> judged.withheld().contains(s.spot()) ? s.withheld() : s)
                .toList();
        SortedMap<String, JsonNode> treatments = new TreeMap<>();
        for (int i = 0; i < spots.size(); i++) {
            treatments.put(
                    spots.get(i).spot(),
                    withModels(
                            run.spots().get(i).treatment().json(), spots.get(i).fits()));
        }
        return new RunResult(
                run.plan(),
                spots,
                judged.withheld().isEmpty() ? means : ReplicateMean.of(run.plan(), spots),
                judged.findings(),
                treatments,
                run.files(),
                programVersion,
                run.seed(),
                judged.outcomes(),
                judged.led(),
                run.calibration());
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

    /** Spots whose input changed are treated once more; the others stay as they are. */
    private static List<SpotResult> treatedAgain(
            SpotTreatment treatment,
            List<SpotInput> before,
            List<SpotInput> after,
            List<SpotResult> results,
            int threads,
            Work work) {
        List<Integer> changed = IntStream.range(0, before.size())
                .filter(i -> !before.get(i).fallbackLines().equals(after.get(i).fallbackLines()))
                .boxed()
                .toList();
        List<SpotInput> inputs = changed.stream().map(after::get).toList();
        List<SpotResult> fresh = treatSpots(treatment, inputs, threads, work);
        List<SpotResult> all = new ArrayList<>(results);
        for (int k = 0; k < changed.size(); k++) all.set(changed.get(k), fresh.get(k));
        return all;
    }

    private static List<SpotResult> treatSpots(
            SpotTreatment treatment, List<SpotInput> inputs, int threads, Work work) {
        int count = inputs.size();
        if (threads <= 1 || count <= 1) {
            List<SpotResult> results = new ArrayList<>();
            for (SpotInput input : inputs) {
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
            for (SpotInput input : inputs) {
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
}
