package spotline.reference;

import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** X-ray lines, their satellites and ghosts, and the energies a scale is calibrated with. */
final class CalibrationTables {
    private static final Pattern NOT_IN_KEY = Pattern.compile("mono(chromat(ed|ic|ised|or))?|[^a-z0-9]|1,?2$");

    /** Two sources closer than this are one and the same. */
    private static final double SAME_SOURCE_EV = 0.5;

    private final List<XraySource> sources;
    private final List<GhostLine> stray;
    private final List<XraySatellite> satellites;
    private final List<CalibrationEnergy> energies;
    private final List<EarlierReferenceEnergy> earlier;
    private final List<CarbonReference> carbon;

    CalibrationTables(Function<String, ? extends @Nullable InputStream> source) {
        List<Table.Row> rows =
                Table.read(source, "calibration/xray-sources.csv").rows();
        List<XraySource> all = new ArrayList<>();
        for (Table.Row row : rows) {
            if (!row.text("use").equals("source")) continue;
            all.add(xraySource(row, false, "photon_ev", "width_ev"));
            if (row.has("mono_photon_ev")) all.add(xraySource(row, true, "mono_photon_ev", "mono_width_ev"));
        }
        sources = List.copyOf(all);
        stray = rows.stream()
                .filter(row -> row.has("ghost_cause"))
                .map(row -> new GhostLine(row.text("name"), row.number("photon_ev"), 0, row.text("ghost_cause")))
                .toList();
        satellites = Table.read(source, "calibration/xray-satellites.csv").rows().stream()
                .filter(row -> row.number("set_a_displacement_ev") > 0)
                .map(CalibrationTables::satellite)
                .toList();
        energies = Table.read(source, "calibration/iso-15472-reference-energies.csv").rows().stream()
                .map(row -> new CalibrationEnergy(
                        row.text("line"),
                        row.text("xray_source"),
                        row.yes("monochromated"),
                        row.number("binding_ev"),
                        row.yes("information_only"),
                        row.number("standard_uncertainty_ev"),
                        row.text("use"),
                        row.text("source")))
                .toList();
        earlier = Table.read(source, "calibration/earlier-reference-energies.csv").rows().stream()
                .map(row -> new EarlierReferenceEnergy(
                        row.text("set"),
                        row.text("line"),
                        row.number("binding_ev"),
                        row.text("note"),
                        row.text("source")))
                .toList();
        carbon = Table.read(source, "calibration/adventitious-carbon.csv").rows().stream()
                .map(row -> new CarbonReference(
                        row.optional("value_ev"),
                        row.has("low_ev")
                                ? Optional.of(
                                        row.make(() -> new EnergyRange(row.number("low_ev"), row.number("high_ev"))))
                                : Optional.empty(),
                        row.text("statement"),
                        row.text("source")))
                .toList();
    }

    private static XraySource xraySource(Table.Row row, boolean mono, String energy, String width) {
        return new XraySource(
                row.text("name"), mono, row.number(energy), row.number(width), row.text("note"), row.text("source"));
    }

    private static XraySatellite satellite(Table.Row row) {
        boolean handbook = row.has("set_b_displacement_ev");
        String main = handbook ? "set_b" : "set_a";
        return new XraySatellite(
                row.text("anode"),
                row.text("line"),
                row.number(main + "_displacement_ev"),
                row.number(main + "_height_percent") / 100,
                handbook ? row.optional("set_a_displacement_ev") : OptionalDouble.empty(),
                handbook ? OptionalDouble.of(row.number("set_a_height_percent") / 100) : OptionalDouble.empty(),
                row.text("source"));
    }

    List<XraySource> sources() {
        return sources;
    }

    Optional<XraySource> source(String name, boolean mono) {
        String key = key(name);
        return sources.stream()
                .filter(s -> s.monochromated() == mono)
                .filter(s -> key.equals(key(s.name())) || key.equals(key(anode(s.name()))))
                .findFirst();
    }

    private static String anode(String name) {
        return name.substring(0, name.indexOf(' '));
    }

    /** Letters alone, Greek and spelt-out alpha as a: labels in files write one line in many ways. */
    private static String key(String name) {
        String plain = name.toLowerCase(Locale.ROOT).replace("\u03b1", "a").replace("alpha", "a");
        return NOT_IN_KEY.matcher(plain).replaceAll("");
    }

    Optional<XraySource> sourceNear(double photonEv, boolean mono) {
        return sources.stream()
                .filter(s -> s.monochromated() == mono && Math.abs(s.photonEnergyEv() - photonEv) <= SAME_SOURCE_EV)
                .findFirst();
    }

    List<XraySatellite> satellites(XraySource source) {
        if (source.monochromated()) return List.of();
        return satellites.stream()
                .filter(s -> s.xraySource().equals(source.name()))
                .toList();
    }

    List<GhostLine> ghostLines(double photonEv) {
        return stray.stream()
                .filter(line -> Math.abs(line.photonEnergyEv() - photonEv) > SAME_SOURCE_EV)
                .map(line -> new GhostLine(
                        line.contaminant(), line.photonEnergyEv(), photonEv - line.photonEnergyEv(), line.cause()))
                .toList();
    }

    List<CalibrationEnergy> energies() {
        return energies;
    }

    List<EarlierReferenceEnergy> earlier() {
        return earlier;
    }

    List<CarbonReference> carbon() {
        return carbon;
    }
}
