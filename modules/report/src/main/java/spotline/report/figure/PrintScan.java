package spotline.report.figure;

import java.util.Arrays;
import java.util.OptionalDouble;
import spotline.report.text.Shown;
import spotline.run.LinkedSpectrum;
import spotline.run.SpotResult;
import spotline.spectra.BindingScan;

/**
 * A scan as a figure shows it.
 *
 * <p>Units: eV, measured or referenced; intensity in counts, or as normalised.
 */
public final class PrintScan {
    /** What intensities are divided by, each after its lowest value is taken off. */
    public enum Normalise {
        NONE,
        /** By the highest. */
        HEIGHT,
        /** By the area over the scan. */
        AREA
    }

    private final String name;
    private final double[] energies;
    private final double[] values;
    private final boolean referenced;

    private PrintScan(String name, double[] energies, double[] values, boolean referenced) {
        this.name = name;
        this.energies = energies;
        this.values = values;
        this.referenced = referenced;
    }

    /** @param shiftEv added to every energy; empty leaves them as measured */
    public static PrintScan of(String name, LinkedSpectrum spectrum, OptionalDouble shiftEv) {
        BindingScan scan = spectrum.scan();
        double[] energies = scan.energies();
        for (int i = 0; i < energies.length; i++) energies[i] += shiftEv.orElse(0);
        return new PrintScan(Shown.label(name), energies, scan.counts(), shiftEv.isPresent());
    }

    public static String name(SpotResult spot) {
        String sample = spot.sample().isEmpty() ? "spot " + spot.spot() : spot.sample() + ", spot " + spot.spot();
        return Shown.label(sample);
    }

    String name() {
        return name;
    }

    boolean referenced() {
        return referenced;
    }

    double[] energies() {
        return energies.clone();
    }

    double[] values() {
        return values.clone();
    }

    double low() {
        return energies[0];
    }

    double high() {
        return energies[energies.length - 1];
    }

    PrintScan normalised(Normalise by) {
        if (by == Normalise.NONE) return this;
        double lowest = Arrays.stream(values).min().orElse(0);
        double[] scaled = new double[values.length];
        double highest = 0;
        double area = 0;
        for (int i = 0; i < scaled.length; i++) {
            scaled[i] = values[i] - lowest;
            highest = Math.max(highest, scaled[i]);
            if (i > 0) area += 0.5 * (scaled[i] + scaled[i - 1]) * (energies[i] - energies[i - 1]);
        }
        double by1 = by == Normalise.HEIGHT ? highest : area;
        if (by1 > 0) for (int i = 0; i < scaled.length; i++) scaled[i] /= by1;
        return new PrintScan(name, energies, scaled, referenced);
    }

    PrintScan raised(double by) {
        double[] raised = values.clone();
        for (int i = 0; i < raised.length; i++) raised[i] += by;
        return new PrintScan(name, energies, raised, referenced);
    }

    /**
     * This scan less another, where both were measured: the other interpolated between its channels.
     *
     * <p>Errors: {@link IllegalArgumentException} when they share less than two channels.
     */
    PrintScan minus(PrintScan other) {
        int from = 0;
        int to = energies.length;
        while (from < to && energies[from] < other.low()) from++;
        while (to > from && energies[to - 1] > other.high()) to--;
        if (to - from < 2) throw new IllegalArgumentException("the two scans share no range of energies");
        double[] difference = new double[to - from];
        for (int i = from; i < to; i++) difference[i - from] = values[i] - other.at(energies[i]);
        return new PrintScan("difference", Arrays.copyOfRange(energies, from, to), difference, referenced);
    }

    private double at(double energyEv) {
        int found = Arrays.binarySearch(energies, energyEv);
        if (found >= 0) return values[found];
        int above = Math.min(energies.length - 1, Math.max(1, -found - 1));
        double share = (energyEv - energies[above - 1]) / (energies[above] - energies[above - 1]);
        return values[above - 1] + share * (values[above] - values[above - 1]);
    }
}
