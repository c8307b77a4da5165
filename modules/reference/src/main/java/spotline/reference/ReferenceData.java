package spotline.reference;

import java.io.InputStream;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * All shipped tables behind one face: immutable, safe in any thread, read once.
 *
 * <p>Energies are in eV, binding energies refer to the Fermi level of the solid, cross sections are relative to C 1s at
 * the same photon energy. Where a table has no value the answer is empty, never 0. Each value names its source.
 *
 * <p>Errors: {@link IllegalStateException} that names table and line, if a shipped table is broken.
 */
public final class ReferenceData {
    /** Shallower than this a level is part of the valence band or hidden in it. */
    private static final double SHALLOWEST_MAIN_EV = 20;

    /** Slower electrons than this say little but the state of the outermost layer. */
    private static final double SLOWEST_MAIN_EV = 100;

    private static final double BROADEST_MAIN_EV = 4;

    private final CrossSections crossSections;
    private final CalibrationTables calibration;
    private final ChemistryTables chemistry;
    private final Levels levels;
    private final List<MainLine> mainLines;

    private record MainLine(Line line, double photonLowEv, double photonHighEv, String reason) {}

    /** Holds the tables from their first use; the language makes that safe in any thread. */
    private static final class Shipped {
        private static final ReferenceData DATA = new ReferenceData(ReferenceData::open);
    }

    ReferenceData(Function<String, ? extends @Nullable InputStream> source) {
        crossSections = new CrossSections(source);
        calibration = new CalibrationTables(source);
        chemistry = new ChemistryTables(source);
        levels = new Levels(source, calibration.energies(), chemistry.states);
        mainLines = Table.read(source, "levels/main-lines.csv").rows().stream()
                .map(row -> new MainLine(
                        row.make(() -> new Line(row.text("element"), Orbital.parse(row.text("nl")))),
                        row.number("photon_low_ev"),
                        row.number("photon_high_ev"),
                        row.text("reason")))
                .toList();
    }

    static @Nullable InputStream open(String table) {
        return ReferenceData.class.getResourceAsStream("/spotline/reference/" + table);
    }

    /** The tables that ship with the program. */
    public static ReferenceData shipped() {
        return Shipped.DATA;
    }

    /**
     * Where a line lies in a solid. For a whole nl: its component with j = l + 1/2.
     *
     * <p>The value is, in this order: the reference energy of ISO 15472 (monochromated Al), where the line is one; the
     * typical position of the element itself or, where the element is never met as such, of its most common state; the
     * solid-state table of Williams as Elam, Ravel, Sieber 2002 carry it; that of Larkins 1977, which also speaks for N, O
     * and F, whose values in the former are those of the gases. A component with j = l - 1/2 lies above its partner by
     * the doublet splitting where that was measured, or where the partner's value is of the first two kinds. Levels of rare gases without a state are those of the
     * gas, and say so.
     *
     * <p>Errors: empty where no table has the level.
     */
    public Optional<LevelEnergy> bindingEnergy(Line line) {
        return levels.bindingEnergy(line);
    }

    /**
     * Binding energies a line may be met at, from the lowest to the highest chemical state that is listed, the elemental
     * level included; satellites are not.
     *
     * <p>Units: eV. Errors: empty where no table has the level. Source: chemistry/chemical-states.csv and
     * levels/core-levels.csv.
     */
    public Optional<EnergyRange> stateRange(Line line) {
        return levels.stateRange(line);
    }

    /**
     * Natural width of a level; for a whole nl that of its component with j = l + 1/2.
     *
     * <p>Units: eV, FWHM. Errors: empty where no table has it. Source: Campbell, Papp 2001, else Krause, Oliver 1979, else
     * Keski-Rahkonen, Krause 1974.
     */
    public Optional<NaturalWidth> naturalWidth(Line line) {
        return levels.naturalWidth(line);
    }

    /**
     * Photoionisation cross section of a subshell or a whole nl, relative to C 1s at the same photon energy.
     *
     * <p>Within 0.5 eV of 1253.6, 1486.6, 2984.3, 5414.7 or 9251.7 eV the tabulated value, between them a straight line in
     * both logarithms. Errors: empty below threshold, outside these energies, or for a level the table lacks. Source:
     * EPDL2017, within 1 % of Scofield 1976.
     */
    public OptionalDouble crossSection(Line line, double photonEnergyEv) {
        return crossSections.crossSection(line, photonEnergyEv);
    }

    /** True where the photon energy is within 60 eV of an edge of the line: its cross section is not to be trusted. */
    public boolean nearThreshold(Line line, double photonEnergyEv) {
        return crossSections.nearThreshold(line, photonEnergyEv);
    }

    /**
     * Dipole asymmetry parameter beta of a line's nl, interpolated over the logarithm of the photon energy.
     *
     * <p>Errors: empty as for {@link #crossSection}. Source: computed for this project in the model of Reilman, Msezane,
     * Manson 1976; non-dipole terms, which matter above 3 keV, are not in it.
     */
    public OptionalDouble asymmetry(Line line, double photonEnergyEv) {
        return crossSections.asymmetry(line, photonEnergyEv);
    }

    /**
     * The doublet a line belongs to.
     *
     * <p>Errors: empty for an s line and where no source resolves the doublet. Source: splitting as measured on solids
     * (from memory), else from Elam 2002, else from Larkins 1977; area ratio from the cross sections at the photon energy,
     * else the statistical one.
     */
    public Optional<Doublet> doublet(Line line, double photonEnergyEv) {
        return levels.doublet(line, photonEnergyEv, crossSections);
    }

    /** Whole nl lines of an element that the photon energy reaches, the strongest first. Errors: none, may be empty. */
    public List<LineData> lines(Element element, double photonEnergyEv) {
        List<LineData> found = new ArrayList<>();
        for (Line line : crossSections.wholeLines(element.symbol())) {
            lineData(line, photonEnergyEv).ifPresent(found::add);
        }
        found.sort(Comparator.comparingDouble(LineData::relativeCrossSection).reversed());
        return List.copyOf(found);
    }

    private Optional<LineData> lineData(Line line, double photonEv) {
        OptionalDouble crossSection = crossSection(line, photonEv);
        Optional<LevelEnergy> energy = bindingEnergy(line);
        if (crossSection.isEmpty() || energy.isEmpty() || energy.get().valueEv() >= photonEv) return Optional.empty();
        OptionalDouble width =
                naturalWidth(line).map(w -> OptionalDouble.of(w.fwhmEv())).orElse(OptionalDouble.empty());
        return Optional.of(new LineData(
                line,
                line.members(),
                energy.get(),
                photonEv - energy.get().valueEv(),
                crossSection.getAsDouble(),
                width,
                nearThreshold(line, photonEv)));
    }

    /**
     * The whole nl line an analyst quantifies an element from: the strongest with a binding energy between 20 eV and the
     * photon energy less 100 eV and a natural width under 4 eV, not near threshold, unless levels/main-lines.csv names
     * another.
     *
     * <p>Errors: empty where there is none (hydrogen, helium). Source: common practice.
     */
    public Optional<Line> mainLine(Element element, double photonEnergyEv) {
        Optional<MainLine> named = namedMainLine(element, photonEnergyEv);
        if (named.isPresent()) return named.map(MainLine::line);
        return lines(element, photonEnergyEv).stream()
                .filter(data -> data.energy().valueEv() > SHALLOWEST_MAIN_EV)
                .filter(data -> data.kineticEv() > SLOWEST_MAIN_EV)
                .filter(data -> data.naturalWidthEv().orElse(0) < BROADEST_MAIN_EV)
                .filter(data -> !data.nearThreshold())
                .map(LineData::line)
                .findFirst();
    }

    /** Why {@link #mainLine} is not simply the strongest line; empty where it is. */
    public Optional<String> mainLineReason(Element element, double photonEnergyEv) {
        return namedMainLine(element, photonEnergyEv).map(MainLine::reason);
    }

    private Optional<MainLine> namedMainLine(Element element, double photonEv) {
        return mainLines.stream()
                .filter(main -> main.line().element().equals(element.symbol()))
                .filter(main -> photonEv >= main.photonLowEv() && photonEv <= main.photonHighEv())
                .findFirst();
    }

    /** Principal Auger lines of an element, in the order of the table; empty where none is listed. */
    public List<AugerLine> augerLines(Element element) {
        return chemistry.augerLines.stream()
                .filter(line -> line.element().equals(element.symbol()))
                .toList();
    }

    /** X-ray lines used as sources, each plain and, where in use, behind a monochromator. */
    public List<XraySource> xraySources() {
        return calibration.sources();
    }

    /**
     * An X-ray line by its name, as "Al Ka", "Al K-alpha" or the bare anode "Al", whatever the case.
     *
     * <p>Errors: empty for a name that is not listed, and for a monochromated line that nobody uses.
     */
    public Optional<XraySource> source(String name, boolean monochromated) {
        return calibration.source(name, monochromated);
    }

    /** The X-ray line within 0.5 eV of a photon energy. */
    public Optional<XraySource> sourceNear(double photonEnergyEv, boolean monochromated) {
        return calibration.sourceNear(photonEnergyEv, monochromated);
    }

    /** Satellites of a source, none when it is monochromated or not listed (Mg and Al are). */
    public List<XraySatellite> satellites(XraySource source) {
        return calibration.satellites(source);
    }

    /** Stray lines that may repeat strong peaks under a photon energy: oxidised or worn anodes, the other anode. */
    public List<GhostLine> ghostLines(double photonEnergyEv) {
        return calibration.ghostLines(photonEnergyEv);
    }

    /** Reference energies for a source. */
    public List<CalibrationEnergy> calibrationEnergies(XraySource source) {
        return calibration.energies().stream()
                .filter(e -> e.xraySource().equals(source.name()) && e.monochromated() == source.monochromated())
                .toList();
    }

    /** Superseded reference energies. */
    public List<EarlierReferenceEnergy> earlierReferenceEnergies() {
        return calibration.earlier();
    }

    /** What published guides say of adventitious carbon. */
    public List<CarbonReference> carbonReferences() {
        return calibration.carbon();
    }

    /** States and satellites listed for a line; those of a whole nl and of its components go together. */
    public List<ChemicalState> chemicalStates(Line line) {
        return chemistry.states.stream()
                .filter(state -> related(state.line(), line))
                .toList();
    }

    /** Auger parameters listed for a photoelectron line, related as in {@link #chemicalStates}. */
    public List<AugerParameter> augerParameters(Line line) {
        return chemistry.augerParameters.stream()
                .filter(parameter -> related(parameter.line(), line))
                .toList();
    }

    private static boolean related(Line listed, Line wanted) {
        if (!listed.element().equals(wanted.element())) return false;
        return listed.equals(wanted)
                || (listed.whole().equals(wanted.whole())
                        && (listed.orbital().isWhole() || wanted.orbital().isWhole()));
    }

    /** Known overlaps of a line's nl. Those with an X-ray source hold for that source alone. */
    public List<Overlap> overlaps(Line line) {
        return chemistry.overlaps.stream()
                .filter(overlap -> overlap.line().whole().equals(line.whole()))
                .toList();
    }

    /** Materials of mounts and handling that show in spectra. */
    public List<MountMaterial> mountMaterials() {
        return chemistry.mounts;
    }

    /** Materials that go with a mounting method ("carbon-tape", "metal-clip"); empty for a method without any. */
    public List<MountMaterial> mountMaterialsFor(String mountMethod) {
        return chemistry.mounts.stream()
                .filter(mount -> mount.mountMethods().contains(mountMethod))
                .toList();
    }

    /** Compounds of known composition, for checks. */
    public List<KnownCompound> compounds() {
        return chemistry.compounds;
    }

    /** Materials for the mean free path formulas. */
    public List<Material> materials() {
        return chemistry.materials;
    }

    public Optional<Material> material(String name) {
        return chemistry.materials.stream().filter(m -> m.name().equals(name)).findFirst();
    }

    /** Classes of inelastic cross sections for Tougaard backgrounds. */
    public List<InelasticCrossSection> inelasticCrossSections() {
        return chemistry.inelastic;
    }

    public Optional<InelasticCrossSection> inelasticCrossSection(String name) {
        return chemistry.inelastic.stream().filter(c -> c.name().equals(name)).findFirst();
    }
}
