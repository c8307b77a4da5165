package spotline.spectra;

import static java.util.Objects.requireNonNull;

import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * One spectrum ready for treatment: counts on a rising scale of measured binding energy.
 *
 * <p>Shape: n channels. Units: eV, and counts per channel where {@link #countsKnown()}, else the file's own unit: then
 * no uncertainty can be computed from it. Nothing is corrected here, neither for charging nor for transmission.
 */
public final class BindingScan {
    private final String label;
    private final double photonEnergyEv;
    private final double[] energy;
    private final double[] counts;
    private final boolean countsKnown;
    private final OptionalDouble secondsPerChannel;
    private final OptionalDouble passEnergyEv;

    /**
     * @param label how findings and tables name the spectrum
     * @param energy measured binding energies, eV, rising strictly
     * @param counts n values
     * @param countsKnown whether {@code counts} are counts with Poisson statistics
     * @param secondsPerChannel time each channel was counted, s
     *     <p>Errors: {@link IllegalArgumentException} unless the arrays have one length of 2 or more and the energies rise.
     */
    public BindingScan(
            String label,
            double photonEnergyEv,
            double[] energy,
            double[] counts,
            boolean countsKnown,
            OptionalDouble secondsPerChannel,
            OptionalDouble passEnergyEv) {
        this.label = requireNonNull(label, "label");
        this.photonEnergyEv = photonEnergyEv;
        this.energy = energy.clone();
        this.counts = counts.clone();
        this.countsKnown = countsKnown;
        this.secondsPerChannel = requireNonNull(secondsPerChannel, "secondsPerChannel");
        this.passEnergyEv = requireNonNull(passEnergyEv, "passEnergyEv");
        if (!(photonEnergyEv > 0))
            throw new IllegalArgumentException("photon energy must be above 0 eV, was " + photonEnergyEv);
        if (energy.length < 2 || energy.length != counts.length) {
            throw new IllegalArgumentException("a scan needs 2 or more channels with one value each, had "
                    + energy.length + " energies and " + counts.length + " values");
        }
        for (int i = 0; i < energy.length; i++) {
            if (!Double.isFinite(energy[i]) || !Double.isFinite(counts[i])) {
                throw new IllegalArgumentException("channel " + (i + 1) + " is not finite");
            }
            if (i > 0 && !(energy[i] > energy[i - 1])) {
                throw new IllegalArgumentException("binding energies must rise, did not at " + energy[i] + " eV");
            }
        }
    }

    /**
     * A spectrum turned to rising binding energy and, where its statistics are known, into counts.
     *
     * <p>Binding energy = photon energy - kinetic energy: the kinetic energies of spectrometers are referenced to the
     * Fermi level, so the work function in a header is never subtracted (it would be subtracted twice).
     *
     * <p>Errors: {@link IllegalArgumentException} when the axis is not an energy, is not monotonic, or no intensity is
     * there.
     */
    public static BindingScan of(Spectrum spectrum, double photonEnergyEv, String label) {
        Axis axis = spectrum.axis();
        EnergyScale scale = axis.quantity().scale();
        if (scale == EnergyScale.OTHER) {
            throw new IllegalArgumentException(
                    "the axis \"" + axis.quantity().label() + "\" is neither a kinetic nor a" + " binding energy");
        }
        double[] intensity = spectrum.values(Ordinate.Kind.INTENSITY)
                .orElseThrow(() -> new IllegalArgumentException("the block holds no intensity"));
        Counting counting =
                spectrum.set().ordinate(Ordinate.Kind.INTENSITY).orElseThrow().counting();
        int n = axis.channels();
        double[] energy = new double[n];
        for (int i = 0; i < n; i++) {
            energy[i] = scale == EnergyScale.BINDING ? axis.value(i) : photonEnergyEv - axis.value(i);
        }
        double factor = counting.countsPerUnit().orElse(1);
        boolean falling = n > 1 && energy[0] > energy[n - 1];
        double[] rising = new double[n];
        double[] counts = new double[n];
        for (int i = 0; i < n; i++) {
            int from = falling ? n - 1 - i : i;
            rising[i] = energy[from];
            counts[i] = intensity[from] * factor;
        }
        Acquisition acquisition = spectrum.acquisition();
        return new BindingScan(
                label,
                photonEnergyEv,
                rising,
                counts,
                counting.countsPerUnit().isPresent(),
                acquisition.timing().secondsPerChannel(),
                acquisition.analyser().passEnergyEv());
    }

    public String label() {
        return label;
    }

    public double photonEnergyEv() {
        return photonEnergyEv;
    }

    public int channels() {
        return energy.length;
    }

    /** Measured binding energy of a channel, eV; channel 0 is the lowest. */
    public double energy(int channel) {
        return energy[channel];
    }

    public double kineticEv(int channel) {
        return photonEnergyEv - energy[channel];
    }

    public double counts(int channel) {
        return counts[channel];
    }

    public boolean countsKnown() {
        return countsKnown;
    }

    public OptionalDouble secondsPerChannel() {
        return secondsPerChannel;
    }

    public OptionalDouble passEnergyEv() {
        return passEnergyEv;
    }

    public double[] energies() {
        return energy.clone();
    }

    public double[] counts() {
        return counts.clone();
    }

    public Window range() {
        return new Window(energy[0], energy[energy.length - 1]);
    }

    /** Mean distance of neighbouring channels, eV. */
    public double stepEv() {
        return (energy[energy.length - 1] - energy[0]) / (energy.length - 1);
    }

    /** Width that a channel stands for, eV: half the way to either neighbour, a whole step at the ends. */
    public double channelWidthEv(int channel) {
        if (channel == 0) return energy[1] - energy[0];
        if (channel == energy.length - 1) return energy[channel] - energy[channel - 1];
        return 0.5 * (energy[channel + 1] - energy[channel - 1]);
    }

    /** First channel at or above an energy (within a millionth of a step); {@link #channels()} if none is. */
    public int firstAtOrAbove(double energyEv) {
        int found = Arrays.binarySearch(energy, energyEv - 1e-6 * stepEv());
        return found >= 0 ? found : -found - 1;
    }

    /** Last channel at or below an energy (within a millionth of a step); -1 if none is. */
    public int lastAtOrBelow(double energyEv) {
        int found = Arrays.binarySearch(energy, energyEv + 1e-6 * stepEv());
        return found >= 0 ? found : -found - 2;
    }

    /** Channels {@code from} (inclusive) to {@code to} (exclusive) as a scan of their own. */
    public BindingScan part(int from, int to) {
        return new BindingScan(
                label,
                photonEnergyEv,
                Arrays.copyOfRange(energy, from, to),
                Arrays.copyOfRange(counts, from, to),
                countsKnown,
                secondsPerChannel,
                passEnergyEv);
    }
}
