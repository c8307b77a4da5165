package spotline.demo;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Spectra that an instrument would take of a surface.
 *
 * <p>A level of cross section sigma (relative to C 1s), in atoms of density n, gives zero-loss electrons of area
 *
 * <pre>
 * below the overlayer   sigma L n lambda(KE) cos(theta) exp(-t / (L_o(KE) cos(theta)))
 * in the overlayer      sigma L n L_o(KE)    cos(theta) (1 - exp(-t / (L_o(KE) cos(theta))))
 * </pre>
 *
 * with lambda the inelastic mean free path of the medium, {@code L_o} the attenuation length of the overlayer, t its
 * thickness, theta the emission angle and the angular factor L = 1 at the magic angle. Each stands at its binding energy
 * plus the surface potential, as wide as the level's natural width, the analyser and the state make it, and brings the
 * tail of {@link LossSpectrum}. Elastic scattering, shake-up, plasmon peaks, asymmetric metal lines and losses at
 * surfaces are left out.
 *
 * <p>Units: areas in (relative cross section) nm / nm3; {@link #expectedCounts} multiplies by brightness, transmission
 * and time. Errors: {@link IllegalArgumentException} where a state names a level that the source cannot reach.
 *
 * <p>Source: the straight-line model of D. Briggs and M.P. Seah (eds), Practical Surface Analysis, chapter 5, from
 * memory; tails as {@link LossSpectrum} says.
 */
public final class DemoModel {
    /** Shallowest a shifted level may come to lie. */
    private static final double SHALLOWEST_EV = 1;

    private static final double CONDUCTION_BAND_EV = 9;

    private final InstrumentModel instrument;
    private final AtomicData atoms;
    private final Complex[] lossTransform;

    public DemoModel(InstrumentModel instrument, AtomicData atoms, LossFunction loss) {
        this.instrument = requireNonNull(instrument, "instrument");
        this.atoms = requireNonNull(atoms, "atoms");
        this.lossTransform = LossSpectrum.transformOf(loss);
    }

    public InstrumentModel instrument() {
        return instrument;
    }

    /** All zero-loss electrons of a surface, photoelectrons first, in the order of its states. */
    public List<Emission> emissions(Surface surface, AnalyserMode mode) {
        List<Emission> all = new ArrayList<>(lines(surface, mode));
        for (Region region : regions(surface)) {
            for (String element : region.elements()) augers(region, element, surface, mode, all);
        }
        surface.conductionBand().ifPresent(intensity -> {
            Region medium = regions(surface).get(0);
            double kinetic = instrument.photonEnergyEv();
            double atomDensity = surface.medium().atomsPerNm3();
            ZeroLoss band = new ZeroLoss.FermiBand(
                    surface.potentialEv(),
                    medium.area(intensity, atomDensity, kinetic),
                    mode.gaussianFwhmEv(),
                    CONDUCTION_BAND_EV);
            all.add(new Emission("", "valence band", "", medium.depth(kinetic), List.of(band)));
        });
        return List.copyOf(all);
    }

    /** The photoelectron lines alone. */
    List<Emission> lines(Surface surface, AnalyserMode mode) {
        List<Emission> all = new ArrayList<>();
        for (Region region : regions(surface)) {
            for (ElementState state : region.states()) all.addAll(linesOf(region, state, surface, mode));
        }
        return all;
    }

    private List<Emission> linesOf(Region region, ElementState state, Surface surface, AnalyserMode mode) {
        List<AtomicData.Level> levels = atoms.levels(state.element());
        double shift = state.bindingEv() - level(levels, state).bindingEv();
        Map<String, List<ZeroLoss>> shells = new LinkedHashMap<>();
        Map<String, Double> deepest = new LinkedHashMap<>();
        for (AtomicData.Level level : levels) {
            Optional<ValenceBand> band = ValenceBand.of(state.element(), level.level());
            double binding =
                    band.map(ValenceBand::bindingEv).orElse(Math.max(SHALLOWEST_EV, level.bindingEv() + shift));
            double kinetic = instrument.photonEnergyEv() - binding;
            double broadening = band.map(ValenceBand::widthEv).orElse(state.broadeningEv());
            ZeroLoss peak = new ZeroLoss.Peak(
                    binding + surface.potentialEv(),
                    region.area(level.crossSection(), region.density(state), kinetic),
                    StrictMath.hypot(mode.gaussianFwhmEv(), broadening),
                    level.widthEv());
            shells.computeIfAbsent(level.shell(), shell -> new ArrayList<>()).add(peak);
            deepest.merge(level.shell(), kinetic, Math::min);
        }
        List<Emission> emissions = new ArrayList<>();
        shells.forEach((shell, peaks) -> emissions.add(new Emission(
                state.element(), shell, state.state(), region.depth(requireNonNull(deepest.get(shell))), peaks)));
        return emissions;
    }

    private static AtomicData.Level level(List<AtomicData.Level> levels, ElementState state) {
        return levels.stream()
                .filter(level -> level.level().equals(state.level()))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(
                        state.element() + " has no level " + state.level() + " that the source can reach"));
    }

    private void augers(Region region, String element, Surface surface, AnalyserMode mode, List<Emission> to) {
        double density = region.states().stream()
                .filter(state -> state.element().equals(element))
                .mapToDouble(region::density)
                .sum();
        for (AugerGroup group : AugerGroup.of(element)) {
            double holes = atoms.levels(element).stream()
                    .filter(level -> group.levels().contains(level.level()))
                    .mapToDouble(AtomicData.Level::crossSection)
                    .sum();
            ZeroLoss peak = new ZeroLoss.Peak(
                    instrument.photonEnergyEv() - group.kineticEv() + surface.potentialEv(),
                    region.area(holes * group.share(), density, group.kineticEv()),
                    StrictMath.hypot(mode.gaussianFwhmEv(), group.fwhmEv()),
                    0);
            to.add(new Emission(element, group.name(), "", region.depth(group.kineticEv()), List.of(peak)));
        }
    }

    private List<Region> regions(Surface surface) {
        return Region.of(surface, atoms, instrument.cosEmission());
    }

    /** Emitted intensity of a surface in a mode of the analyser, before drift: reusable for all scans of that mode. */
    LossSpectrum spectrum(Surface surface, AnalyserMode mode) {
        return LossSpectrum.of(emissions(surface, mode), lossTransform);
    }

    /**
     * Expected counts of a scan.
     *
     * @param spectrum from {@link #spectrum} in the scan's mode
     * @param driftEv potential at the time of the scan less the surface's own
     * @return a value a channel, from the highest binding energy down
     */
    double[] expectedCounts(LossSpectrum spectrum, Scan scan, double driftEv) {
        double[] emitted = spectrum.values(driftEv);
        double[] counts = new double[scan.channels()];
        double factor = instrument.brightness() * scan.secondsPerChannel();
        for (int i = 0; i < counts.length; i++) {
            int at = (int) Math.round((scan.bindingEv(i) - LossSpectrum.FIRST_EV) / LossSpectrum.STEP_EV);
            double kinetic = instrument.photonEnergyEv() - scan.bindingEv(i);
            counts[i] = factor
                    * scan.mode().transmission(kinetic)
                    * (Math.max(0, emitted[at]) + instrument.secondary(kinetic));
        }
        return counts;
    }

    /**
     * Apparent composition: what a perfect reading of the zero-loss areas gives an analyst who takes the mean free path
     * as proportional to KE^0.75 and makes no overlayer correction.
     *
     * <p>An element's amount is the sum over its states and regions of {@code area / (sigma KE^0.75)}, the members of a
     * doublet weighted as they appear; sigma is the shell's own, so that the whole doublet is meant.
     *
     * @param quantified shell a quantified element: {@code "Ti" -> "2p"}, in the order wanted
     * @return atomic percent, summing to 100
     */
    public Map<String, Double> apparentPercent(Surface surface, Map<String, String> quantified) {
        Map<String, Double> amounts = new LinkedHashMap<>();
        quantified.forEach((element, shell) -> amounts.put(
                element,
                apparentStates(surface, element, shell).values().stream()
                        .mapToDouble(Double::doubleValue)
                        .sum()));
        double sum = amounts.values().stream().mapToDouble(Double::doubleValue).sum();
        amounts.replaceAll((element, amount) -> 100 * amount / sum);
        return amounts;
    }

    /** Apparent amounts of an element by its chemical state, as in {@link #apparentPercent} but not normalised. */
    Map<String, Double> apparentStates(Surface surface, String element, String shell) {
        double sigma = atoms.levels(element).stream()
                .filter(level -> level.shell().equals(shell))
                .mapToDouble(AtomicData.Level::shellCrossSection)
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(element + " has no shell " + shell));
        Map<String, Double> amounts = new LinkedHashMap<>();
        for (Emission line : lines(surface, instrument.narrow())) {
            if (!line.element().equals(element) || !line.line().equals(shell)) continue;
            double amount = 0;
            for (ZeroLoss peak : line.peaks()) {
                double kinetic = instrument.photonEnergyEv() - peak.bindingEv() + surface.potentialEv();
                amount += peak.area() / (sigma * StrictMath.pow(kinetic, 0.75));
            }
            amounts.merge(line.state(), amount, Double::sum);
        }
        return amounts;
    }
}
