package spotline.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import spotline.core.Decimal;
import spotline.core.Finding;
import spotline.core.ReadException;
import spotline.formats.Block;
import spotline.formats.SpectrumFile;
import spotline.formats.SpectrumFiles;
import spotline.formats.source.Probe;
import spotline.formats.source.ReadLimits;
import spotline.formats.text.TextColumnsReader;
import spotline.formats.text.TextLook;
import spotline.spectra.Acquisition;
import spotline.spectra.Axis;
import spotline.spectra.Ordinate;
import spotline.spectra.SpectrumSet;

@Command(
        name = "inspect",
        mixinStandardHelpOptions = true,
        description = "Shows what spectrum files hold, a row a block.",
        footer = {"", "Example: spotline inspect demo-spectra/01-liner-chip.txt"})
final class InspectCommand implements Callable<Integer> {
    private final CommandEnvironment environment;

    @Parameters(arity = "1..*", paramLabel = "FILE", description = "spectrum files")
    private List<Path> files = List.of();

    @Option(names = "--json", description = "all fields, as JSON")
    private boolean json;

    @Option(names = "--debug", description = "show stack traces")
    private boolean debug;

    InspectCommand(CommandEnvironment environment) {
        this.environment = environment;
    }

    @Override
    public Integer call() throws Exception {
        int read = 0;
        ArrayNode documents = new ObjectMapper().createArrayNode();
        for (Path path : files) {
            try {
                inspect(path, documents);
                read++;
            } catch (ReadException e) {
                CommandFailure.report(e, environment.err(), debug);
            }
        }
        if (json) {
            environment
                    .out()
                    .println(new ObjectMapper().writerWithDefaultPrettyPrinter().writeValueAsString(documents));
        }
        if (read == files.size()) return 0;
        return read == 0 ? 2 : 1;
    }

    private void inspect(Path path, ArrayNode documents) throws ReadException {
        String name = path.toString();
        Probe surest = SpectrumFiles.probe(path, name).get(0);
        if (surest.verdict() != Probe.Verdict.NO && surest.format().equals(TextColumnsReader.FORMAT)) {
            TextLook look = SpectrumFiles.look(path, name, ReadLimits.DEFAULT);
            if (json) documents.add(UndeclaredText.json(name, look));
            else UndeclaredText.print(name, look, environment.out());
            return;
        }
        SpectrumFile file = SpectrumFiles.open(path, name, Optional.empty(), ReadLimits.DEFAULT);
        if (json) documents.add(document(file));
        else print(file);
    }

    private void print(SpectrumFile file) {
        environment
                .out()
                .println(file.name() + ": " + file.format() + ", "
                        + file.blocks().size() + " blocks");
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
        table.print(environment.out());
        for (Finding warning : file.warnings()) {
            environment.out().println(warning.severity().word() + ": " + warning.message());
        }
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

    private static ObjectNode document(SpectrumFile file) {
        ObjectNode node = new ObjectMapper().createObjectNode();
        node.put("file", file.name());
        node.put("sha256", file.sha256());
        node.put("format", file.format());
        ArrayNode blocks = node.putArray("blocks");
        for (Block block : file.blocks()) blocks.add(BlockJson.of(block));
        ArrayNode warnings = node.putArray("warnings");
        for (Finding w : file.warnings()) {
            warnings.addObject()
                    .put("severity", w.severity().word())
                    .put("rule", w.rule())
                    .put("message", w.message());
        }
        return node;
    }
}
