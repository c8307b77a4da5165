package spotline.cli;

import static java.nio.charset.StandardCharsets.UTF_8;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.PrintWriter;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import spotline.analysis.calibration.CalibrationHistory;
import spotline.analysis.calibration.CalibrationRecord;
import spotline.analysis.calibration.ControlChart;
import spotline.analysis.calibration.EnergyScale;
import spotline.analysis.calibration.MeasuredReference;
import spotline.analysis.calibration.ReferenceLines;
import spotline.core.Decimal;
import spotline.core.Finding;
import spotline.core.ReadException;
import spotline.core.Work;
import spotline.formats.Block;
import spotline.formats.SpectrumFile;
import spotline.formats.SpectrumFiles;
import spotline.formats.source.ReadLimits;
import spotline.reference.ReferenceData;
import spotline.reference.XraySource;
import spotline.report.WholeFile;
import spotline.run.CalibrationFile;
import spotline.spectra.Acquisition;
import spotline.spectra.BindingScan;

@Command(
        name = "calibrate",
        mixinStandardHelpOptions = true,
        description = {
            "Checks the binding-energy scale against Au 4f7/2, Ag 3d5/2 and Cu 2p3/2 (layout of ISO 15472).",
            "Exit status 1 when the scale is outside its tolerance, or too few lines were found to say."
        },
        footer = {
            "",
            "Example: spotline calibrate gold.txt silver.txt copper.txt --record calibration.json --history history.csv"
        })
final class CalibrateCommand implements Callable<Integer> {
    private final CommandEnvironment environment;
    private final ReferenceData reference = ReferenceData.shipped();

    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    @Parameters(arity = "1..*", paramLabel = "FILE", description = "spectra of clean gold, silver and copper")
    private List<Path> files = List.of();

    @Option(names = "--tolerance", paramLabel = "EV", description = "tolerance, eV (default: ${DEFAULT-VALUE})")
    private double tolerance = 0.2;

    @Option(
            names = "--unmonochromated",
            description = "the source has no monochromator (default: as the files say, else monochromated)")
    private boolean unmonochromated;

    @Option(names = "--date", paramLabel = "DAY", description = "day of the measurement (default: as the files say)")
    private @Nullable LocalDate date;

    @Option(
            names = "--interval",
            paramLabel = "DAYS",
            description = "days until the scale is to be checked again (default: ${DEFAULT-VALUE})")
    private int interval = 90;

    @Option(names = "--instrument", paramLabel = "NAME", description = "the instrument, in your own words")
    private String instrument = "";

    @Option(
            names = "--record",
            paramLabel = "FILE",
            description = "calibration record to write, for holder runs to name")
    private @Nullable Path record;

    @Option(names = "--history", paramLabel = "FILE", description = "CSV table of calibrations to add this one to")
    private @Nullable Path history;

    @Option(names = "--chart", paramLabel = "FILE", description = "control chart of the history to draw, SVG")
    private @Nullable Path chart;

    @Option(names = "--json", description = "the result as JSON")
    private boolean json;

    @Option(names = "--debug", description = "show stack traces")
    private boolean debug;

    CalibrateCommand(CommandEnvironment environment) {
        this.environment = environment;
    }

    /** What the files hold together. */
    private record Measured(List<BindingScan> scans, Optional<Boolean> monochromated, Optional<LocalDate> day) {}

    @Override
    public Integer call() throws Exception {
        EnergyScale.check(tolerance).forEach(problem -> {
            throw fault("--" + problem.sentence());
        });
        if (interval < 0) throw fault("--interval: " + interval + " days, expected 0 or more");
        Measured measured = read();
        if (measured.scans().isEmpty()) throw fault("the files hold no spectrum on a known energy scale");
        XraySource source = source(measured);
        List<MeasuredReference> lines = new ReferenceLines(reference, source).measure(measured.scans(), Work.UNWATCHED);
        EnergyScale scale = EnergyScale.of(lines, tolerance);
        boolean kept = record != null || history != null || chart != null;
        Optional<LocalDate> day = Optional.ofNullable(date).or(measured::day);
        if (kept && day.isEmpty()) throw fault("the files give no date, expected --date such as 2026-05-12");
        List<Finding> findings = new ArrayList<>();
        scale.tooBroad()
                .forEach(l -> findings.add(Finding.caution(
                        "reference-line-broad",
                        l.line() + " is broader than the 1.5 eV that ISO 15472 covers: use a finer setting.")));
        if (kept) findings.addAll(keep(scale, day.orElseThrow(), source, measured));
        if (json) printJson(scale, findings);
        else print(scale, source, findings);
        return switch (scale.verdict()) {
            case WITHIN, NEARLY_USED -> 0;
            case OUTSIDE, UNDETERMINED -> 1;
        };
    }

    private ParameterException fault(String message) {
        return new ParameterException(new CommandLine(spec), message);
    }

    private Measured read() throws ReadException {
        List<BindingScan> scans = new ArrayList<>();
        Optional<Boolean> monochromated = Optional.empty();
        Optional<LocalDate> day = Optional.empty();
        for (Path path : files) {
            SpectrumFile file = SpectrumFiles.open(path, path.toString(), Optional.empty(), ReadLimits.DEFAULT);
            for (Block block : file.blocks()) {
                Acquisition a = block.set().acquisition();
                OptionalDouble photons = a.excitation().photonEnergyEv();
                boolean xps = a.technique().isEmpty() || a.technique().equals("XPS");
                if (!xps || photons.isEmpty() || block.set().size() != 1) continue;
                try {
                    scans.add(BindingScan.of(
                            block.set().spectrum(0), photons.getAsDouble(), path.getFileName() + "#" + block.number()));
                } catch (IllegalArgumentException e) {
                    // Not an energy axis: nothing to calibrate by, and inspect says so.
                    continue;
                }
                monochromated = monochromated.or(() -> a.excitation().monochromated());
                day = day.or(() -> a.time().map(OffsetDateTime::toLocalDate));
            }
        }
        return new Measured(scans, monochromated, day);
    }

    private XraySource source(Measured measured) {
        double photons = measured.scans().get(0).photonEnergyEv();
        for (BindingScan scan : measured.scans()) {
            if (Math.abs(scan.photonEnergyEv() - photons) > 0.5) {
                throw fault("the files have photon energies of " + Decimal.text(photons) + " and "
                        + Decimal.text(scan.photonEnergyEv()) + " eV, expected one source");
            }
        }
        boolean monochromated = !unmonochromated && measured.monochromated().orElse(true);
        Optional<XraySource> found =
                reference.sourceNear(photons, monochromated).or(() -> reference.sourceNear(photons, !monochromated));
        return found.filter(s -> !reference.calibrationEnergies(s).isEmpty())
                .orElseThrow(() -> fault("no reference energies are known for a photon energy of "
                        + Decimal.text(photons) + " eV, expected Al or Mg K-alpha"));
    }

    private List<Finding> keep(EnergyScale scale, LocalDate day, XraySource source, Measured measured)
            throws ReadException, IOException {
        CalibrationRecord made = CalibrationRecord.of(
                scale,
                day,
                day.plusDays(interval),
                instrument,
                source.name(),
                source.monochromated(),
                measured.scans().get(0).photonEnergyEv(),
                measured.scans().get(0).passEnergyEv());
        CalibrationHistory before = CalibrationHistory.empty();
        if (history != null && Files.exists(history)) {
            before = CalibrationHistory.read(history.toString(), Files.readString(history, UTF_8));
        }
        CalibrationHistory after = before.plus(made);
        if (record != null) WholeFile.write(record, CalibrationFile.text(made).getBytes(UTF_8));
        if (history != null) WholeFile.write(history, after.csv().getBytes(UTF_8));
        if (chart != null) WholeFile.write(chart, new ControlChart(after).svg().getBytes(UTF_8));
        return after.findings();
    }

    private void print(EnergyScale scale, XraySource source, List<Finding> findings) {
        PrintWriter out = environment.out();
        out.println("Source: " + source.name() + (source.monochromated() ? ", monochromated" : "") + "; tolerance "
                + Decimal.text(scale.toleranceEv()) + " eV");
        TextTable table =
                new TextTable("line", "measured eV", "u eV", "reference eV", "deviation eV", "FWHM eV", "spectra");
        for (MeasuredReference l : scale.lines()) {
            table.row(
                    l.line(),
                    Decimal.fixed(l.measuredEv().value(), 3),
                    shown(l.measuredEv().standardUncertainty(), 3),
                    Decimal.fixed(l.reference().value(), 2),
                    String.format(Locale.ROOT, "%+.3f", l.deviationEv().value()),
                    shown(l.fwhmEv(), 2),
                    l.spectra());
        }
        table.print(out);
        boolean ends = scale.deviationAt(0).isPresent();
        if (scale.lines().isEmpty()) out.println("No reference line was found in a narrow scan.");
        if (ends) out.println(String.format(Locale.ROOT, "Correction: E %+.4g E %+.4f eV", scale.a(), scale.b()));
        if (scale.offsetOnly()) out.println("One end of the scale was measured: an offset, and no word on the rest.");
        for (EnergyScale.Linearity l : scale.linearity()) {
            out.println(String.format(
                    Locale.ROOT,
                    "%s departs from the straight line by %+.3f eV: %s",
                    l.line(),
                    l.departureEv().value(),
                    l.straight() ? "linear" : "not linear"));
        }
        out.println("Deviation with expanded uncertainty (k = 2), worst from 0 to 1000 eV: " + shown(scale.worstEv(), 3)
                + " eV");
        out.println("As found: " + verdict(scale));
        findings.forEach(f -> out.println(f.severity().word() + ": " + f.message()));
        out.println("Checks the arithmetic of a calibration; it certifies no conformity to a standard.");
    }

    private static String verdict(EnergyScale scale) {
        return switch (scale.verdict()) {
            case WITHIN -> "within tolerance";
            case NEARLY_USED -> "within tolerance, over 70 % of it used";
            case OUTSIDE -> "outside tolerance";
            case UNDETERMINED -> "undetermined, both Au 4f7/2 (or Cu 3p3/2) and Cu 2p3/2 are needed";
        };
    }

    private static String shown(OptionalDouble value, int decimals) {
        return value.isPresent() ? Decimal.fixed(value.getAsDouble(), decimals) : "?";
    }

    private void printJson(EnergyScale scale, List<Finding> findings) throws IOException {
        ObjectMapper mapper = new ObjectMapper();
        ObjectNode node = mapper.createObjectNode();
        node.put("toleranceEv", decimal(scale.toleranceEv()));
        node.put("verdict", scale.verdict().name().toLowerCase(Locale.ROOT).replace('_', '-'));
        node.put("a", decimal(scale.a()));
        node.put("bEv", decimal(scale.b()));
        put(node, "worstEv", scale.worstEv());
        ArrayNode lines = node.putArray("lines");
        for (MeasuredReference l : scale.lines()) {
            ObjectNode entry = lines.addObject();
            entry.put("line", l.line()).put("spectra", l.spectra());
            entry.put("measuredEv", decimal(l.measuredEv().value()));
            put(entry, "measurementU", l.measuredEv().standardUncertainty());
            put(entry, "repeatabilityEv", l.repeatabilityEv());
            entry.put("referenceEv", decimal(l.reference().value()));
            put(entry, "referenceU", l.reference().standardUncertainty());
            entry.put("deviationEv", decimal(l.deviationEv().value()));
            put(entry, "fwhmEv", l.fwhmEv());
            put(
                    entry,
                    "intensity",
                    l.intensity().map(i -> OptionalDouble.of(i.value())).orElse(OptionalDouble.empty()));
        }
        ArrayNode linearity = node.putArray("linearity");
        for (EnergyScale.Linearity l : scale.linearity()) {
            linearity
                    .addObject()
                    .put("line", l.line())
                    .put("departureEv", decimal(l.departureEv().value()))
                    .put("linear", l.straight());
        }
        ArrayNode said = node.putArray("findings");
        for (Finding f : findings) {
            said.addObject()
                    .put("severity", f.severity().word())
                    .put("rule", f.rule())
                    .put("message", f.message());
        }
        environment.out().println(mapper.writerWithDefaultPrettyPrinter().writeValueAsString(node));
    }

    private static BigDecimal decimal(double value) {
        return new BigDecimal(Decimal.text(value));
    }

    private static void put(ObjectNode node, String field, OptionalDouble value) {
        if (value.isPresent()) node.put(field, decimal(value.getAsDouble()));
        else node.putNull(field);
    }
}
