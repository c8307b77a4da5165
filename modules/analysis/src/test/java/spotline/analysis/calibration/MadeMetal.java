package spotline.analysis.calibration;

import java.util.List;
import java.util.OptionalDouble;
import java.util.random.RandomGenerator;
import spotline.numerics.fit.PeakModel;
import spotline.numerics.random.PoissonSampler;
import spotline.numerics.random.RandomStreams;
import spotline.numerics.shape.DoniachSunjic;
import spotline.numerics.shape.Voigt;
import spotline.reference.ReferenceData;
import spotline.reference.XraySource;
import spotline.spectra.BindingScan;

/** Invented scans of gold, silver and copper on a scale that is off as stated. */
final class MadeMetal {
    static final ReferenceData REFERENCE = ReferenceData.shipped();
    static final XraySource SOURCE = REFERENCE.source("Al Ka", true).orElseThrow();

    private MadeMetal() {}

    /** Scans of Au 4f, Ag 3d and Cu 2p3/2 with their maxima at these energies. */
    static List<BindingScan> scans(double goldEv, double silverEv, double copperEv, long seed) {
        return List.of(
                scan("Au 4f", goldEv, 3.67, 0.75, 0.9, 78, 94, seed),
                scan("Ag 3d", silverEv, 6.0, 0.67, 0.75, 360, 380, seed),
                scan("Cu 2p", copperEv, 0, 0, 1.0, 925, 941, seed));
    }

    static BindingScan scan(
            String label, double at, double splitting, double ratio, double fwhm, double low, double high, long seed) {
        RandomGenerator random = RandomStreams.stream(seed, label);
        double step = 0.05;
        int n = (int) Math.round((high - low) / step) + 1;
        double[] energy = new double[n];
        for (int i = 0; i < n; i++) energy[i] = low + i * step;
        PeakModel model = PeakModel.on(energy).plus("first", new Voigt()).plus("second", new Voigt());
        model = model.polynomialBackground(1, low);
        double[] p = {at, 30000, fwhm, 0.25, at + splitting, ratio * 30000, fwhm, 0.25, 1500, 5};
        double[] means = new double[n];
        model.evaluator().values(p, means);
        return scan(label, energy, PoissonSampler.sample(random, means));
    }

    /** Expected counts of one Doniach-Sunjic line on a fine grid, without noise. */
    static BindingScan asymmetric(double step) {
        int n = (int) Math.round(10 / step) + 1;
        double[] energy = new double[n];
        for (int i = 0; i < n; i++) energy[i] = 95 + i * step;
        PeakModel model = PeakModel.on(energy).plus("line", new DoniachSunjic());
        double[] values = new double[n];
        model.evaluator().values(new double[] {99.9, 200000, 0.6, 0.3, 0.1}, values);
        for (int i = 0; i < n; i++) values[i] = Math.rint(values[i] + 200);
        return scan("asymmetric", energy, values);
    }

    static BindingScan scan(String label, double[] energy, double[] counts) {
        return new BindingScan(
                label, SOURCE.photonEnergyEv(), energy, counts, true, OptionalDouble.of(2), OptionalDouble.of(20));
    }
}
