package spotline.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import spotline.core.Finding;
import spotline.core.Place;
import spotline.core.ReadException;
import spotline.formats.FileNames;
import spotline.formats.ReadExperiment;
import spotline.formats.SpectrumFile;
import spotline.formats.SpectrumFiles;
import spotline.formats.csv.SpectraCsv;
import spotline.formats.iso14976.Iso14976Writer;
import spotline.formats.source.ReadLimits;
import spotline.formats.text.TextColumns;

@Command(
        name = "convert",
        mixinStandardHelpOptions = true,
        description = "Writes the spectra of a file in another open format.",
        footer = {
            "",
            "Example: spotline convert demo-spectra/01-liner-chip.txt --out liner.csv --to csv",
            "",
            "A text file needs --energy-column, --ordinate-column, --scale and --photon-energy; inspect suggests them."
        })
final class ConvertCommand implements Callable<Integer> {
    /** The kinds that the command's interface names; the others are refused as not written yet. */
    private static final List<String> KINDS = List.of("iso14976", "csv", "jcamp", "nexus");

    /** Rules whose finding says that something of the file is not in what was read. */
    private static final Set<String> LOSSES =
            Set.of("iso14976-truncated", "iso14976-text-after-end", "iso14976-empty-block", "text-after-rows");

    private final CommandEnvironment environment;

    @Parameters(index = "0", paramLabel = "FILE", description = "spectrum file")
    @SuppressWarnings("NullAway.Init")
    private Path file;

    @Option(names = "--out", paramLabel = "FILE", required = true, description = "file to write, never the one read")
    @SuppressWarnings("NullAway.Init")
    private Path out;

    @Option(names = "--to", paramLabel = "KIND", required = true, description = "iso14976 or csv")
    @SuppressWarnings("NullAway.Init")
    private String kind;

    @Mixin
    private final ColumnOptions options = new ColumnOptions();

    @Option(names = "--debug", description = "show stack traces")
    private boolean debug;

    ConvertCommand(CommandEnvironment environment) {
        this.environment = environment;
    }

    @Override
    public Integer call() throws ReadException, IOException {
        String wanted = kind.toLowerCase(Locale.ROOT);
        if (!KINDS.contains(wanted)) {
            throw new ReadException(Place.file(FileNames.text(out)), "the kind " + kind, String.join(", ", KINDS));
        }
        if (!wanted.equals("iso14976") && !wanted.equals("csv")) {
            throw new ReadException(
                    Place.file(FileNames.text(out)),
                    "the kind " + wanted + ", which is not written yet",
                    "iso14976 or csv");
        }
        String name = FileNames.text(file);
        Optional<TextColumns> columns = options.columns(name);
        refuseItself();
        return wanted.equals("csv") ? csv(name, columns) : iso14976(name, columns);
    }

    private void refuseItself() throws ReadException, IOException {
        if (Files.isDirectory(out)) {
            throw new ReadException(Place.file(FileNames.text(out)), "a directory", "a file to write");
        }
        if (Files.exists(file) && Files.exists(out) && Files.isSameFile(file, out)) {
            throw new ReadException(
                    Place.file(FileNames.text(out)), "the file that is read", "another file: what was measured stays");
        }
    }

    private int csv(String name, Optional<TextColumns> columns) throws ReadException, IOException {
        SpectrumFile read = SpectrumFiles.open(file, name, columns, ReadLimits.DEFAULT);
        StreamedFile.write(out, to -> SpectraCsv.write(read, to));
        return tell(read.blocks().size(), read.warnings());
    }

    private int iso14976(String name, Optional<TextColumns> columns) throws ReadException, IOException {
        ReadExperiment read = SpectrumFiles.experiment(file, name, columns, ReadLimits.DEFAULT);
        StreamedFile.write(out, to -> Iso14976Writer.write(read.experiment(), to));
        return tell(read.experiment().blocks().size(), read.warnings());
    }

    private int tell(int blocks, List<Finding> warnings) {
        environment
                .out()
                .println(
                        TerminalText.clean(FileNames.text(out)) + ": " + blocks + (blocks == 1 ? " block" : " blocks"));
        for (Finding warning : warnings) {
            environment.out().println(warning.severity().word() + ": " + Main.oneLine(warning.message()));
        }
        return warnings.stream().anyMatch(w -> LOSSES.contains(w.rule())) ? 1 : 0;
    }
}
