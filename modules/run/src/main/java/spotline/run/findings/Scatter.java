package spotline.run.findings;

import java.util.ArrayList;
import java.util.List;
import spotline.core.Finding;
import spotline.run.LinkedSpectrum;
import spotline.run.RunView;
import spotline.run.SpotView;
import spotline.spectra.BindingScan;

/**
 * Whether the counts of narrow scans scatter as counts do.
 *
 * <p>The variance is that of sixth differences, with the coefficients 1, -6, 15, -20, 15, -6, 1: no line reaches them that
 * is sampled at a sixth of its width or finer, and for Poisson counts their variance is 924 times the mean. The Fano factor
 * is their mean square over that. Neighbouring differences share channels (autocorrelations C(12, 6 - k) / 924 with
 * alternating signs), so that n of them are worth n / 3.17. Source: derived, closed form; limits common practice, no source.
 */
final class Scatter {
    static final Limit SIGMAS = Limit.own("fanoSigmas", 4, "sqrt(2/N)", "derived for 3; wider for many spots");
    static final Limit ONE_SCAN_SIGMAS = Limit.own("fanoSigmasOneScan", 5, "sqrt(2/N)", Limit.PRACTICE);

    private static final double[] WEIGHTS = {1, -6, 15, -20, 15, -6, 1};
    private static final double VARIANCE = 924;
    private static final double WORTH = 3.17;
    private static final int FEWEST_CHANNELS = 60;
    private static final double FEWEST_COUNTS = 20;
    private static final double COARSEST_EV = 0.15;

    private Scatter() {}

    /** @param fano 1 for counts @param n degrees of freedom it rests on */
    record Fano(double fano, double n) {
        double sigmas() {
            return (fano - 1) / Math.sqrt(2 / n);
        }
    }

    static RuleState check(RunView run, SpotView spot, Limits limits) {
        List<Finding> findings = new ArrayList<>();
        double sum = 0;
        double all = 0;
        for (LinkedSpectrum s : spot.result().spectra()) {
            BindingScan scan = s.scan();
            boolean fine = !s.survey() && scan.stepEv() <= COARSEST_EV && scan.channels() >= FEWEST_CHANNELS;
            if (!fine || !scan.countsKnown()) continue;
            Fano fano = of(scan);
            if (!(fano.n() > 0)) continue;
            sum += fano.fano() * fano.n();
            all += fano.n();
            if (Math.abs(fano.sigmas()) > limits.of(ONE_SCAN_SIGMAS)) {
                findings.add(
                        finding(s.region(), fano, limits.of(ONE_SCAN_SIGMAS)).in(s.label()));
            }
        }
        if (all == 0) return RuleState.notChecked("no narrow scan of known counts is long and fine enough");
        Fano together = new Fano(sum / all, all);
        if (findings.isEmpty() && Math.abs(together.sigmas()) > limits.of(SIGMAS)) {
            findings.add(finding("The narrow scans together", together, limits.of(SIGMAS)));
        }
        return RuleState.of(findings);
    }

    private static Finding finding(String what, Fano fano, double sigmas) {
        return Finding.caution(
                "counts-not-poisson",
                Rule.words(
                        "%s: counts scatter with %.2f times the variance of counting (limit 1 +/- %.2f): they look %s,"
                                + " and no uncertainty that rests on counting holds.",
                        what,
                        fano.fano(),
                        sigmas * Math.sqrt(2 / fano.n()),
                        fano.fano() < 1 ? "smoothed or scaled down" : "scaled up, or noisy beyond counting"));
    }

    static Fano of(BindingScan scan) {
        double squares = 0;
        int n = 0;
        for (int i = 0; i + WEIGHTS.length <= scan.channels(); i++) {
            double difference = 0;
            double mean = 0;
            for (int k = 0; k < WEIGHTS.length; k++) {
                difference += WEIGHTS[k] * scan.counts(i + k);
                mean += scan.counts(i + k) / WEIGHTS.length;
            }
            if (mean < FEWEST_COUNTS) continue;
            squares += difference * difference / (VARIANCE * mean);
            n++;
        }
        return n == 0 ? new Fano(1, 0) : new Fano(squares / n, n / WORTH);
    }
}
