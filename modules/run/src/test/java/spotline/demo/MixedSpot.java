package spotline.demo;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.random.RandomGenerator;
import spotline.numerics.random.PoissonSampler;
import spotline.numerics.random.RandomStreams;
import spotline.reference.ReferenceData;
import spotline.spectra.BindingScan;
import spotline.spectra.Transmission;

/**
 * Simulated spectra of an analysis area that several surfaces share, each at its own potential: the model of the
 * demonstration, its surfaces and others.
 */
public final class MixedSpot {
    private static final Map<Double, DemoModel> MODELS = new HashMap<>();
    private static final Map<List<Object>, LossSpectrum> SPECTRA = new HashMap<>();

    /** A scan as it was counted. @param role word of the role it plays */
    public record Taken(String region, boolean survey, BindingScan scan, Transmission transmission) {}

    private final Map<Surface, Double> shares = new LinkedHashMap<>();
    private final List<Scan> scans = new ArrayList<>();
    private double photonEv = Footbridge.INSTRUMENT.photonEnergyEv();
    private double driftEv;

    /** The scans of a spot of the demonstration, and its surface in so much of the area. */
    public static MixedSpot of(String demonstrationSpot, double share) {
        MixedSpot mixed = new MixedSpot();
        SpotPlan plan = plan(demonstrationSpot);
        mixed.scans.addAll(plan.scans());
        mixed.shares.put(plan.surface(), share);
        return mixed;
    }

    private static SpotPlan plan(String id) {
        return Footbridge.spots().stream()
                .filter(s -> s.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    /**
     * @param states symbol, level and referenced energy: {@code "Cu 2p3/2 932.6"}, and the share of its atoms
     * @param widthEv Gaussian broadening of every state
     */
    public MixedSpot with(
            double share, double potentialEv, double bandGapEv, double widthEv, Map<String, Double> states) {
        List<ElementState> made = new ArrayList<>();
        states.forEach((text, atoms) -> {
            String[] parts = text.split(" ");
            made.add(new ElementState(parts[0], text, atoms, parts[1], Double.parseDouble(parts[2]), widthEv));
        });
        Medium medium = bandGapEv > 0 ? new Medium(2.4, 60, 3, 16, bandGapEv) : new Medium(8.5, 64, 1, 11, 0);
        shares.put(
                new Surface("made", medium, made, new Overlayer(0.5, 284.8), potentialEv, 0, OptionalDouble.empty()),
                share);
        return this;
    }

    public MixedSpot excitedBy(double photonEnergyEv) {
        photonEv = photonEnergyEv;
        return this;
    }

    /** @param ev by which the potential moves from the first scan to the last */
    public MixedSpot drifting(double ev) {
        driftEv = ev;
        return this;
    }

    public List<Taken> taken(String seed) {
        DemoModel model = MODELS.computeIfAbsent(photonEv, MixedSpot::model);
        List<Taken> taken = new ArrayList<>();
        for (int k = 0; k < scans.size(); k++) {
            Scan scan = scans.get(k);
            double drift = Math.rint(driftEv * k / Math.max(1, scans.size() - 1) / LossSpectrum.STEP_EV)
                    * LossSpectrum.STEP_EV;
            double[] expected = new double[scan.channels()];
            shares.forEach((surface, share) -> {
                LossSpectrum spectrum = SPECTRA.computeIfAbsent(
                        List.of(photonEv, surface, scan.mode()), key -> model.spectrum(surface, scan.mode()));
                double[] counts = model.expectedCounts(spectrum, scan, drift);
                for (int i = 0; i < counts.length; i++) expected[i] += share * counts[i];
            });
            taken.add(counted(scan, expected, seed + "#" + (k + 1)));
        }
        return taken;
    }

    private static Taken counted(Scan scan, double[] expected, String label) {
        int n = expected.length;
        double[] energy = new double[n];
        double[] rising = new double[n];
        for (int i = 0; i < n; i++) {
            energy[i] = scan.bindingEv(n - 1 - i);
            rising[i] = expected[n - 1 - i];
        }
        RandomGenerator random = RandomStreams.stream(20260511, "mixed", label);
        AnalyserMode mode = scan.mode();
        double[] kinetic = new double[300];
        double[] response = new double[kinetic.length];
        for (int i = 0; i < kinetic.length; i++) {
            kinetic[i] = 50 + 5 * i;
            response[i] = mode.transmission(kinetic[i]);
        }
        return new Taken(
                (scan.species() + " " + scan.transition()).strip(),
                scan.species().equals("survey"),
                new BindingScan(
                        label,
                        Footbridge.INSTRUMENT.photonEnergyEv(),
                        energy,
                        PoissonSampler.sample(random, rising),
                        true,
                        OptionalDouble.of(scan.secondsPerChannel()),
                        OptionalDouble.of(mode.passEnergyEv())),
                new Transmission.Tabulated("as recorded in the file", kinetic, response));
    }

    private static DemoModel model(double photonEv) {
        InstrumentModel usual = Footbridge.INSTRUMENT;
        ReferenceData reference = Objects.requireNonNull(ReferenceData.shipped());
        return new DemoModel(
                new InstrumentModel(
                        photonEv,
                        usual.emissionAngleDeg(),
                        usual.brightness(),
                        usual.secondaryBackground(),
                        usual.survey(),
                        usual.narrow()),
                new ReferenceAtoms(reference, photonEv),
                LossFunction.UNIVERSAL);
    }
}
