package spotline.analysis.identify;

/**
 * A survey seen through a filter of zero area tuned to one width: lines stand out, backgrounds and steps vanish.
 *
 * <p>The filter is the negative second derivative of a Gaussian, {@code (1 - t^2) exp(-t^2 / 2)}; a Gaussian line of unit
 * area gives {@code [s^2 / (s^2 + w^2)]^(3/2)} at its top, s and w being the standard deviations of filter and line.
 *
 * <p>Source: M.A. Mariscotti, Nucl. Instrum. Methods 50, 309 (1967), from memory; the gain is derived, closed form.
 */
final class FilteredSurvey {
    static final double SIGMA_PER_FWHM = 1 / 2.3548200450309493;

    final SurveyGrid grid;
    final double fwhmEv;
    /** Response a channel, as the area of a line of the tuned width would give it. */
    final double[] response;

    final double[] deviation;

    FilteredSurvey(SurveyGrid grid, double fwhmEv) {
        this.grid = grid;
        this.fwhmEv = Math.max(fwhmEv, 2.2 * grid.step);
        double sigma = this.fwhmEv * SIGMA_PER_FWHM;
        int half = Math.max(2, (int) Math.ceil(3.6 * sigma / grid.step));
        double[] filter = new double[2 * half + 1];
        double sum = 0;
        for (int k = -half; k <= half; k++) {
            double t = k * grid.step / sigma;
            filter[k + half] = (1 - t * t) * Math.exp(-0.5 * t * t);
            sum += filter[k + half];
        }
        for (int k = 0; k < filter.length; k++) filter[k] -= sum / filter.length;
        int n = grid.channels;
        double[] y = grid.counts;
        response = new double[n];
        deviation = new double[n];
        for (int i = 0; i < n; i++) {
            double value = 0;
            double variance = 0;
            for (int k = -half; k <= half; k++) {
                int j = i + k;
                double at;
                // Beyond the ends the spectrum goes on as a point reflection: no step, no false line.
                if (j < 0) at = 2 * y[0] - y[Math.min(n - 1, -j)];
                else if (j >= n) at = 2 * y[n - 1] - y[Math.max(0, 2 * (n - 1) - j)];
                else at = y[j];
                double w = filter[k + half];
                value += w * at;
                variance += w * w * Math.max(1, at);
            }
            response[i] = value * grid.step;
            deviation[i] = Math.sqrt(variance) * grid.step;
        }
    }

    /** Response at its top to a line of unit area and a width. */
    double gain(double lineFwhmEv) {
        double q = fwhmEv * fwhmEv / (fwhmEv * fwhmEv + lineFwhmEv * lineFwhmEv);
        return q * Math.sqrt(q);
    }
}
