package spotline.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import spotline.core.Finding;
import spotline.core.ReadException;
import spotline.formats.Block;
import spotline.formats.FileNames;
import spotline.formats.SpectrumFile;
import spotline.formats.SpectrumFiles;
import spotline.formats.source.Probe;
import spotline.formats.source.ReadLimits;
import spotline.formats.text.TextColumnsReader;
import spotline.formats.text.TextLook;

@Command(
        name = "inspect",
        mixinStandardHelpOptions = true,
        description = "Shows what spectrum files hold: a row a block, or for a folder a row a file.",
        footer = {
            "",
            "Example: spotline inspect demo-spectra/01-liner-chip.txt",
            "Example: spotline inspect demo-spectra",
            "",
            "A file whose name begins with a dash: spotline inspect -- -name.txt"
        })
final class InspectCommand implements Callable<Integer> {
    private final CommandEnvironment environment;
    private final ArrayNode documents = new ObjectMapper().createArrayNode();
    private final SeenData seen = new SeenData();
    private final List<SeenData.Twin> twins = new ArrayList<>();
    private int read;
    private int failed;

    @Parameters(arity = "1..*", paramLabel = "FILE", description = "spectrum files, or folders of them")
    private List<Path> files = List.of();

    @Option(names = "--json", description = "all fields, as JSON")
    private boolean json;

    @Option(names = "--debug", description = "show stack traces")
    private boolean debug;

    InspectCommand(CommandEnvironment environment) {
        this.environment = environment;
    }

    @Override
    public Integer call() throws IOException {
        for (Path path : files) {
            if (Files.isDirectory(path)) folder(path);
            else file(path);
        }
        if (json) {
            environment
                    .out()
                    .println(new ObjectMapper().writerWithDefaultPrettyPrinter().writeValueAsString(documents));
        } else {
            for (SeenData.Twin twin : twins) environment.out().println(TerminalText.clean("note: " + twin.sentence()));
        }
        if (failed == 0) return 0;
        return read == 0 ? 2 : 1;
    }

    private void fail(ReadException fault) {
        failed++;
        CommandFailure.report(fault, environment.err(), debug);
    }

    /** A folder is looked through: a file in it that holds no spectrum is no fault. */
    private void folder(Path folder) throws IOException {
        FileList list = FileList.below(folder);
        list.unreadable().forEach(this::fail);
        TextTable table = BlockTable.overview();
        try (ProgressLine progress = new ProgressLine(environment)) {
            int done = 0;
            for (Path path : list.files()) {
                String name = FileNames.text(path);
                progress.progress((double) done++ / list.files().size(), TerminalText.clean(name));
                try {
                    overview(path, name, table);
                } catch (ReadException e) {
                    BlockTable.overview(table, name, "not read");
                    fail(e);
                }
            }
        }
        read++;
        if (!json) table.print(environment.out());
    }

    private void overview(Path path, String name, TextTable table) throws ReadException {
        Probe surest = SpectrumFiles.probe(path, name).get(0);
        if (surest.verdict() == Probe.Verdict.NO) {
            BlockTable.overview(table, name, "no spectra");
        } else if (isText(surest)) {
            BlockTable.overview(table, name, look(path, name));
        } else {
            BlockTable.overview(table, open(path, name));
        }
    }

    private void file(Path path) {
        String name = FileNames.text(path);
        try {
            Probe surest = SpectrumFiles.probe(path, name).get(0);
            if (surest.verdict() != Probe.Verdict.NO && isText(surest)) {
                TextLook look = look(path, name);
                if (!json) UndeclaredText.print(name, look, environment.out());
            } else {
                SpectrumFile file = open(path, name);
                if (!json) BlockTable.print(file, environment.out());
            }
            read++;
        } catch (ReadException e) {
            fail(e);
        }
    }

    private static boolean isText(Probe probe) {
        return probe.format().equals(TextColumnsReader.FORMAT);
    }

    private TextLook look(Path path, String name) throws ReadException {
        TextLook look = SpectrumFiles.look(path, name, ReadLimits.DEFAULT);
        List<SeenData.Twin> found = seen.twins(name, look.dataSha256());
        twins.addAll(found);
        if (json) documents.add(sameData(UndeclaredText.json(name, look), found));
        return look;
    }

    private SpectrumFile open(Path path, String name) throws ReadException {
        SpectrumFile file = SpectrumFiles.open(path, name, Optional.empty(), ReadLimits.DEFAULT);
        List<SeenData.Twin> found = seen.twins(file);
        twins.addAll(found);
        if (json) documents.add(sameData(document(file), found));
        return file;
    }

    private static ObjectNode sameData(ObjectNode document, List<SeenData.Twin> found) {
        ArrayNode same = document.putArray("sameData");
        for (SeenData.Twin twin : found) {
            same.addObject().put("here", twin.where()).put("earlier", twin.earlier());
        }
        return document;
    }

    private static ObjectNode document(SpectrumFile file) {
        ObjectNode node = new ObjectMapper().createObjectNode();
        node.put("file", file.name());
        node.put("sha256", file.sha256());
        node.put("format", file.format());
        ArrayNode blocks = node.putArray("blocks");
        for (Block block : file.blocks()) blocks.add(BlockJson.of(block));
        warnings(node.putArray("warnings"), file.warnings());
        return node;
    }

    static void warnings(ArrayNode to, List<Finding> warnings) {
        for (Finding w : warnings) {
            to.addObject()
                    .put("severity", w.severity().word())
                    .put("rule", w.rule())
                    .put("message", w.message());
        }
    }
}
