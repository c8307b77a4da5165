package spotline.demo;

import static java.util.Objects.requireNonNull;

/**
 * One spectrum to be taken, over measured binding energies.
 *
 * @param species {@code "C"}, or {@code "survey"}
 * @param transition {@code "1s"}, empty for a survey
 * @param highEv where the scan starts
 * @param lowEv where it ends
 * @param dwellSeconds per channel and scan
 */
public record Scan(
        String species,
        String transition,
        AnalyserMode mode,
        double highEv,
        double lowEv,
        double stepEv,
        double dwellSeconds,
        int scans) {
    public Scan {
        requireNonNull(species, "species");
        requireNonNull(transition, "transition");
        requireNonNull(mode, "mode");
        if (!(lowEv < highEv)) throw new IllegalArgumentException("a scan needs its low end below its high end");
        if (!(stepEv > 0) || !(dwellSeconds > 0) || scans < 1) {
            throw new IllegalArgumentException("step, dwell and scans must be above 0");
        }
        if (!onGrid(highEv) || !onGrid(lowEv) || !onGrid(stepEv)) {
            throw new IllegalArgumentException("ends and step must be multiples of " + LossSpectrum.STEP_EV + " eV");
        }
    }

    private static boolean onGrid(double ev) {
        double steps = ev / LossSpectrum.STEP_EV;
        return Math.abs(steps - Math.rint(steps)) < 1e-6;
    }

    public int channels() {
        return (int) Math.round((highEv - lowEv) / stepEv) + 1;
    }

    /** Measured binding energy of a channel; channel 0 is the highest. */
    public double bindingEv(int channel) {
        return highEv - channel * stepEv;
    }

    public double secondsPerChannel() {
        return dwellSeconds * scans;
    }

    public double seconds() {
        return secondsPerChannel() * channels();
    }
}
