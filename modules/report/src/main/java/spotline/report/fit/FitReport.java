package spotline.report.fit;

import static java.util.Objects.requireNonNull;

import java.util.List;
import java.util.Optional;
import spotline.analysis.peakfit.FitMonteCarlo;
import spotline.analysis.peakfit.PeakFitResult;
import spotline.core.Finding;
import spotline.core.Provenance;

/**
 * One peak fit with where it came from.
 *
 * @param region what the file calls the spectrum
 */
public record FitReport(
        Provenance source,
        String region,
        PeakFitResult result,
        List<Finding> findings,
        Optional<FitMonteCarlo.Result> monteCarlo) {
    public FitReport {
        requireNonNull(source, "source");
        requireNonNull(result, "result");
        findings = List.copyOf(findings);
        requireNonNull(monteCarlo, "monteCarlo");
    }
}
