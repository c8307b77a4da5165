package spotline.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import spotline.analysis.identify.ElementSeen;
import spotline.analysis.identify.Feature;
import spotline.analysis.identify.HeaderDoubt;
import spotline.analysis.identify.Identification;
import spotline.analysis.identify.LineSeen;
import spotline.analysis.identify.QuickShare;
import spotline.analysis.identify.ScanProposal;
import spotline.analysis.identify.SurveyIdentification;
import spotline.core.Decimal;
import spotline.core.Place;
import spotline.core.ReadException;
import spotline.formats.Block;
import spotline.formats.SpectrumFile;
import spotline.formats.SpectrumFiles;
import spotline.formats.source.ReadLimits;
import spotline.reference.ReferenceData;
import spotline.report.WholeFile;
import spotline.report.figure.SurveyFigure;
import spotline.report.text.DisplayNumber;
import spotline.run.DefaultTreatment;
import spotline.run.Surveys;
import spotline.spectra.BindingScan;
import spotline.spectra.EnergyScale;
import spotline.spectra.Transmission;

@Command(
        name = "identify",
        mixinStandardHelpOptions = true,
        description = "Names the elements seen in a survey, with the evidence.",
        footer = {"", "Example: spotline identify demo-spectra/03-anodised-coupon.txt --figure survey.svg"})
final class IdentifyCommand implements Callable<Integer> {
    private final CommandEnvironment environment;

    @Parameters(index = "0", paramLabel = "FILE", description = "spectrum file")
    @SuppressWarnings("NullAway.Init")
    private Path file;

    @Option(
            names = "--block",
            paramLabel = "N",
            description = "block of the file, counted from 1 (default: the first survey)")
    private int block;

    @Option(names = "--declared", paramLabel = "SYMBOL", split = ",", description = "elements that are expected")
    private Set<String> declared = new TreeSet<>();

    @Option(names = "--json", description = "result as JSON")
    private boolean json;

    @Option(names = "--figure", paramLabel = "FILE.svg", description = "draws survey, lines, model and residual")
    private @Nullable Path figure;

    @Option(names = "--debug", description = "show stack traces")
    private boolean debug;

    IdentifyCommand(CommandEnvironment environment) {
        this.environment = environment;
    }

    @Override
    public Integer call() throws Exception {
        SpectrumFile read = SpectrumFiles.open(file, file.toString(), Optional.empty(), ReadLimits.DEFAULT);
        Block found = block(read);
        OptionalDouble photon = found.set().acquisition().excitation().photonEnergyEv();
        Place place = Place.line(file.toString(), found.line());
        if (photon.isEmpty()) {
            throw new ReadException(place, "found a block without a photon energy", "one in its header");
        }
        BindingScan scan;
        Transmission transmission;
        try {
            scan = BindingScan.of(found.set().spectrum(0), photon.getAsDouble(), file + "#" + found.number());
            transmission = Surveys.recordedTransmission(found.set().spectrum(0), photon.getAsDouble());
        } catch (IllegalArgumentException e) {
            throw new ReadException(place, String.valueOf(e.getMessage()), "a survey spectrum");
        }
        boolean mono = found.set().acquisition().excitation().monochromated().orElse(false);
        Identification result;
        try (ProgressLine progress = new ProgressLine(environment)) {
            result = new SurveyIdentification(
                            ReferenceData.shipped(),
                            DefaultTreatment.treatment().identify())
                    .identify(scan, transmission, declared, OptionalDouble.empty(), mono, progress);
        }
        if (figure != null) {
            String title = file.getFileName() + ", block " + found.number();
            WholeFile.write(figure, SurveyFigure.withModel(scan, result, title).getBytes(StandardCharsets.UTF_8));
        }
        if (json) {
            environment
                    .out()
                    .println(new ObjectMapper()
                            .writerWithDefaultPrettyPrinter()
                            .writeValueAsString(IdentificationJson.of(read, found, result)));
        } else {
            print(result, found);
        }
        boolean doubted = result.detail().map(d -> !d.doubts().isEmpty()).orElse(false);
        return doubted ? 1 : 0;
    }

    private Block block(SpectrumFile read) throws ReadException {
        int count = read.blocks().size();
        if (block > 0 && block <= count) return read.blocks().get(block - 1);
        if (block != 0) {
            throw new ReadException(
                    Place.file(file.toString()),
                    count + " blocks and no block " + block,
                    count == 1 ? "--block 1" : "--block 1 to " + count);
        }
        double span = DefaultTreatment.treatment().limits().surveySpanEv();
        return read.blocks().stream()
                .filter(b -> b.set().axis().quantity().scale() != EnergyScale.OTHER
                        && Math.abs(b.set().axis().last() - b.set().axis().first()) >= span)
                .findFirst()
                .orElseThrow(() -> new ReadException(
                        Place.file(file.toString()),
                        "no block that spans " + Decimal.text(span) + " eV",
                        "a survey, or --block to name one"));
    }

    private void print(Identification result, Block found) {
        PrintWriter out = environment.out();
        out.println(file + ", block " + found.number() + ", "
                + found.set().acquisition().label());
        out.println(String.format(
                Locale.ROOT,
                "Surface charging about %+.1f eV%s",
                -result.shiftEv() + 0.0,
                result.detail()
                        .map(d -> String.format(
                                Locale.ROOT,
                                " (%+.1f to %+.1f): %s",
                                -d.shiftHighEv() + 0.0,
                                -d.shiftLowEv() + 0.0,
                                d.shiftReason()))
                        .orElse("")));
        result.detail().ifPresent(d -> {
            for (HeaderDoubt doubt : d.doubts()) out.println("caution: " + doubt.sentence());
        });
        out.println();
        TextTable table = new TextTable("element", "verdict", "sigma", "lines, eV as measured");
        for (ElementSeen e : result.elements()) {
            StringBuilder lines = new StringBuilder();
            for (LineSeen line : e.lines()) {
                if (lines.length() > 0) lines.append("; ");
                lines.append(line.line()).append(' ').append(Decimal.fixed(line.energyEv(), 1));
            }
            table.row(e.element(), e.verdict().word(), Decimal.fixed(e.significance(), 0), lines.toString());
        }
        table.print(out);
        for (ElementSeen e : result.elements()) {
            for (String reason : e.evidence().reasons()) out.println(e.element() + ": " + reason);
        }
        result.detail().ifPresent(d -> detail(d, out));
    }

    private static void detail(Identification.Detail detail, PrintWriter out) {
        out.println();
        TextTable shares = new TextTable("element", "by", "at.% (quick, from the survey's model)");
        for (QuickShare share : detail.composition()) {
            shares.row(
                    share.element(),
                    share.line(),
                    DisplayNumber.of(
                                    share.atomicPercent().value(),
                                    share.atomicPercent().standardUncertainty(),
                                    1)
                            .text());
        }
        shares.print(out);
        for (Feature feature : detail.features()) {
            out.println(String.format(
                    Locale.ROOT,
                    "Unassigned: %.1f eV (%.0f sigma)%s",
                    feature.peak().energyEv(),
                    feature.peak().significance(),
                    feature.explanations().isEmpty() ? "" : ": " + String.join("; ", feature.explanations())));
        }
        List<ScanProposal> proposals = detail.proposals();
        if (proposals.isEmpty()) return;
        out.println();
        TextTable scans = new TextTable("narrow scan", "from eV", "to eV", "seconds", "for an area known to, at most");
        for (ScanProposal p : proposals) {
            scans.row(
                    p.line(),
                    Decimal.fixed(p.window().highEv(), 0),
                    Decimal.fixed(p.window().lowEv(), 0),
                    p.seconds().isPresent() ? Decimal.significant(p.seconds().getAsDouble(), 2) : "?",
                    Decimal.significant(100 * p.relativeUncertainty(), 2) + " %");
        }
        scans.print(out);
    }
}
