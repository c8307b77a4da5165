package spotline.analysis.peakfit;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import spotline.analysis.background.Shirley;
import spotline.analysis.peakfit.ParameterRule.EqualTo;
import spotline.analysis.peakfit.ParameterRule.Fixed;
import spotline.analysis.peakfit.ParameterRule.Free;
import spotline.analysis.peakfit.ParameterRule.OffsetFrom;
import spotline.numerics.shape.DoniachSunjic;
import spotline.numerics.shape.LineShape;
import spotline.numerics.shape.Voigt;
import spotline.reference.ChemicalState;
import spotline.reference.Doublet;
import spotline.reference.Element;
import spotline.reference.Elements;
import spotline.reference.LevelEnergy;
import spotline.reference.Line;
import spotline.reference.LineData;
import spotline.reference.NaturalWidth;
import spotline.reference.ReferenceData;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

/**
 * The model that a common line is fitted with unless the analyst gives one: carbon with its oxygen-bound components, metal
 * doublets, pairs of oxide and metal, and the few groups of states that a line keeps apart by itself.
 *
 * <p>Positions, splittings, area ratios and Lorentzian widths come from the reference data, one Gaussian width is shared by
 * all components of a line but the metal's, and a metal's line is asymmetric. Which states a line is fitted with: common
 * practice, no source. States closer together than a line is wide are one component, named for all of them. Lines with
 * multiplets (Cr, Mn, Fe, Co, Ni, Cu 2p) or with states too close to tell apart (O 1s) have no default model.
 *
 * <p>Shape: one line of one scan in, one model out. Units: eV; the shift is what is added to measured binding energies.
 * Errors: empty where no default serves: another line, a scan that does not hold it, another element's line among it. A
 * state whose typical position was not scanned is left out.
 */
public final class DefaultModels {
    /** Channels averaged at either end for the start of the background. */
    private static final int ENDPOINTS = 5;

    private static final double BELOW = 4;
    private static final double ABOVE = 5;
    /** A window ends at least this far from the outermost component, eV. */
    private static final double LEAST_MARGIN = 1.5;
    /** Positions may differ from the typical one by its half range and this, for the reference's own uncertainty, eV. */
    private static final double REFERENCE_REACH = 0.5;

    private static final double WIDEST_DOUBLET = 10;
    /** A doublet split this far shows how wide its partner is in compounds, where decay makes it wider than in the metal, eV. */
    private static final double APART = 3;

    private static final double WIDEST_PARTNER = 3;

    private final ReferenceData reference;

    public DefaultModels(ReferenceData reference) {
        this.reference = requireNonNull(reference, "reference");
    }

    /** How a component of a default is placed. */
    private enum Kind {
        /** Always there, placed by itself. */
        MAIN,
        /** A metal: asymmetric, its own width. */
        METAL,
        /** Placed by itself. */
        STATE,
        /** Placed by its distance from the main component. */
        COMPANION
    }

    /**
     * One component of a default.
     *
     * @param name what tables call the state
     * @param states names in the reference data that it stands for; it is placed between the lowest and highest
     * @param onlyWith element that has to be at the spot; empty: any
     */
    private record Entry(String name, Kind kind, List<String> states, String onlyWith) {
        static Entry of(String name, Kind kind, String... states) {
            return new Entry(name, kind, List.of(states), "");
        }

        Entry with(String element) {
            return new Entry(name, kind, states, element);
        }
    }

    private static final Map<String, List<Entry>> LINES = Map.ofEntries(
            Map.entry(
                    "C 1s",
                    List.of(
                            Entry.of("C-C, C-H", Kind.MAIN, "hydrocarbon C-C/C-H"),
                            Entry.of("C-O", Kind.COMPANION, "C-O alcohol/ether"),
                            Entry.of("C=O", Kind.COMPANION, "C=O carbonyl"),
                            Entry.of("O-C=O or carbonate", Kind.COMPANION, "O-C=O ester", "carbonate CO3(2-)"),
                            Entry.of("CF2", Kind.COMPANION, "CF2 (PTFE)").with("F"))),
            Map.entry(
                    "N 1s",
                    List.of(
                            Entry.of("organic nitrogen", Kind.MAIN, "amine C-N", "pyrrolic"),
                            Entry.of("ammonium", Kind.STATE, "quaternary/ammonium"),
                            Entry.of("nitride", Kind.STATE, "nitride (TiN)", "BN"),
                            Entry.of("nitrate", Kind.STATE, "nitrate"))),
            Map.entry(
                    "F 1s",
                    List.of(
                            Entry.of("fluoride", Kind.STATE, "metal fluoride", "LiF"),
                            Entry.of("C-F", Kind.STATE, "C-F semi-ionic", "CF2 (PTFE)"))),
            Map.entry("Na 1s", List.of(Entry.of("sodium salts", Kind.MAIN, "Na+ salts"))),
            Map.entry("Mg 2p", pair("Mg", "Mg metal", "MgO")),
            Map.entry("Al 2p", pair("Al", "Al metal", "Al2O3")),
            Map.entry(
                    "Si 2p",
                    List.of(
                            Entry.of("Si(0)", Kind.METAL, "Si(0)"),
                            Entry.of("silicate, silica or siloxane", Kind.STATE, "siloxane (PDMS)", "SiO2"))),
            Map.entry(
                    "P 2p",
                    List.of(
                            Entry.of("phosphate", Kind.STATE, "phosphate"),
                            Entry.of("phosphide", Kind.STATE, "phosphide (InP)"))),
            Map.entry(
                    "S 2p",
                    List.of(
                            Entry.of("sulfide", Kind.STATE, "metal sulfide"),
                            Entry.of("organic sulfur", Kind.STATE, "thiol/thioether", "S8"),
                            Entry.of("sulfate or sulfonate", Kind.STATE, "sulfonate", "sulfate"))),
            Map.entry(
                    "Cl 2p",
                    List.of(
                            Entry.of("chloride", Kind.STATE, "metal chloride"),
                            Entry.of("organic chlorine", Kind.STATE, "organic C-Cl"))),
            Map.entry("Ca 2p", List.of(Entry.of("calcium compounds", Kind.MAIN, "CaO", "CaF2"))),
            Map.entry(
                    "Ti 2p",
                    List.of(Entry.of("Ti metal", Kind.METAL, "Ti metal"), Entry.of("TiO2", Kind.STATE, "TiO2"))),
            Map.entry("Zn 2p", List.of(Entry.of("Zn(II) or zinc metal", Kind.MAIN, "Zn metal", "ZnO"))),
            Map.entry("Zr 3d", pair("Zr", "Zr metal", "ZrO2")),
            Map.entry("Nb 3d", pair("Nb", "Nb metal", "Nb2O5")),
            Map.entry(
                    "Mo 3d",
                    List.of(
                            Entry.of("Mo metal", Kind.METAL, "Mo metal"),
                            Entry.of("Mo(IV)", Kind.STATE, "MoS2", "MoO2"),
                            Entry.of("MoO3", Kind.STATE, "MoO3"))),
            Map.entry("Pd 3d", pair("Pd", "Pd metal", "PdO")),
            Map.entry("Ag 3d", List.of(Entry.of("Ag metal or silver compounds", Kind.METAL, "Ag metal", "Ag2O"))),
            Map.entry("In 3d", List.of(Entry.of("indium compounds or metal", Kind.MAIN, "In metal", "In2O3"))),
            Map.entry(
                    "Sn 3d",
                    List.of(
                            Entry.of("Sn metal", Kind.METAL, "Sn metal"),
                            Entry.of("tin oxide", Kind.STATE, "SnO", "SnO2"))),
            Map.entry("Hf 4f", pair("Hf", "Hf metal", "HfO2")),
            Map.entry("Ta 4f", pair("Ta", "Ta metal", "Ta2O5")),
            Map.entry("W 4f", pair("W", "W metal", "WO3")),
            Map.entry("Pt 4f", List.of(Entry.of("Pt metal", Kind.METAL, "Pt metal"))),
            Map.entry("Au 4f", List.of(Entry.of("Au metal", Kind.METAL, "Au metal"))),
            Map.entry("Pb 4f", pair("Pb", "Pb metal", "PbO")));

    private static List<Entry> pair(String element, String metal, String oxide) {
        return List.of(
                Entry.of(metal, Kind.METAL, metal), Entry.of(element + " oxide (" + oxide + ")", Kind.STATE, oxide));
    }

    /** Whether a line has a default model at all. */
    public boolean has(Line line) {
        return LINES.containsKey(line.whole().toString());
    }

    /**
     * @param shiftEv added to a measured binding energy it gives the referenced one; known, not guessed
     * @param elements symbols of the elements at the spot
     */
    public Optional<FitModel> of(Line line, BindingScan scan, double shiftEv, Set<String> elements) {
        List<Entry> entries = LINES.getOrDefault(line.whole().toString(), List.of()).stream()
                .filter(e -> e.onlyWith().isEmpty() || elements.contains(e.onlyWith()))
                .filter(e -> e.kind() == Kind.MAIN
                        || scan.range()
                                .contains(place(line, e).measured(shiftEv).start()))
                .toList();
        if (entries.isEmpty()) return Optional.empty();
        Optional<Doublet> doublet =
                line.orbital().l() == 0 ? Optional.empty() : reference.doublet(line.whole(), scan.photonEnergyEv());
        if (line.orbital().l() > 0 && doublet.isEmpty()) return Optional.empty();
        double splitting = doublet.map(Doublet::splittingEv).orElse(0.0);
        List<Place> places = new ArrayList<>();
        for (Entry e : entries) places.add(place(line, e).measured(shiftEv));
        double lowest = places.stream().mapToDouble(Place::low).min().orElseThrow();
        double highest = places.stream().mapToDouble(Place::high).max().orElseThrow();
        Window range = scan.range();
        // A wide doublet is often measured by its first member alone.
        boolean both =
                splitting > 0 && splitting <= WIDEST_DOUBLET && range.highEv() >= highest + splitting + LEAST_MARGIN;
        double last = both ? highest + splitting : highest;
        double farthest = last + ABOVE;
        if (splitting > 0 && !both) farthest = Math.min(farthest, lowest + splitting - 2 * LEAST_MARGIN);
        double low = Math.max(range.lowEv(), lowest - BELOW);
        double high = Math.min(range.highEv(), farthest);
        for (double foreign : foreign(line, scan, shiftEv, elements)) {
            if (foreign > lowest - LEAST_MARGIN && foreign < last + LEAST_MARGIN) return Optional.empty();
            if (foreign <= lowest - LEAST_MARGIN) low = Math.max(low, 0.5 * (foreign + lowest));
            else high = Math.min(high, 0.5 * (foreign + last));
        }
        if (low > lowest - LEAST_MARGIN || high < last + LEAST_MARGIN) return Optional.empty();
        return Optional.of(new FitModel(
                new Window(low, high),
                BackgroundModel.fittedAlong(Shirley.of(ENDPOINTS)),
                components(line, entries, places, both, splitting),
                List.of()));
    }

    /** Where a component may stand, and where it is looked for first. */
    private record Place(double low, double start, double high) {
        Place measured(double shiftEv) {
            return new Place(low - shiftEv, start - shiftEv, high - shiftEv);
        }
    }

    private Place place(Line line, Entry entry) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        double sum = 0;
        for (String name : entry.states()) {
            ChemicalState state = state(line, name);
            low = Math.min(low, state.valueEv() - state.halfRangeEv() - REFERENCE_REACH);
            high = Math.max(high, state.valueEv() + state.halfRangeEv() + REFERENCE_REACH);
            sum += state.valueEv();
        }
        return new Place(low, sum / entry.states().size(), high);
    }

    private ChemicalState state(Line line, String name) {
        return reference.chemicalStates(line.whole()).stream()
                .filter(s -> s.state().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("no state " + name + " of " + line + " is tabulated"));
    }

    private List<ComponentModel> components(
            Line line, List<Entry> entries, List<Place> places, boolean both, double splitting) {
        double lorentzian = reference
                .naturalWidth(line.whole().high())
                .map(NaturalWidth::fwhmEv)
                .orElse(0.1);
        double partner = Math.max(
                lorentzian,
                reference
                        .naturalWidth(line.whole().low())
                        .map(NaturalWidth::fwhmEv)
                        .orElse(lorentzian));
        String widthLeader = "";
        List<ComponentModel> components = new ArrayList<>();
        for (int i = 0; i < entries.size(); i++) {
            Entry entry = entries.get(i);
            boolean metal = entry.kind() == Kind.METAL;
            LineShape shape = metal ? new DoniachSunjic() : new Voigt();
            ComponentModel component = ComponentModel.of(entry.name(), shape)
                    .with("position", position(line, entries, places, i))
                    .with("lorentzianFwhm", new Fixed(lorentzian));
            if (metal) {
                component = component
                        .with("gaussianFwhm", Free.from(0.8, 0.2, 2))
                        .with("asymmetry", Free.from(0.05, 0, 0.25));
            } else if (widthLeader.isEmpty()) {
                component = component.with("gaussianFwhm", Free.from(1.2, 0.4, 3));
                widthLeader = entry.name();
            } else {
                component = component.with("gaussianFwhm", new EqualTo(widthLeader));
            }
            if (both) {
                boolean free = !metal && splitting >= APART;
                component = component.with(DoubletRule.of(line)
                        .withLorentzianFwhm(
                                free ? Free.from(partner, lorentzian, WIDEST_PARTNER) : new Fixed(partner)));
            }
            components.add(component);
        }
        return components;
    }

    private ParameterRule position(Line line, List<Entry> entries, List<Place> places, int i) {
        Place own = places.get(i);
        if (entries.get(i).kind() != Kind.COMPANION) return Free.from(own.start(), own.low(), own.high());
        double main = state(line, entries.get(0).states().get(0)).valueEv();
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (String name : entries.get(i).states()) {
            ChemicalState state = state(line, name);
            // Both stand in one spectrum: the uncertainty of its reference does not come in.
            low = Math.min(low, state.valueEv() - main - state.halfRangeEv());
            high = Math.max(high, state.valueEv() - main + state.halfRangeEv());
        }
        return new OffsetFrom(entries.get(0).name(), Free.from(0.5 * (low + high), low, high));
    }

    /** Where other elements' photoelectron lines lie on the measured scale. */
    private List<Double> foreign(Line own, BindingScan scan, double shiftEv, Set<String> elements) {
        List<Double> energies = new ArrayList<>();
        for (String symbol : elements) {
            Optional<Element> element = Elements.bySymbol(symbol);
            if (symbol.equals(own.element()) || element.isEmpty()) continue;
            for (LineData data : reference.lines(element.get(), scan.photonEnergyEv())) {
                for (Line member : data.members()) {
                    Optional<LevelEnergy> level = reference.bindingEnergy(member);
                    if (level.isEmpty()) continue;
                    double at = level.get().valueEv() - shiftEv;
                    if (scan.range().contains(at)) energies.add(at);
                }
            }
        }
        return energies;
    }
}
