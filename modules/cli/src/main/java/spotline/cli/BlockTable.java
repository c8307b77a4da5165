package spotline.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Set;
import spotline.core.Decimal;
import spotline.core.Finding;
import spotline.formats.Block;
import spotline.formats.SpectrumFile;
import spotline.formats.text.TextLook;
import spotline.spectra.Acquisition;
import spotline.spectra.Axis;
import spotline.spectra.Ordinate;
import spotline.spectra.SpectrumSet;

/** What files hold, for people: a row a block, or in an overview a row a file. */
final class BlockTable {
    private static final int LONGEST_LABELS = 60;

    private BlockTable() {}

    static void print(SpectrumFile file, PrintWriter out) {
        out.println(TerminalText.clean(file.name()) + ": " + file.format() + ", "
                + count(file.blocks().size()));
        TextTable table = new TextTable(
                "block",
                "line",
                "name",
                "region",
                "technique",
                "photon eV",
                "scale",
                "from eV",
                "to eV",
                "step",
                "channels",
                "pass eV",
                "s x scans",
                "ordinates");
        for (Block block : file.blocks()) {
            SpectrumSet set = block.set();
            Acquisition a = set.acquisition();
            Axis axis = set.axis();
            double step = axis.channels() > 1 ? (axis.last() - axis.first()) / (axis.channels() - 1) : 0;
            table.row(
                    "" + block.number(),
                    "" + block.line(),
                    a.blockId(),
                    (a.region() + " " + a.transition()).strip(),
                    a.technique(),
                    known(a.excitation().photonEnergyEv()),
                    axis.quantity().scale().name().toLowerCase(Locale.ROOT),
                    Decimal.significant(axis.first(), 7),
                    Decimal.significant(axis.last(), 7),
                    Decimal.significant(step, 4),
                    "" + axis.channels() + (set.size() > 1 ? " x " + set.size() : ""),
                    known(a.analyser().passEnergyEv()),
                    known(a.timing().dwellSeconds()) + " x " + known(a.timing().scans()),
                    ordinates(set));
        }
        table.print(out);
        for (Finding warning : file.warnings()) {
            out.println(warning.severity().word() + ": " + Main.oneLine(warning.message()));
        }
    }

    private static String count(int blocks) {
        return blocks + (blocks == 1 ? " block" : " blocks");
    }

    private static String ordinates(SpectrumSet set) {
        StringBuilder text = new StringBuilder();
        for (Ordinate o : set.ordinates()) {
            if (text.length() > 0) text.append(", ");
            text.append(o.quantity().label())
                    .append(" [")
                    .append(o.quantity().unit())
                    .append(']');
            if (o.kind() == Ordinate.Kind.INTENSITY
                    && o.counting().countsPerUnit().isEmpty()) {
                text.append(" (statistics unknown)");
            }
        }
        return text.toString();
    }

    private static String known(OptionalDouble value) {
        return value.isPresent() ? Decimal.significant(value.getAsDouble(), 7) : "?";
    }

    static TextTable overview() {
        return new TextTable("file", "format", "blocks", "photon eV", "regions", "warnings");
    }

    static void overview(TextTable table, SpectrumFile file) {
        Set<String> photons = new LinkedHashSet<>();
        Set<String> regions = new LinkedHashSet<>();
        for (Block block : file.blocks()) {
            photons.add(known(block.set().acquisition().excitation().photonEnergyEv()));
            regions.add(block.set().acquisition().label());
        }
        table.row(
                file.name(),
                file.format(),
                "" + file.blocks().size(),
                cut(new ArrayList<>(photons)),
                cut(new ArrayList<>(regions)),
                "" + file.warnings().size());
    }

    static void overview(TextTable table, String name, TextLook look) {
        String rows = look.columns() + " columns, " + look.rows() + " rows, undeclared";
        table.row(name, "text", "?", "?", rows, "" + look.warnings().size());
    }

    static void overview(TextTable table, String name, String reason) {
        table.row(name, "-", "", "", reason, "");
    }

    private static String cut(List<String> words) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < words.size(); i++) {
            if (text.length() + words.get(i).length() > LONGEST_LABELS && i > 0) {
                return text + " and " + (words.size() - i) + " more";
            }
            text.append(i > 0 ? ", " : "").append(words.get(i));
        }
        return text.toString();
    }
}
