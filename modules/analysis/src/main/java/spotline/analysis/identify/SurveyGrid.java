package spotline.analysis.identify;

import java.util.Arrays;
import spotline.spectra.BindingScan;

/**
 * A survey on the channels that identification works on: rising binding energies about half an eV or more apart, values
 * that scatter like counts.
 *
 * <p>Channels of a finer survey are summed, so that counts stay counts. Values of unknown statistics are divided by their
 * own ratio of variance to mean, taken between neighbouring channels.
 *
 * <p>Shape: n channels. Units: eV, counts. Errors: none.
 */
final class SurveyGrid {
    private static final double FINEST_STEP = 0.45;
    private static final double COARSE_STEP = 0.5;

    final int channels;
    final double[] energy;
    final double[] counts;
    final double step;
    final double photonEv;
    /** Values of the survey per count of this grid: 1 where the survey holds counts. */
    final double unitsPerCount;
    /** Channels of the survey summed into one. */
    final int grouped;

    private SurveyGrid(double[] energy, double[] counts, double photonEv, double unitsPerCount, int grouped) {
        this.channels = energy.length;
        this.energy = energy;
        this.counts = counts;
        this.step = (energy[channels - 1] - energy[0]) / (channels - 1);
        this.photonEv = photonEv;
        this.unitsPerCount = unitsPerCount;
        this.grouped = grouped;
    }

    static SurveyGrid of(BindingScan scan) {
        double[] energy = scan.energies();
        double[] counts = scan.counts();
        double units = scan.countsKnown() ? 1 : unitsPerCount(counts);
        int group = scan.stepEv() < FINEST_STEP ? (int) Math.max(1, Math.round(COARSE_STEP / scan.stepEv())) : 1;
        int n = energy.length / group;
        if (n < 2) {
            group = 1;
            n = energy.length;
        }
        double[] e = new double[n];
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < group; k++) {
                e[i] += energy[i * group + k] / group;
                y[i] += Math.max(0, counts[i * group + k]) / units;
            }
        }
        return new SurveyGrid(e, y, scan.photonEnergyEv(), units, group);
    }

    /** The same counts read on other energies, which may fall. */
    SurveyGrid reread(double[] newEnergy, double newPhotonEv) {
        double[] e = newEnergy.clone();
        double[] y = counts.clone();
        if (e[0] > e[channels - 1]) {
            for (int i = 0, j = channels - 1; i < j; i++, j--) {
                double keptEnergy = e[i];
                e[i] = e[j];
                e[j] = keptEnergy;
                double keptCounts = y[i];
                y[i] = y[j];
                y[j] = keptCounts;
            }
        }
        return new SurveyGrid(e, y, newPhotonEv, unitsPerCount, grouped);
    }

    /** Median of the squared second differences over six times the level: robust against lines. */
    private static double unitsPerCount(double[] values) {
        double[] ratios = new double[Math.max(0, values.length - 2)];
        int found = 0;
        for (int i = 1; i < values.length - 1; i++) {
            double level = (values[i - 1] + values[i] + values[i + 1]) / 3;
            double bend = values[i - 1] - 2 * values[i] + values[i + 1];
            if (level > 0) ratios[found++] = bend * bend / (6 * level);
        }
        if (found == 0) return 1;
        Arrays.sort(ratios, 0, found);
        // The median of a squared standard normal variable is 0.4549.
        return Math.max(1e-12, ratios[found / 2] / 0.4549);
    }

    double low() {
        return energy[0];
    }

    double high() {
        return energy[channels - 1];
    }

    /** Index of the first channel at or above an energy; {@link #channels} when none is. */
    int at(double ev) {
        // A guess on even channels, then a walk: surveys are even but for rounding.
        int i = (int) ((ev - energy[0]) / step);
        i = Math.max(0, Math.min(channels, i));
        while (i > 0 && energy[i - 1] >= ev - 1e-9) i--;
        while (i < channels && energy[i] < ev - 1e-9) i++;
        return i;
    }

    boolean holds(double ev, double marginEv) {
        return ev - marginEv >= energy[0] && ev + marginEv <= energy[channels - 1];
    }
}
