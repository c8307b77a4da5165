package spotline.demo.corpus;

import java.util.List;

/**
 * Puts peaks on the channels of a survey: a Lorentzian as the mean of its own quantiles, each a Gaussian of the width of
 * analyser, source and state; a leaning peak gives part of its area to an exponential tail.
 */
final class Painter {
    private static final double[] QUANTILES = quantiles(15);
    private static final double[] LEAN_STEPS = {0.6, 1.6, 3.0, 5.5};
    /** Above this many Gaussian standard deviations of Lorentzian width its quantiles would show one by one. */
    private static final double BROAD = 0.5;

    private static final int VOIGT_NODES = 14;
    private static final double SIGMA_PER_FWHM = 1 / 2.3548200450309493;

    private final Setup setup;
    private final double[] energy;

    Painter(Setup setup) {
        this.setup = setup;
        energy = new double[setup.channels()];
        for (int i = 0; i < energy.length; i++) energy[i] = setup.lowEv() + i * setup.stepEv();
    }

    double[] energies() {
        return energy.clone();
    }

    private static double[] quantiles(int nodes) {
        double[] q = new double[nodes];
        for (int k = 0; k < nodes; k++) q[k] = 0.5 * Math.tan(Math.PI * ((k + 0.5) / nodes - 0.5));
        return q;
    }

    private double transmission(double binding) {
        double kinetic = Math.max(40, setup.photonEv() - binding);
        return Math.pow(kinetic / 1000, setup.transmissionPower());
    }

    void peak(double[] to, Emitted peak, double move, double factor) {
        double centre = peak.bindingEv() + move;
        double area = peak.area() * factor * transmission(centre);
        double sigma = Math.hypot(setup.resolutionEv(), peak.gaussianEv()) * SIGMA_PER_FWHM;
        double upright = area * (1 - peak.lean()) / QUANTILES.length;
        if (peak.lorentzianEv() < 0.1) {
            gauss(to, centre, sigma, area * (1 - peak.lean()));
        } else if (peak.lorentzianEv() > BROAD * sigma) {
            voigt(to, centre, sigma, peak.lorentzianEv(), area * (1 - peak.lean()));
        } else {
            for (double q : QUANTILES) gauss(to, centre + q * peak.lorentzianEv(), sigma, upright);
        }
        if (peak.lean() == 0) return;
        for (double step : LEAN_STEPS) gauss(to, centre + step, sigma, area * peak.lean() / LEAN_STEPS.length);
    }

    private void gauss(double[] to, double centre, double sigma, double area) {
        int first = (int) Math.max(0, Math.ceil((centre - 5 * sigma - setup.lowEv()) / setup.stepEv()));
        int last = (int) Math.min(to.length - 1, Math.floor((centre + 5 * sigma - setup.lowEv()) / setup.stepEv()));
        double height = area / (sigma * Math.sqrt(2 * Math.PI));
        for (int i = first; i <= last; i++) {
            double t = (energy[i] - centre) / sigma;
            to[i] += height * Math.exp(-0.5 * t * t);
        }
    }

    /** Lorentzian broad enough for the trapezoidal rule over the Gaussian. */
    private void voigt(double[] to, double centre, double sigma, double lorentzian, double area) {
        double reach = 5 * sigma + 12 * lorentzian;
        int first = (int) Math.max(0, Math.ceil((centre - reach - setup.lowEv()) / setup.stepEv()));
        int last = (int) Math.min(to.length - 1, Math.floor((centre + reach - setup.lowEv()) / setup.stepEv()));
        double half = 0.5 * lorentzian;
        for (int i = first; i <= last; i++) {
            double sum = 0;
            double norm = 0;
            for (int k = -VOIGT_NODES; k <= VOIGT_NODES; k++) {
                double t = 3.2 * k / VOIGT_NODES;
                double w = Math.exp(-0.5 * t * t);
                double x = energy[i] - centre - t * sigma;
                sum += w * half / (Math.PI * (x * x + half * half));
                norm += w;
            }
            to[i] += area * sum / norm;
        }
    }

    /** @param answer of the medium to a peak of unit area, a value a step of {@link Scattering#STEP_EV} */
    void tails(double[] to, List<Emitted> peaks, double[] answer) {
        double lowest = setup.lowEv() - 20;
        int size = (int) Math.ceil((setup.highEv() - lowest) / Scattering.STEP_EV) + 2;
        double[] source = new double[size];
        for (Emitted peak : peaks) {
            double at = (peak.bindingEv() - lowest) / Scattering.STEP_EV;
            int low = (int) Math.floor(at);
            if (low < 0 || low + 1 >= size) continue;
            source[low] += peak.area() * (low + 1 - at);
            source[low + 1] += peak.area() * (at - low);
        }
        double[] tail = new double[size];
        for (int s = 0; s < size; s++) {
            if (source[s] == 0) continue;
            for (int n = 1; n < answer.length && s + n < size; n++) {
                tail[s + n] += source[s] * answer[n] / Scattering.STEP_EV;
            }
        }
        for (int i = 0; i < to.length; i++) {
            double at = (energy[i] - lowest) / Scattering.STEP_EV;
            int low = (int) Math.floor(at);
            double value = tail[low] + (at - low) * (tail[low + 1] - tail[low]);
            to[i] += value * transmission(energy[i]);
        }
    }
}
