package spotline.analysis.identify;

import java.util.ArrayList;
import java.util.List;
import spotline.spectra.BindingScan;

/**
 * Finds peaks by a filter of zero area: the negative second derivative of a Gaussian, blind to a constant and a sloping
 * background.
 *
 * <p>Shape: n channels in, a list of peaks in rising energy out. Units: eV, counts eV.
 *
 * <p>Errors: a scan whose counting statistics are unknown gets its noise from the scatter of the filter's response.
 *
 * <p>Source: M.A. Mariscotti, Nucl. Instrum. Methods 50, 309 (1967), generalised second differences; from memory.
 */
public final class PeakSearch {
    private final double fwhmEv;
    private final double minimumSignificance;

    public PeakSearch(double fwhmEv, double minimumSignificance) {
        if (!(fwhmEv > 0)) throw new IllegalArgumentException("width must be above 0 eV, was " + fwhmEv);
        this.fwhmEv = fwhmEv;
        this.minimumSignificance = minimumSignificance;
    }

    public List<SurveyPeak> find(BindingScan scan) {
        Response response = response(scan);
        List<SurveyPeak> peaks = new ArrayList<>();
        double[] r = response.values;
        for (int i = 1; i < r.length - 1; i++) {
            double significance = r[i] / response.deviations[i];
            if (significance < minimumSignificance || r[i] < r[i - 1] || r[i] <= r[i + 1]) continue;
            double curvature = r[i - 1] - 2 * r[i] + r[i + 1];
            double offset = curvature < 0 ? 0.5 * (r[i - 1] - r[i + 1]) / curvature : 0;
            double energy = scan.energy(i) + Math.max(-0.5, Math.min(0.5, offset)) * scan.stepEv();
            peaks.add(new SurveyPeak(energy, significance, r[i] / response.gain));
        }
        return peaks;
    }

    /** Standard deviation of the area that the filter would report at an energy where nothing is, counts eV. */
    double areaDeviation(BindingScan scan, double energyEv) {
        Response response = response(scan);
        int channel = Math.max(0, Math.min(scan.channels() - 1, scan.firstAtOrAbove(energyEv)));
        return response.deviations[channel] / response.gain;
    }

    private record Response(double[] values, double[] deviations, double gain) {}

    private Response response(BindingScan scan) {
        double step = scan.stepEv();
        double sigma = Math.max(fwhmEv, 2.5 * step) / 2.3548200450309493;
        int half = Math.max(2, (int) Math.ceil(3.5 * sigma / step));
        double[] filter = new double[2 * half + 1];
        double sum = 0;
        for (int k = -half; k <= half; k++) {
            double t = k * step / sigma;
            filter[k + half] = (1 - t * t) * Math.exp(-0.5 * t * t);
            sum += filter[k + half];
        }
        double gain = 0;
        for (int k = -half; k <= half; k++) {
            filter[k + half] -= sum / filter.length;
            double t = k * step / sigma;
            gain += filter[k + half] * Math.exp(-0.5 * t * t) / (sigma * Math.sqrt(2 * Math.PI));
        }
        int n = scan.channels();
        double[] values = new double[n];
        double[] deviations = new double[n];
        double[] y = scan.counts();
        for (int i = 0; i < n; i++) {
            double value = 0;
            double variance = 0;
            for (int k = -half; k <= half; k++) {
                // Beyond the ends the spectrum goes on as a point reflection: no step, no bend, no false peak.
                int j = i + k;
                double at;
                if (j < 0) at = 2 * y[0] - y[Math.min(n - 1, -j)];
                else if (j >= n) at = 2 * y[n - 1] - y[Math.max(0, 2 * (n - 1) - j)];
                else at = y[j];
                double w = filter[k + half];
                value += w * at;
                variance += w * w * Math.max(1, at);
            }
            values[i] = value;
            deviations[i] = Math.sqrt(variance);
        }
        if (!scan.countsKnown()) scatter(values, deviations);
        return new Response(values, deviations, gain);
    }

    /** Noise from the median absolute response: right where most of the spectrum holds no peak. */
    private static void scatter(double[] values, double[] deviations) {
        double[] magnitudes = new double[values.length];
        for (int i = 0; i < values.length; i++) magnitudes[i] = Math.abs(values[i]);
        java.util.Arrays.sort(magnitudes);
        double deviation = Math.max(1e-300, magnitudes[magnitudes.length / 2] / 0.6745);
        java.util.Arrays.fill(deviations, deviation);
    }
}
