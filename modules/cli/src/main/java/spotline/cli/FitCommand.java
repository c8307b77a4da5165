package spotline.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import spotline.analysis.peakfit.FitModel;
import spotline.analysis.peakfit.FitMonteCarlo;
import spotline.analysis.peakfit.PeakFit;
import spotline.analysis.peakfit.PeakFitResult;
import spotline.analysis.peakfit.Satellite;
import spotline.core.Finding;
import spotline.core.Outcome;
import spotline.core.Place;
import spotline.core.Provenance;
import spotline.core.ReadException;
import spotline.formats.Block;
import spotline.formats.SpectrumFile;
import spotline.formats.SpectrumFiles;
import spotline.formats.source.ReadLimits;
import spotline.reference.ReferenceData;
import spotline.report.WholeFile;
import spotline.report.fit.FitFigure;
import spotline.report.fit.FitJson;
import spotline.report.fit.FitReport;
import spotline.report.fit.FitText;
import spotline.run.fitmodel.FitModelFile;
import spotline.spectra.BindingScan;
import spotline.spectra.Excitation;

@Command(
        name = "fit",
        mixinStandardHelpOptions = true,
        description = "Fits the component peaks of a model to one narrow scan.",
        footer = {
            "",
            "Example: spotline fit demo-spectra/05-pigment-a.txt --block 3 --model ti-2p.json --figure ti-2p.svg",
            "",
            "Energies in the model are binding energies as measured. Areas are in counts eV, before transmission."
        })
final class FitCommand implements Callable<Integer> {
    private final CommandEnvironment environment;

    @Parameters(index = "0", paramLabel = "FILE", description = "spectrum file")
    @SuppressWarnings("NullAway.Init")
    private Path file;

    @Option(names = "--block", paramLabel = "N", required = true, description = "block of the file, counted from 1")
    private int block;

    @Option(names = "--model", paramLabel = "MODEL.json", required = true, description = "fit-model file")
    @SuppressWarnings("NullAway.Init")
    private Path model;

    @Option(names = "--json", description = "result as JSON")
    private boolean json;

    @Option(
            names = "--figure",
            paramLabel = "FILE.svg",
            description = "draws data, components, fitted sum and residuals")
    private @Nullable Path figure;

    @Option(
            names = "--monte-carlo",
            paramLabel = "N",
            description = "repeats the whole treatment on N drawn sets of counts")
    private int draws;

    @Option(names = "--seed", paramLabel = "N", description = "seed of the draws (default: ${DEFAULT-VALUE})")
    private long seed = 1;

    @Option(
            names = "--threads",
            paramLabel = "N",
            converter = TreatmentOptions.Threads.class,
            description = "threads to use (default: the processors)")
    private int threads = Runtime.getRuntime().availableProcessors();

    @Option(names = "--debug", description = "show stack traces")
    private boolean debug;

    FitCommand(CommandEnvironment environment) {
        this.environment = environment;
    }

    @Override
    public Integer call() throws Exception {
        ReferenceData reference = ReferenceData.shipped();
        SpectrumFile read = SpectrumFiles.open(file, file.toString(), Optional.empty(), ReadLimits.DEFAULT);
        Block found = block(read);
        BindingScan scan = scan(found);
        FitModel wanted = FitModelFile.read(model, scan, reference);
        PeakFit fit = new PeakFit(reference);
        List<Finding> findings = new ArrayList<>(read.warnings());
        wanted = withSatellites(wanted, found, reference, findings);
        try (ProgressLine progress = new ProgressLine(environment)) {
            Outcome<PeakFitResult> outcome = fit.fit(scan, wanted, progress);
            findings.addAll(outcome.allFindings());
            if (outcome.result().isEmpty()) {
                for (Finding f : findings) environment.err().println("spotline: " + Main.oneLine(f.message()));
                return 1;
            }
            PeakFitResult result = outcome.result().get();
            Optional<FitMonteCarlo.Result> spread = monteCarlo(fit, scan, result, progress, findings);
            Provenance source = new Provenance(read.name(), read.sha256(), found.number(), found.line(), PeakFit.STEP);
            FitReport report = new FitReport(source, found.set().acquisition().label(), result, findings, spread);
            write(report);
            return draws > 0 && spread.isEmpty() ? 1 : 0;
        }
    }

    private Block block(SpectrumFile read) throws ReadException {
        int count = read.blocks().size();
        if (block < 1 || block > count) {
            throw new ReadException(
                    Place.file(file.toString()),
                    count + " blocks and no block " + block,
                    count == 1 ? "--block 1" : "--block 1 to " + count);
        }
        return read.blocks().get(block - 1);
    }

    private BindingScan scan(Block found) throws ReadException {
        Place place = Place.line(file.toString(), found.line());
        OptionalDouble photon = found.set().acquisition().excitation().photonEnergyEv();
        if (photon.isEmpty()) {
            throw new ReadException(place, "a block without a photon energy", "one in its header");
        }
        if (found.set().size() != 1) {
            throw new ReadException(place, found.set().size() + " spectra in the block", "one narrow scan");
        }
        try {
            return BindingScan.of(
                    found.set().spectrum(0),
                    photon.getAsDouble(),
                    read(found.set().acquisition().label()));
        } catch (IllegalArgumentException e) {
            throw new ReadException(place, String.valueOf(e.getMessage()), "a narrow scan against energy");
        }
    }

    private String read(String region) {
        return file.getFileName() + "#" + block + " " + region;
    }

    /** A header that says so brings the satellites of its source, unless the model has its own. */
    private static FitModel withSatellites(
            FitModel model, Block found, ReferenceData reference, List<Finding> findings) {
        Excitation excitation = found.set().acquisition().excitation();
        if (!model.satellites().isEmpty() || !excitation.monochromated().equals(Optional.of(false))) return model;
        List<Satellite> satellites = reference
                .sourceNear(excitation.photonEnergyEv().orElse(0), false)
                .map(source -> Satellite.of(source, reference))
                .orElse(List.of());
        if (satellites.isEmpty()) return model;
        findings.add(Finding.note(
                "fit-satellites",
                "The header says that the source is not monochromated: every component carries its X-ray satellites."));
        return model.with(satellites);
    }

    private Optional<FitMonteCarlo.Result> monteCarlo(
            PeakFit fit, BindingScan scan, PeakFitResult result, ProgressLine progress, List<Finding> findings) {
        if (draws < 1) return Optional.empty();
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        try {
            Outcome<FitMonteCarlo.Result> outcome =
                    new FitMonteCarlo(fit).run(scan, result, Math.max(2, draws), seed, pool, progress);
            findings.addAll(outcome.allFindings());
            return outcome.result();
        } finally {
            pool.shutdownNow();
        }
    }

    private void write(FitReport report) throws IOException {
        if (figure != null) WholeFile.write(figure, FitFigure.svg(report).getBytes(StandardCharsets.UTF_8));
        if (json) {
            environment
                    .out()
                    .println(
                            new ObjectMapper().writerWithDefaultPrettyPrinter().writeValueAsString(FitJson.of(report)));
        } else {
            FitText.of(report).forEach(environment.out()::println);
        }
    }
}
