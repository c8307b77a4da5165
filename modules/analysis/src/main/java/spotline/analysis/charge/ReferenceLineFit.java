package spotline.analysis.charge;

import java.util.List;
import spotline.core.Estimate;

/**
 * The peak fit that placed a reference line.
 *
 * <p>Shape: n channels; the curves of background, components and their sum have one value a channel. Units: measured
 * binding energy in eV, counts.
 */
public final class ReferenceLineFit {
    /**
     * One component peak.
     *
     * @param shape its name in full
     * @param position measured binding energy, eV
     * @param fwhm of the whole peak, eV
     * @param area counts eV
     */
    public record Component(String name, String shape, Estimate position, Estimate fwhm, Estimate area, Curve curve) {}

    /** Values along the channels of the fit. */
    public static final class Curve {
        private final double[] values;

        public Curve(double[] values) {
            this.values = values.clone();
        }

        public double value(int channel) {
            return values[channel];
        }

        public int channels() {
            return values.length;
        }

        public double[] copy() {
            return values.clone();
        }
    }

    private final String line;
    private final String spectrum;
    private final Curve energies;
    private final Curve background;
    private final Curve sum;
    private final List<Component> components;
    private final double reducedChiSquare;
    private final double misfit;

    /** A fit of whose misfit nothing is known but its reduced chi-square. */
    public ReferenceLineFit(
            String line,
            String spectrum,
            Curve energies,
            Curve background,
            Curve sum,
            List<Component> components,
            double reducedChiSquare) {
        this(line, spectrum, energies, background, sum, components, reducedChiSquare, 0);
    }

    /**
     * @param misfit root of the residuals' variance beyond counting statistics, over the height of the fitted sum above
     *     the background
     */
    public ReferenceLineFit(
            String line,
            String spectrum,
            Curve energies,
            Curve background,
            Curve sum,
            List<Component> components,
            double reducedChiSquare,
            double misfit) {
        this.line = line;
        this.spectrum = spectrum;
        this.energies = energies;
        this.background = background;
        this.sum = sum;
        this.components = List.copyOf(components);
        this.reducedChiSquare = reducedChiSquare;
        this.misfit = misfit;
    }

    public String line() {
        return line;
    }

    public String spectrum() {
        return spectrum;
    }

    public Curve energies() {
        return energies;
    }

    public Curve background() {
        return background;
    }

    /** Fitted sum of background and components. */
    public Curve sum() {
        return sum;
    }

    public List<Component> components() {
        return components;
    }

    public double reducedChiSquare() {
        return reducedChiSquare;
    }

    /** What the counts differ from the fitted sum beyond their noise, as a share of its height. */
    public double misfit() {
        return misfit;
    }

    /** The component whose position is the reference. */
    public Component reference() {
        return components.get(0);
    }
}
