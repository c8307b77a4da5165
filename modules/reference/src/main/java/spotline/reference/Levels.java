package spotline.reference;

import java.io.InputStream;
import java.util.DoubleSummaryStatistics;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Binding energies, widths and doublets: which of several tables speaks for a line in a solid. */
final class Levels {
    /** Elam 2002 holds the values of the gases N2, O2 and F2 here, 8 to 13 eV above those of solids. */
    private static final List<String> GAS_IN_ELAM = List.of("N", "O", "F");

    private static final List<String> RARE_GASES = List.of("He", "Ne", "Ar", "Kr", "Xe", "Rn");

    private final Map<Line, Level> levels = new HashMap<>();
    private final Map<Line, Splitting> splittings = new HashMap<>();
    private final Map<Line, LevelEnergy> calibration = new HashMap<>();
    private final Map<Line, List<ChemicalState>> statesByWholeLine;

    private record Level(
            OptionalDouble larkins, OptionalDouble elam, OptionalDouble spread, Optional<NaturalWidth> width) {}

    private record Splitting(OptionalDouble measured, OptionalDouble elam, OptionalDouble larkins) {}

    Levels(
            Function<String, ? extends @Nullable InputStream> source,
            List<CalibrationEnergy> calibrationEnergies,
            List<ChemicalState> states) {
        statesByWholeLine = states.stream()
                .collect(Collectors.groupingBy(state -> state.line().whole(), Collectors.toUnmodifiableList()));
        for (Table.Row row : Table.read(source, "levels/core-levels.csv").rows()) {
            Level level = new Level(
                    row.optional("be_larkins1977"), row.optional("be_elam2002"), row.optional("spread_ev"), width(row));
            if (levels.put(CrossSections.line(row, "orbital"), level) != null) {
                throw row.wrong("orbital", "each level once");
            }
        }
        for (Table.Row row : Table.read(source, "levels/doublets.csv").rows()) {
            splittings.put(
                    CrossSections.line(row, "nl"),
                    new Splitting(
                            row.optional("splitting_measured"),
                            row.optional("splitting_elam2002"),
                            row.optional("splitting_larkins")));
        }
        for (CalibrationEnergy energy : calibrationEnergies) {
            if (!energy.monochromated()) continue;
            Line.find(energy.line())
                    .ifPresent(line -> calibration.put(
                            line,
                            new LevelEnergy(
                                    energy.bindingEv(),
                                    energy.standardUncertaintyEv(),
                                    "metal, ISO 15472 reference energy, monochromated Al K-alpha")));
        }
    }

    private static Optional<NaturalWidth> width(Table.Row row) {
        return first(row, "width_campbell_papp", "Campbell, Papp 2001")
                .or(() -> first(row, "width_krause_oliver", "Krause, Oliver 1979"))
                .or(() -> first(row, "width_keski_rahkonen_krause", "Keski-Rahkonen, Krause 1974"));
    }

    private static Optional<NaturalWidth> first(Table.Row row, String column, String source) {
        OptionalDouble value = row.optional(column);
        return value.isPresent() ? Optional.of(new NaturalWidth(value.getAsDouble(), source)) : Optional.empty();
    }

    Optional<LevelEnergy> bindingEnergy(Line line) {
        Line high = line.high();
        Optional<LevelEnergy> named = named(high);
        Optional<LevelEnergy> strong = named.or(() -> tabulated(high));
        if (line.orbital().isWhole() || line.equals(high)) return strong;
        Splitting splitting = splittings.get(line.whole());
        boolean measured = splitting != null && splitting.measured().isPresent();
        if (strong.isEmpty() || (named.isEmpty() && !measured)) {
            // Williams lists Na 2p and Co 3p the wrong way round: taken as not resolved.
            return tabulated(line)
                    .map(e -> strong.filter(s -> s.valueEv() > e.valueEv()).orElse(e));
        }
        OptionalDouble above = splitting(line.whole());
        if (above.isEmpty()) return strong;
        LevelEnergy partner = strong.get();
        return Optional.of(new LevelEnergy(
                partner.valueEv() + above.getAsDouble(),
                partner.spreadEv(),
                partner.source() + "; plus the doublet splitting"));
    }

    /** The value of a calibration line or of the state that stands for the line. */
    private Optional<LevelEnergy> named(Line high) {
        LevelEnergy reference = calibration.get(high);
        if (reference != null) return Optional.of(reference);
        return states(high).stream()
                .filter(ChemicalState::representative)
                .filter(state -> state.line().equals(high) || state.line().equals(high.whole()))
                .findFirst()
                .map(state -> new LevelEnergy(
                        state.valueEv(), state.halfRangeEv(), state.state() + ", typical value, " + state.source()));
    }

    private Optional<LevelEnergy> tabulated(Line line) {
        Level level = levels.get(line);
        if (level == null) return Optional.empty();
        if (GAS_IN_ELAM.contains(line.element())) {
            return level.larkins().isPresent()
                    ? Optional.of(new LevelEnergy(
                            level.larkins().getAsDouble(), halfRangeOfStates(line), "Larkins 1977 (solid)"))
                    : Optional.empty();
        }
        boolean elam = level.elam().isPresent();
        OptionalDouble value = elam ? level.elam() : level.larkins();
        if (value.isEmpty()) return Optional.empty();
        String table = elam ? "Elam, Ravel, Sieber 2002 (Williams)" : "Larkins 1977";
        if (RARE_GASES.contains(line.element())) table += ", gas, vacuum level";
        return Optional.of(new LevelEnergy(value.getAsDouble(), level.spread().orElse(0), table));
    }

    private List<ChemicalState> states(Line line) {
        return statesByWholeLine.getOrDefault(line.whole(), List.of());
    }

    private double halfRangeOfStates(Line line) {
        DoubleSummaryStatistics values = states(line).stream()
                .filter(state -> !state.satellite())
                .mapToDouble(ChemicalState::valueEv)
                .summaryStatistics();
        return values.getCount() == 0 ? 0 : 0.5 * (values.getMax() - values.getMin());
    }

    Optional<EnergyRange> stateRange(Line line) {
        boolean low = !line.orbital().isWhole() && line.equals(line.low());
        double splitting = splitting(line.whole()).orElse(0);
        Optional<EnergyRange> range = bindingEnergy(line).map(e -> new EnergyRange(e.valueEv(), e.valueEv()));
        for (ChemicalState state : states(line)) {
            if (state.satellite()) continue;
            boolean stateLow = !state.line().orbital().isWhole()
                    && state.line().equals(state.line().low());
            double value = state.valueEv() + (low ? splitting : 0) - (stateLow ? splitting : 0);
            range = Optional.of(range.map(r -> r.including(value)).orElse(new EnergyRange(value, value)));
        }
        Level level = levels.get(line.orbital().isWhole() ? line.high() : line);
        boolean solid = !GAS_IN_ELAM.contains(line.element()) && !RARE_GASES.contains(line.element());
        if (level != null && level.elam().isPresent() && solid) {
            double elam = level.elam().getAsDouble();
            range = Optional.of(range.map(r -> r.including(elam)).orElse(new EnergyRange(elam, elam)));
        }
        return range;
    }

    Optional<NaturalWidth> naturalWidth(Line line) {
        Level level = levels.get(line.orbital().isWhole() ? line.high() : line);
        return level == null ? Optional.empty() : level.width();
    }

    OptionalDouble splitting(Line whole) {
        Splitting splitting = splittings.get(whole);
        if (splitting == null) return OptionalDouble.empty();
        for (OptionalDouble value : List.of(splitting.measured(), splitting.elam(), splitting.larkins())) {
            // The tables write 0.0 where they do not resolve the doublet.
            if (value.isPresent() && value.getAsDouble() > 0) return value;
        }
        return OptionalDouble.empty();
    }

    Optional<Doublet> doublet(Line line, double photonEv, CrossSections crossSections) {
        Line whole = line.whole();
        OptionalDouble splitting = splitting(whole);
        Splitting sources = splittings.get(whole);
        if (splitting.isEmpty() || sources == null) return Optional.empty();
        String from = sources.measured().isPresent()
                ? "measured splitting of the solid, from memory"
                : "splitting of " + (sources.elam().orElse(0) > 0 ? "Elam, Ravel, Sieber 2002" : "Larkins 1977");
        OptionalDouble low = crossSections.crossSection(whole.low(), photonEv);
        OptionalDouble high = crossSections.crossSection(whole.high(), photonEv);
        if (low.isPresent() && high.isPresent()) {
            double ratio = low.getAsDouble() / high.getAsDouble();
            return Optional.of(new Doublet(splitting.getAsDouble(), ratio, from + "; area ratio of EPDL2017"));
        }
        int l = whole.orbital().l();
        return Optional.of(new Doublet(splitting.getAsDouble(), l / (l + 1.0), from + "; statistical area ratio"));
    }
}
