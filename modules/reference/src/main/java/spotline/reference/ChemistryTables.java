package spotline.reference;

import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** States, Auger lines and parameters, overlaps, mounts, compounds, materials: lists a caller filters. */
final class ChemistryTables {
    final List<ChemicalState> states;
    final List<AugerLine> augerLines;
    final List<AugerParameter> augerParameters;
    final List<Overlap> overlaps;
    final List<MountMaterial> mounts;
    final List<KnownCompound> compounds;
    final List<Material> materials;
    final List<InelasticCrossSection> inelastic;

    ChemistryTables(Function<String, ? extends @Nullable InputStream> source) {
        states = rows(source, "chemistry/chemical-states.csv", ChemistryTables::state);
        augerLines = rows(
                source,
                "levels/auger-lines.csv",
                row -> new AugerLine(
                        row.parsed("symbol", ChemistryTables::symbol),
                        row.text("transition"),
                        row.text("levels"),
                        row.number("ke_typical_ev"),
                        row.number("ke_estimate_ev"),
                        row.text("note"),
                        row.text("source")));
        augerParameters = rows(
                source,
                "chemistry/auger-parameters.csv",
                row -> new AugerParameter(
                        line(row, "element", row.text("photoelectron_line")),
                        row.text("state"),
                        row.text("auger_line"),
                        row.number("be_ev"),
                        row.number("auger_ke_ev"),
                        row.number("modified_auger_parameter_ev"),
                        row.text("source")));
        overlaps = rows(
                source,
                "levels/overlaps.csv",
                row -> new Overlap(
                        row.parsed("line", Line::parse),
                        row.text("interfering"),
                        row.has("xray_source") ? Optional.of(row.text("xray_source")) : Optional.empty(),
                        row.text("use_instead"),
                        row.text("source")));
        Map<String, List<MountMaterial.Marker>> markers = new TreeMap<>();
        for (Table.Row row : Table.read(source, "mounts/mount-markers.csv").rows()) {
            markers.computeIfAbsent(row.text("material"), id -> new ArrayList<>())
                    .add(marker(row));
        }
        mounts = rows(
                source,
                "mounts/mount-materials.csv",
                row -> new MountMaterial(
                        row.text("id"),
                        row.text("name"),
                        row.has("mount_methods")
                                ? List.of(row.text("mount_methods").split(";"))
                                : List.of(),
                        row.text("evidence"),
                        Optional.ofNullable(markers.remove(row.text("id")))
                                .orElseThrow(() -> row.wrong("id", "a material with markers")),
                        row.text("source")));
        if (!markers.isEmpty()) {
            throw new IllegalStateException("mounts/mount-markers.csv: no material for " + markers.keySet());
        }
        compounds = rows(source, "chemistry/stoichiometry.csv", ChemistryTables::compound);
        materials = rows(
                source,
                "mean-free-path/materials.csv",
                row -> row.make(() -> new Material(
                        row.text("material"),
                        row.number("density_g_cm3"),
                        row.number("molar_mass_g_mol"),
                        row.number("valence_electrons"),
                        row.number("band_gap_ev"))));
        inelastic = rows(
                source,
                "inelastic-scattering/tougaard-classes.csv",
                row -> new InelasticCrossSection(
                        row.text("class"),
                        row.number("b_ev2"),
                        row.number("c_ev2"),
                        row.optional("d_ev2"),
                        row.number("integral"),
                        row.number("peak_ev"),
                        row.text("source")));
    }

    private static <T> List<T> rows(
            Function<String, ? extends @Nullable InputStream> source, String table, Function<Table.Row, T> reader) {
        return Table.read(source, table).rows().stream().map(reader).toList();
    }

    private static Line line(Table.Row row, String element, String orbital) {
        return row.make(() -> new Line(row.text(element), Orbital.parse(orbital)));
    }

    private static String symbol(String text) {
        return Elements.bySymbol(text)
                .orElseThrow(() -> new IllegalArgumentException("\"" + text + "\" is no element's symbol"))
                .symbol();
    }

    private static ChemicalState state(Table.Row row) {
        String kind = row.text("kind");
        if (!kind.equals("state") && !kind.equals("satellite")) throw row.wrong("kind", "state or satellite");
        return new ChemicalState(
                line(row, "element", row.text("line")),
                row.text("state"),
                row.number("be_ev"),
                row.number("spread_ev"),
                kind.equals("satellite"),
                row.yes("representative"),
                row.text("source"));
    }

    private static MountMaterial.Marker marker(Table.Row row) {
        String presence = row.text("presence");
        if (!presence.equals("always") && !presence.equals("sometimes")) {
            throw row.wrong("presence", "always or sometimes");
        }
        return new MountMaterial.Marker(
                row.parsed("line", Line::parse),
                row.number("low_ev"),
                row.number("high_ev"),
                presence.equals("always"));
    }

    private static KnownCompound compound(Table.Row row) {
        Map<String, Double> percent = new TreeMap<>();
        for (String part : row.text("atomic_percent_no_h").split(";")) {
            int colon = part.indexOf(':');
            if (colon < 0) throw row.wrong("atomic_percent_no_h", "SYMBOL:PERCENT separated by semicolons");
            percent.put(part.substring(0, colon), row.make(() -> Double.valueOf(part.substring(colon + 1))));
        }
        return new KnownCompound(
                row.text("material"), row.text("formula"), percent, row.text("line_positions"), row.text("source"));
    }
}
