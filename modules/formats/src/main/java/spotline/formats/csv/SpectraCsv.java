package spotline.formats.csv;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import spotline.formats.Block;
import spotline.formats.SpectrumFile;
import spotline.formats.source.NumberText;
import spotline.spectra.Coordinate;
import spotline.spectra.Ordinate;
import spotline.spectra.SpectrumSet;

/**
 * Writes the blocks of a file as one table: UTF-8, commas, line feeds, a header row.
 *
 * <p>Shape: a row is one value of one ordinate at one channel of one spectrum; behind the fixed columns stands one for
 * each coordinate that any block has. Units: the file's own, in columns of their own. Numbers are the shortest that read
 * back as the same double; one that is not known is an empty cell. A text that a spreadsheet would take for a formula
 * gets an apostrophe in front.
 *
 * <p>Source: RFC 4180 for the quoting.
 */
public final class SpectraCsv {
    private static final String FORMULA_STARTS = "=+-@\t\r\uff1d\uff0b\uff0d\uff20";

    private static final List<String> COLUMNS = List.of(
            "block",
            "name",
            "sample",
            "region",
            "photon_energy_ev",
            "spectrum",
            "channel",
            "axis",
            "axis_unit",
            "axis_value",
            "ordinate",
            "ordinate_unit",
            "value");

    private final Writer out;
    private final List<String> coordinates;

    private SpectraCsv(Writer out, List<String> coordinates) {
        this.out = out;
        this.coordinates = coordinates;
    }

    /** The stream is flushed, not closed. */
    public static void write(SpectrumFile file, OutputStream to) throws IOException {
        Writer writer = new BufferedWriter(new OutputStreamWriter(to, StandardCharsets.UTF_8), 1 << 16);
        Set<String> coordinates = new LinkedHashSet<>();
        for (Block block : file.blocks()) {
            for (Coordinate c : block.set().coordinates()) coordinates.add(header(c));
        }
        SpectraCsv csv = new SpectraCsv(writer, List.copyOf(coordinates));
        List<String> header = new ArrayList<>(COLUMNS);
        for (String coordinate : coordinates) header.add(text(coordinate));
        writer.append(String.join(",", header)).append('\n');
        for (Block block : file.blocks()) csv.append(block);
        writer.flush();
    }

    private static String header(Coordinate coordinate) {
        return coordinate.unit().isEmpty() ? coordinate.name() : coordinate.name() + " [" + coordinate.unit() + "]";
    }

    private void append(Block block) throws IOException {
        SpectrumSet set = block.set();
        String start = block.number() + ","
                + text(set.acquisition().blockId()) + ","
                + text(set.acquisition().sampleId()) + ","
                + text((set.acquisition().region() + " " + set.acquisition().transition()).strip()) + ","
                + number(set.acquisition().excitation().photonEnergyEv()) + ",";
        String axis = "," + text(set.axis().quantity().label()) + ","
                + text(set.axis().quantity().unit()) + ",";
        List<String> ordinates = new ArrayList<>();
        for (Ordinate o : set.ordinates()) {
            ordinates.add(
                    "," + text(o.quantity().label()) + "," + text(o.quantity().unit()) + ",");
        }
        int channels = set.axis().channels();
        for (int s = 0; s < set.size(); s++) {
            String end = coordinates(set, s);
            for (int c = 0; c < channels; c++) {
                String middle =
                        (s + 1) + "," + (c + 1) + axis + number(set.axis().value(c));
                for (int o = 0; o < ordinates.size(); o++) {
                    out.append(start).append(middle).append(ordinates.get(o));
                    out.append(number(set.ordinates().get(o).value(s * channels + c)));
                    out.append(end).append('\n');
                }
            }
        }
    }

    private String coordinates(SpectrumSet set, int spectrum) {
        StringBuilder cells = new StringBuilder();
        for (String wanted : coordinates) {
            cells.append(',');
            set.coordinates().stream()
                    .filter(c -> header(c).equals(wanted))
                    .findFirst()
                    .ifPresent(c -> cells.append(number(c.value(spectrum))));
        }
        return cells.toString();
    }

    private static String number(double value) {
        return Double.isFinite(value) ? NumberText.exact(value) : "";
    }

    private static String number(OptionalDouble value) {
        return value.isPresent() ? number(value.getAsDouble()) : "";
    }

    private static String text(String text) {
        boolean formula = !text.isEmpty() && FORMULA_STARTS.indexOf(text.charAt(0)) >= 0;
        String cell = formula ? "'" + text : text;
        boolean quotes = cell.chars().anyMatch(c -> c == ',' || c == '"' || c == '\r' || c == '\n');
        return quotes ? '"' + cell.replace("\"", "\"\"") + '"' : cell;
    }
}
