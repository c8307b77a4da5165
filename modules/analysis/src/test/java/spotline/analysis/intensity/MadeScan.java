package spotline.analysis.intensity;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import spotline.analysis.background.Linear;
import spotline.analysis.background.Shirley;
import spotline.numerics.random.PoissonSampler;
import spotline.numerics.random.RandomStreams;
import spotline.reference.Line;
import spotline.spectra.BindingScan;

/** A scan of Gaussian peaks, each with a step behind it, on a sloping background. */
record MadeScan(double low, double high, double step, double background, double slope, List<Peak> peaks) {
    record Peak(double energy, double fwhm, double counts, double stepShare) {}

    static MadeScan flat(double low, double high, double background) {
        return new MadeScan(low, high, 0.1, background, 0, List.of());
    }

    MadeScan sloping(double countsPerEv) {
        return new MadeScan(low, high, step, background, countsPerEv, peaks);
    }

    MadeScan with(double energy, double fwhm, double counts, double stepShare) {
        List<Peak> more = new ArrayList<>(peaks);
        more.add(new Peak(energy, fwhm, counts, stepShare));
        return new MadeScan(low, high, step, background, slope, more);
    }

    BindingScan exact() {
        return scan(means(), true);
    }

    BindingScan uncounted() {
        return scan(means(), false);
    }

    BindingScan noisy(long trial) {
        return scan(PoissonSampler.sample(RandomStreams.stream(20260517, "trial", "" + trial), means()), true);
    }

    private double[] energies() {
        double[] energy = new double[(int) Math.round((high - low) / step) + 1];
        for (int i = 0; i < energy.length; i++) energy[i] = low + i * step;
        return energy;
    }

    private double[] means() {
        double[] energy = energies();
        double[] means = new double[energy.length];
        for (int i = 0; i < means.length; i++) {
            means[i] = background + slope * (energy[i] - low);
            for (Peak p : peaks) {
                double sigma = p.fwhm() / 2.3548200450309493;
                double t = (energy[i] - p.energy()) / sigma;
                means[i] += p.counts() * step * Math.exp(-0.5 * t * t) / (sigma * Math.sqrt(2 * Math.PI));
                means[i] += p.stepShare() * p.counts() / (1 + Math.exp(-1.702 * t)) * step;
            }
        }
        return means;
    }

    private BindingScan scan(double[] counts, boolean known) {
        return new BindingScan("made", 1486.6, energies(), counts, known, OptionalDouble.of(1), OptionalDouble.of(20));
    }

    static IntensitySettings settings() {
        return new IntensitySettings(
                Shirley.of(5), Linear.of(5), DetectionRule.CRITICAL_LEVEL, 1.2, 4.5, 2.5, 2.5, 3, 4);
    }

    static LineTarget target(String line, double low, double high, double expected, double splitting) {
        return new LineTarget(Line.parse(line), low, high, expected, splitting, List.of());
    }
}
