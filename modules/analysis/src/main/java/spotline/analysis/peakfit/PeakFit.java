package spotline.analysis.peakfit;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import spotline.analysis.background.Subtraction;
import spotline.core.Finding;
import spotline.core.Outcome;
import spotline.core.Problem;
import spotline.core.Work;
import spotline.numerics.fit.FitResult;
import spotline.numerics.fit.StopReason;
import spotline.reference.ReferenceData;
import spotline.spectra.BindingScan;

/**
 * Fits a model to a narrow scan.
 *
 * <p>Shape: one scan of n channels and one model in, one result out. Units: measured binding energy in eV, counts, areas
 * in counts eV before transmission. Counts are fitted by their Poisson likelihood, never with weights from the counts
 * themselves; an ordinate of unknown statistics by plain least squares, its uncertainties taken from the residuals.
 * Variances are multiplied by the reduced chi-square, over what a background taken first lets expect of it, where that is
 * above 1.
 *
 * <p>Errors: untreated, with every problem, when the model does not suit the scan; untreated with the background's reason
 * when that does not exist for the data.
 *
 * <p>Source: Poisson likelihood for spectra, P.J. Cumpson and M.P. Seah, Surf. Interface Anal. 18 (1992) 345;
 * uncertainties GUM (JCGM 100:2008) 5.
 */
public final class PeakFit {
    /** Version of the step: rises when its numbers change. */
    public static final String STEP = "peak-fit/1";

    private final ReferenceData reference;

    public PeakFit(ReferenceData reference) {
        this.reference = requireNonNull(reference, "reference");
    }

    /** @param key names the uncertainty contributions: estimates of one key are taken to be of one fit */
    public Outcome<PeakFitResult> fit(BindingScan scan, FitModel model, String key, Work work) {
        List<Problem> problems = model.check(scan, reference);
        if (!problems.isEmpty()) {
            String all = problems.stream().map(Problem::sentence).collect(Collectors.joining("; "));
            return untreated(scan, "fit-model", "The fit model does not suit the scan: " + all + ".");
        }
        Optional<Subtraction> subtraction = Optional.empty();
        List<Finding> findings = new ArrayList<>();
        if (!model.background().fitted()) {
            Outcome<Subtraction> taken = model.background().background().subtract(scan, model.window(), key, work);
            if (taken instanceof Outcome.Untreated<Subtraction> refused) return Outcome.untreated(refused.finding());
            findings.addAll(taken.allFindings());
            subtraction = taken.result();
        }
        PreparedFit prepared = new PreparedFit(scan, model, subtraction, reference);
        if (scan.countsKnown() && !prepared.counted) {
            findings.add(Finding.caution(
                            "fit-negative-counts",
                            "Some counts in the window are negative: they were fitted by plain least squares, and"
                                    + " uncertainties come from the residuals.")
                    .in(scan.label()));
        }
        FitResult fit = prepared.solve(prepared.guess(), work);
        if (fit.stopReason() == StopReason.NOT_FINITE) {
            return untreated(scan, "fit-not-finite", "The model is not finite where the fit starts.");
        }
        PeakFitResult result = result(prepared, fit, key, work);
        findings.addAll(FitChecks.of(result, scan.label()));
        return Outcome.done(result, findings);
    }

    private static PeakFitResult result(PreparedFit prepared, FitResult fit, String key, Work work) {
        FitCovariance covariance = prepared.covariance(fit, key);
        List<FittedComponent> components = ComponentAssembly.components(prepared, fit, covariance);
        return new PeakFitResult(
                prepared.scan.label(),
                prepared.model,
                components,
                FitStatistics.of(fit, prepared.counted, covariance.factor()),
                Separation.pairs(prepared, fit, components, key, work),
                prepared.counted,
                prepared.energies,
                prepared.counts,
                prepared.function.background(fit.values()),
                fit.fitted(),
                fit.residuals());
    }

    public Outcome<PeakFitResult> fit(BindingScan scan, FitModel model, Work work) {
        return fit(scan, model, scan.label(), work);
    }

    private static Outcome<PeakFitResult> untreated(BindingScan scan, String rule, String message) {
        return Outcome.untreated(Finding.caution(rule, message).in(scan.label()));
    }
}
