package spotline.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import spotline.analysis.charge.ChargeEvidence.AugerParameterSeen;
import spotline.analysis.identify.Identification;
import spotline.core.Place;
import spotline.core.ReadException;
import spotline.holder.SpectrumRole;
import spotline.reference.ReferenceData;
import spotline.report.WholeFile;
import spotline.report.figure.ChemicalStateFigure;
import spotline.report.figure.DepthSeries;
import spotline.report.figure.DepthTable;
import spotline.report.figure.PrintComposition;
import spotline.report.figure.PrintFigure;
import spotline.report.figure.PrintFit;
import spotline.report.figure.PrintScan;
import spotline.report.figure.PrintSpectra;
import spotline.report.figure.PrintStyle;
import spotline.report.sheet.LoadingSheet;
import spotline.run.HolderRun;
import spotline.run.HolderRunLoader;
import spotline.run.LineFit;
import spotline.run.LinkedSpectrum;
import spotline.run.RunPipeline;
import spotline.run.RunResult;
import spotline.run.SpotResult;
import spotline.run.findings.RuleBook;

@Command(
        name = "figure",
        mixinStandardHelpOptions = true,
        description = "Draws one figure of a holder run for print, as SVG, PDF or PNG.",
        footer = {
            "",
            "Example: spotline figure survey holder.json --spot 1 --out survey.pdf --width 175",
            "Example: spotline figure stack holder.json --line \"C 1s\" --normalise height --offset 0.5 --out c1s.svg",
            "Example: spotline figure difference holder.json --line \"O 1s\" --spot 1 --spot 2 --out o1s.png --dpi 600",
            "Example: spotline figure fit holder.json --spot 2 --line \"C 1s\" --out fit.pdf",
            "Example: spotline figure depth profile.csv --out profile.pdf",
            "",
            "survey      a survey spectrum with its lines named",
            "stack       narrow scans of one line over the spots, above one another",
            "difference  two narrow scans of one line, and the first less the second",
            "fit         a peak fit with its components and residual",
            "composition bars an element and sample, whiskers one standard uncertainty",
            "charge      what was added to the energies of each spot",
            "states      the chemical-state plot of a spot's Auger parameter",
            "depth       atomic percent against depth or etch time: of a holder run with a spot a level, whose files tell",
            "            the level of each in an experimental variable; or of a table with the columns depth_nm (or",
            "            etch_time_s), X_at_percent and X_u",
            "",
            "Binding energy runs from high to low. Every figure has the same type size and line widths."
        })
final class FigureCommand implements Callable<Integer> {
    enum What {
        SURVEY,
        STACK,
        DIFFERENCE,
        FIT,
        COMPOSITION,
        DEPTH,
        CHARGE,
        STATES
    }

    private static final Identification NOTHING = new Identification(List.of(), 0, List.of());

    private final CommandEnvironment environment;

    @Parameters(
            index = "0",
            paramLabel = "FIGURE",
            description = "survey, stack, difference, fit, composition, charge, states or depth")
    @SuppressWarnings("NullAway.Init")
    private What what;

    @Parameters(index = "1", paramLabel = "INPUT", description = "the holder run; for depth, that or a table")
    @SuppressWarnings("NullAway.Init")
    private Path input;

    @Option(names = "--out", paramLabel = "FILE", required = true, description = "FILE.svg, FILE.pdf or FILE.png")
    @SuppressWarnings("NullAway.Init")
    private Path out;

    @Option(
            names = "--spot",
            paramLabel = "ID",
            description = "spot to show; may be given again (default: all, or the first)")
    private List<String> spots = List.of();

    @Option(names = "--line", paramLabel = "LINE", description = "line of the narrow scans, as in \"C 1s\"")
    private String line = "";

    @Option(
            names = "--normalise",
            paramLabel = "none|height|area",
            description = "what scans are brought to the same of (default: none)")
    private PrintScan.Normalise normalise = PrintScan.Normalise.NONE;

    @Option(
            names = "--offset",
            paramLabel = "SHARE",
            description = "from scan to scan, of the tallest one's height (default: ${DEFAULT-VALUE})")
    private double offset = 0.6;

    @Option(names = "--measured", description = "energies as measured, without the spots' references")
    private boolean measured;

    @Option(
            names = "--width",
            paramLabel = "MM",
            description = "of the column; 85 is one of two, 175 the whole page (default: ${DEFAULT-VALUE})")
    private double widthMm = 85;

    @Option(names = "--height", paramLabel = "MM", description = "of the figure (default: fitting the width)")
    private @Nullable Double heightMm;

    @Option(names = "--type-size", paramLabel = "PT", description = "of names and labels (default: ${DEFAULT-VALUE})")
    private double typePt = 8;

    @Option(names = "--dpi", paramLabel = "N", description = "dots per inch of a PNG (default: ${DEFAULT-VALUE})")
    private int dpi = 300;

    @Mixin
    private final TreatmentOptions options = new TreatmentOptions();

    FigureCommand(CommandEnvironment environment) {
        this.environment = environment;
    }

    @Override
    public Integer call() throws Exception {
        PrintFigure.Kind kind = PrintFigure.Kind.of(out.toString())
                .orElseThrow(() -> wrong(out, "another ending", "a file that ends with .svg, .pdf or .png"));
        boolean table =
                what == What.DEPTH && !input.toString().toLowerCase(Locale.ROOT).endsWith(".json");
        PrintFigure figure = table ? PrintComposition.depth(DepthTable.read(input), style()) : drawn(treated());
        WholeFile.write(
                out,
                figure.bytes(
                        kind,
                        Optional.ofNullable(System.getenv("SOURCE_DATE_EPOCH")).flatMap(LoadingSheet::sourceDate)));
        environment.out().println(figure.description() + ": " + out);
        return 0;
    }

    private PrintStyle style() throws ReadException {
        double height = heightMm == null ? widthMm * share() : heightMm;
        var problems = PrintStyle.check(widthMm, height, typePt, dpi);
        if (!problems.isEmpty()) {
            throw wrong(out, problems.get(0).toString(), "sizes that can be printed");
        }
        return new PrintStyle(widthMm, height, typePt, dpi);
    }

    /** Height over width: two parts, or many names, need more. */
    private double share() {
        boolean parts = what == What.FIT || what == What.DIFFERENCE || what == What.STATES;
        return (parts ? 1.0 : 0.75) * (widthMm > 120 ? 0.6 : 1);
    }

    private RunResult treated() throws Exception {
        try (ProgressLine progress = new ProgressLine(environment)) {
            ReferenceData reference = ReferenceData.shipped();
            HolderRun run = new HolderRunLoader(reference).load(input, options.treatment(), options.seed(), progress);
            return new RunPipeline(reference, ProgramVersion.text(), RuleBook.standard())
                    .treat(run, options.threads(), progress);
        }
    }

    private PrintFigure drawn(RunResult result) throws ReadException {
        return switch (what) {
            case SURVEY -> survey(result);
            case STACK -> PrintSpectra.stack(scans(result), normalise, offset, style());
            case DIFFERENCE -> difference(result);
            case FIT -> fit(result);
            case COMPOSITION -> PrintComposition.bars(result, style());
            case CHARGE -> PrintComposition.charge(result, style());
            case STATES -> states(result);
            case DEPTH -> depth(result);
        };
    }

    private PrintFigure survey(RunResult result) throws ReadException {
        SpotResult spot = chosen(result).get(0);
        LinkedSpectrum survey = spot.spectra().stream()
                .filter(LinkedSpectrum::survey)
                .findFirst()
                .orElseThrow(() -> wrong(input, "no survey spectrum at spot " + spot.spot(), "a spot with one"));
        OptionalDouble shift = shift(spot);
        return PrintSpectra.survey(
                PrintScan.of(PrintScan.name(spot), survey, shift),
                spot.identification().orElse(NOTHING),
                shift.orElse(0),
                style());
    }

    private PrintFigure difference(RunResult result) throws ReadException {
        List<PrintScan> scans = scans(result);
        if (scans.size() != 2) {
            throw wrong(input, scans.size() + " scans of " + line, "two spots named by --spot that have one");
        }
        try {
            return PrintSpectra.difference(scans.get(0), scans.get(1), normalise, style());
        } catch (IllegalArgumentException e) {
            throw wrong(input, String.valueOf(e.getMessage()), "two scans of the same line");
        }
    }

    private PrintFigure fit(RunResult result) throws ReadException {
        for (SpotResult spot : chosen(result)) {
            Optional<LineFit> fit = spot.fits().stream()
                    .filter(f -> line.isEmpty() || same(f.line().toString(), line))
                    .findFirst();
            if (fit.isEmpty()) continue;
            OptionalDouble shift = shift(spot);
            String name = fit.get().line() + " of " + PrintScan.name(spot);
            return PrintFit.of(fit.get().result(), name, shift.orElse(0), shift.isPresent(), style());
        }
        throw wrong(input, "no peak fit of " + (line.isEmpty() ? "any line" : line), "a line that was fitted");
    }

    private PrintFigure depth(RunResult result) throws ReadException {
        try {
            return PrintComposition.depth(DepthSeries.of(chosen(result)), style());
        } catch (IllegalArgumentException e) {
            throw wrong(input, String.valueOf(e.getMessage()), "a spot a level, each with its depth or etch time");
        }
    }

    private PrintFigure states(RunResult result) throws ReadException {
        for (SpotResult spot : chosen(result)) {
            for (AugerParameterSeen seen : spot.charge().evidence().augerParameters()) {
                if (line.isEmpty() || same(seen.line().toString(), line)) {
                    return ChemicalStateFigure.print(seen, spot.charge().scale(), style());
                }
            }
        }
        throw wrong(input, "no Auger parameter", "a spot with narrow scans of a line and its Auger line");
    }

    private List<PrintScan> scans(RunResult result) throws ReadException {
        if (line.isEmpty()) throw wrong(input, "no line", "--line, as in --line \"C 1s\"");
        List<PrintScan> scans = new ArrayList<>();
        List<SpotResult> chosen = chosen(result);
        // One energy axis: referenced only where every spot has a reference.
        boolean referenced = chosen.stream().allMatch(spot -> shift(spot).isPresent());
        for (SpotResult spot : chosen) {
            spot.spectra().stream()
                    .filter(s -> !s.survey() && same(s.region(), line))
                    .filter(s -> s.role() == SpectrumRole.MAIN || s.role() == SpectrumRole.UNKNOWN)
                    .findFirst()
                    .ifPresent(s -> scans.add(
                            PrintScan.of(PrintScan.name(spot), s, referenced ? shift(spot) : OptionalDouble.empty())));
        }
        if (scans.isEmpty()) throw wrong(input, "no narrow scan of " + line, "a line that was measured");
        return scans;
    }

    private OptionalDouble shift(SpotResult spot) {
        return measured ? OptionalDouble.empty() : spot.charge().shiftEv();
    }

    private static boolean same(String one, String other) {
        return plain(one).equals(plain(other));
    }

    /** "Ti 2p3/2" is "ti2p". */
    private static String plain(String name) {
        return name.toLowerCase(Locale.ROOT).replaceAll("\\s", "").replaceFirst("([spdf])\\d/2$", "$1");
    }

    /** All spots where none is named. */
    private List<SpotResult> chosen(RunResult result) throws ReadException {
        if (spots.isEmpty() && !result.spots().isEmpty()) return result.spots();
        List<SpotResult> chosen = new ArrayList<>();
        for (String id : spots) {
            chosen.add(result.spots().stream()
                    .filter(spot -> spot.spot().equals(id))
                    .findFirst()
                    .orElseThrow(() -> wrong(input, "no spot " + id, "one of the holder run")));
        }
        if (chosen.isEmpty()) throw wrong(input, "no spot", "a holder run with spots");
        return chosen;
    }

    private static ReadException wrong(Path file, String found, String expected) {
        return new ReadException(Place.file(file.toString()), found, expected);
    }
}
