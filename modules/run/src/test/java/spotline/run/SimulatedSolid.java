package spotline.run;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import spotline.numerics.shape.Voigt;
import spotline.reference.Doublet;
import spotline.reference.Elements;
import spotline.reference.LevelEnergy;
import spotline.reference.Line;
import spotline.reference.LineData;
import spotline.reference.Material;
import spotline.reference.MeanFreePath;
import spotline.reference.ReferenceData;
import spotline.spectra.Transmission;

/**
 * Spectra of a compound of known composition, by a path of its own: zero-loss Voigt lines of the tabulated cross sections,
 * TPP-2M mean free paths, an organic overlayer, and tails by the multiple-scattering recursion over a loss function in real
 * space. Elastic scattering, shake-up and Auger lines are left out.
 *
 * <p>Units: eV, nm; intensities in (relative cross section) nm per formula unit. Source: S. Tougaard, Surf. Interface Anal.
 * 11 (1988) 453 (recursion J = F + K * J of a homogeneous solid); Beer-Lambert attenuation.
 */
final class SimulatedSolid {
    static final double STEP = 0.1;
    static final double PHOTON = 1486.6;
    private static final int CHANNELS = 14200;
    private static final double SPECTROMETER_FWHM = 0.55;
    private static final double STATE_FWHM = 1.0;

    /**
     * Atoms in one state.
     *
     * @param line the line whose position tells the state
     */
    record State(double atoms, Line line, double bindingEv) {}

    /** lambda K(T), per eV. */
    interface Losses {
        double at(double lossEv);

        static Losses threeParameter(double b, double c, double d) {
            return t -> b * t / ((c - t * t) * (c - t * t) + d * t * t);
        }

        static Losses gapped(Losses losses, double gapEv) {
            return t -> t < gapEv ? 0 : losses.at(t);
        }
    }

    private final ReferenceData reference;
    private final Material material;
    private final List<State> states;
    private final double overlayerNm;
    private final double potentialEv;
    private final double freePathPower;
    private final Map<String, Double> crossSectionError;
    private final double[] emitted;
    private final Map<String, Map<Line, Double>> zeroLoss = new LinkedHashMap<>();

    SimulatedSolid(
            ReferenceData reference,
            Material material,
            List<State> states,
            Losses losses,
            double overlayerNm,
            double potentialEv) {
        this(reference, material, states, losses, overlayerNm, potentialEv, 0, Map.of());
    }

    /**
     * @param freePathPower extra power of kinetic energy in the mean free path, for spoiling it on purpose
     * @param crossSectionError factor on the cross sections of an element's lines, for spoiling them on purpose
     */
    SimulatedSolid(
            ReferenceData reference,
            Material material,
            List<State> states,
            Losses losses,
            double overlayerNm,
            double potentialEv,
            double freePathPower,
            Map<String, Double> crossSectionError) {
        this.reference = reference;
        this.material = material;
        this.states = List.copyOf(states);
        this.overlayerNm = overlayerNm;
        this.potentialEv = potentialEv;
        this.freePathPower = freePathPower;
        this.crossSectionError = Map.copyOf(crossSectionError);
        double[] bulk = new double[CHANNELS];
        for (State state : states) addAtoms(bulk, state, false);
        scatter(bulk, losses);
        pass(bulk, losses);
        double[] layer = new double[CHANNELS];
        for (State state : organic()) addAtoms(layer, state, true);
        for (int i = 0; i < CHANNELS; i++) bulk[i] += layer[i];
        this.emitted = bulk;
    }

    private List<State> organic() {
        if (overlayerNm == 0) return List.of();
        Line c = Line.parse("C 1s");
        Line o = Line.parse("O 1s");
        return List.of(
                new State(0.78, c, 284.8),
                new State(0.12, c, 286.3),
                new State(0.05, c, 287.8),
                new State(0.05, c, 288.9),
                new State(0.17, o, 532.2),
                new State(0.10, o, 533.3));
    }

    /** Atoms per nm3 of formula units, for the bulk; of the organic layer's carbon. Polyethylene: 39.5 CH2 per nm3. */
    private double density(boolean inLayer) {
        return inLayer ? 39.5 : material.densityGPerCm3() * 602.214 / material.molarMassGPerMol();
    }

    private void addAtoms(double[] to, State state, boolean inLayer) {
        double usual =
                reference.bindingEnergy(state.line()).map(LevelEnergy::valueEv).orElseThrow();
        double shift = state.bindingEv() - usual;
        String symbol = state.line().element();
        for (LineData data : reference.lines(Elements.bySymbol(symbol).orElseThrow(), PHOTON)) {
            for (Line member : data.members()) {
                double be = energyOf(member, data, shift);
                if (!(be > 1) || be > 1400) continue;
                double kinetic = PHOTON - be;
                double sigma =
                        reference.crossSection(member, PHOTON).orElse(0) * crossSectionError.getOrDefault(symbol, 1.0);
                double area = sigma * state.atoms() * density(inLayer) * reach(kinetic, inLayer);
                zeroLoss.computeIfAbsent(symbol, s -> new LinkedHashMap<>()).merge(member, area, Double::sum);
                double natural =
                        reference.naturalWidth(member).map(w -> w.fwhmEv()).orElse(0.5);
                addVoigt(to, be + potentialEv, area, Math.hypot(SPECTROMETER_FWHM, STATE_FWHM), natural);
            }
        }
    }

    private double energyOf(Line member, LineData data, double shift) {
        double first = reference
                .bindingEnergy(data.line().high())
                .map(LevelEnergy::valueEv)
                .orElseThrow();
        boolean second =
                data.members().size() == 2 && member.equals(data.members().get(1));
        double splitting = second
                ? reference
                        .doublet(data.line(), PHOTON)
                        .map(Doublet::splittingEv)
                        .orElse(0.0)
                : 0;
        return first + splitting + shift;
    }

    private double reach(double kinetic, boolean inLayer) {
        double organic = MeanFreePath.organicEal(kinetic) * Math.pow(kinetic / 1000, freePathPower);
        if (inLayer) return organic * (1 - Math.exp(-overlayerNm / organic));
        double lambda = MeanFreePath.tpp2m(material, kinetic) * Math.pow(kinetic / 1000, freePathPower);
        return lambda * Math.exp(-overlayerNm / organic);
    }

    private static void addVoigt(double[] to, double at, double area, double gaussFwhm, double lorentzFwhm) {
        int from = Math.max(0, (int) ((at - 60) / STEP));
        int last = Math.min(CHANNELS - 1, (int) ((at + 60) / STEP));
        double[] x = new double[last - from + 1];
        double[] y = new double[x.length];
        for (int i = 0; i < x.length; i++) x[i] = (from + i) * STEP;
        new Voigt().evaluate(x, new double[] {at, area, gaussFwhm, Math.max(lorentzFwhm, 0.02)}, y);
        for (int i = 0; i < x.length; i++) to[from + i] += y[i];
    }

    /** J_i = F_i + sum over losses of K J: exact for a kernel that vanishes at zero loss. */
    private static void scatter(double[] spectrum, Losses losses) {
        double[] kernel = kernel(losses);
        for (int i = 0; i < spectrum.length; i++) {
            double sum = 0;
            int reach = Math.min(i, kernel.length - 1);
            for (int k = 1; k <= reach; k++) sum += kernel[k] * spectrum[i - k];
            spectrum[i] += sum;
        }
    }

    /** Losses on the way through the overlayer: none, one and two, with the thickness in mean free paths at 1 keV. */
    private void pass(double[] spectrum, Losses losses) {
        if (overlayerNm == 0) return;
        double[] kernel = kernel(losses);
        double thickness = overlayerNm / MeanFreePath.organicEal(1000);
        double[] once = convolved(spectrum, kernel);
        double[] twice = convolved(once, kernel);
        for (int i = 0; i < spectrum.length; i++) {
            spectrum[i] += thickness * once[i] + 0.5 * thickness * thickness * twice[i];
        }
    }

    private static double[] convolved(double[] spectrum, double[] kernel) {
        double[] out = new double[spectrum.length];
        for (int i = 0; i < out.length; i++) {
            double sum = 0;
            int reach = Math.min(i, kernel.length - 1);
            for (int k = 1; k <= reach; k++) sum += kernel[k] * spectrum[i - k];
            out[i] = sum;
        }
        return out;
    }

    private static double[] kernel(Losses losses) {
        double[] kernel = new double[1200];
        for (int k = 1; k < kernel.length; k++) kernel[k] = losses.at(k * STEP) * STEP;
        return kernel;
    }

    /** Expected counts of a scan, channels rising in binding energy from {@code low}. */
    double[] counts(double low, double high, double brightness, Transmission transmission) {
        int from = (int) Math.round(low / STEP);
        double[] counts = new double[(int) Math.round((high - low) / STEP) + 1];
        for (int i = 0; i < counts.length; i++) {
            double kinetic = PHOTON - (from + i) * STEP;
            double smooth = 0.04 * largest() * Math.pow(kinetic / 1000, -1.1);
            counts[i] = brightness * transmission.at(kinetic) * (emitted[from + i] + smooth);
        }
        return counts;
    }

    private double largest() {
        double largest = 0;
        for (Map<Line, Double> lines : zeroLoss.values()) {
            for (double area : lines.values()) largest = Math.max(largest, area);
        }
        return largest;
    }

    /** Whether an element is in the solid, or any line of it lies in a stretch of binding energy. */
    boolean hasLineWithin(String element, double lowEv, double highEv) {
        if (zeroLoss.containsKey(element)) return true;
        for (State state : states()) {
            for (LineData data :
                    reference.lines(Elements.bySymbol(state.line().element()).orElseThrow(), PHOTON)) {
                for (Line member : data.members()) {
                    double at = energyOf(member, data, 0);
                    if (at > lowEv - 5 && at < highEv + 5) return true;
                }
            }
        }
        return false;
    }

    /** Zero-loss intensity of a line that leaves the surface. */
    double zeroLossOf(Line member) {
        return zeroLoss.getOrDefault(member.element(), Map.of()).getOrDefault(member, 0.0);
    }

    double maximum() {
        double max = 0;
        for (double v : emitted) max = Math.max(max, v);
        return max;
    }

    /**
     * What a perfect reading of the zero-loss areas would give, with the mean free path as a power of kinetic energy and no
     * overlayer correction.
     *
     * @param quantified the line each element is quantified by
     */
    Map<String, Double> apparentPercent(Map<String, Line> quantified, double power) {
        Map<String, Double> amounts = new LinkedHashMap<>();
        double sum = 0;
        for (Map.Entry<String, Line> e : quantified.entrySet()) {
            double area = 0;
            for (Line member : e.getValue().members())
                area += zeroLoss.get(e.getKey()).getOrDefault(member, 0.0);
            double kinetic = PHOTON
                    - reference
                            .bindingEnergy(e.getValue().high())
                            .map(LevelEnergy::valueEv)
                            .orElseThrow();
            double amount = area
                    / (reference.crossSection(e.getValue(), PHOTON).orElseThrow() * Math.pow(kinetic / 1000, power));
            amounts.put(e.getKey(), amount);
            sum += amount;
        }
        double total = sum;
        amounts.replaceAll((element, amount) -> 100 * amount / total);
        return amounts;
    }

    List<State> states() {
        List<State> all = new ArrayList<>(states);
        all.addAll(organic());
        return all;
    }
}
