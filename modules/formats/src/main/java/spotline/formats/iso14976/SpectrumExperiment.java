package spotline.formats.iso14976;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.spectra.Acquisition;
import spotline.spectra.Axis;
import spotline.spectra.Coordinate;
import spotline.spectra.EnergyScale;
import spotline.spectra.HeaderField;
import spotline.spectra.Ordinate;
import spotline.spectra.RegularAxis;
import spotline.spectra.SpectrumSet;

/**
 * Spectra of another format as an experiment: independent photoelectron blocks, one a spectrum. What the spectra do not
 * say is written as "not known"; header fields that have no place of their own become lines of the block's comment.
 */
public final class SpectrumExperiment {
    private SpectrumExperiment() {}

    /**
     * One block a spectrum of the set; energies that are not equally spaced make an irregular scan.
     *
     * @param experiment identifier of the experiment
     *     <p>Errors: {@link IllegalArgumentException} when a value is not finite.
     */
    public static Experiment of(SpectrumSet set, String experiment) {
        boolean regular = set.axis() instanceof RegularAxis;
        ExperimentHeader norm = ExperimentHeader.norm("", "", "", oneLine(experiment), List.of());
        ExperimentHeader header = new ExperimentHeader(
                norm.formatIdentifier(),
                norm.institution(),
                norm.instrument(),
                norm.operator(),
                norm.experiment(),
                norm.comments(),
                norm.mode(),
                regular ? ScanMode.REGULAR : ScanMode.IRREGULAR,
                norm.spectralRegions(),
                norm.mapExtent(),
                set.coordinates().stream()
                        .map(c -> new Variable(c.name(), c.unit()))
                        .toList(),
                norm.inclusion(),
                norm.manualItems(),
                norm.futureExperimentEntries(),
                norm.futureBlockEntries());
        List<ExperimentBlock> blocks = new ArrayList<>();
        for (int s = 0; s < set.size(); s++) blocks.add(block(set, s, regular));
        return new Experiment(header, blocks);
    }

    private static ExperimentBlock block(SpectrumSet set, int spectrum, boolean regular) {
        Acquisition a = set.acquisition();
        List<Real> coordinates = new ArrayList<>();
        for (Coordinate c : set.coordinates()) coordinates.add(Real.of(c.value(spectrum)));
        List<Variable> variables = new ArrayList<>();
        List<double[]> values = new ArrayList<>();
        if (!regular) {
            variables.add(new Variable(
                    set.axis().quantity().label(), set.axis().quantity().unit()));
            values.add(values(set.axis()));
        }
        int n = set.axis().channels();
        for (Ordinate o : set.ordinates()) {
            variables.add(new Variable(o.quantity().label(), unit(o)));
            values.add(o.copy(spectrum * n, spectrum * n + n));
        }
        return new ExperimentBlock(
                oneLine(a.blockId()),
                oneLine(a.sampleId()),
                a.time().map(BlockTime::of).orElse(BlockTime.UNKNOWN),
                comments(set),
                Technique.XPS,
                Optional.empty(),
                coordinates,
                source(a),
                analyser(a),
                oneLine(a.region()),
                oneLine(a.transition()),
                Real.of(-1),
                regular ? Optional.of(abscissa((RegularAxis) set.axis())) : Optional.empty(),
                variables,
                signal(set),
                Optional.empty(),
                SampleOrientation.UNKNOWN,
                List.of(),
                List.of(),
                Ordinates.ofVariables(values));
    }

    private static double[] values(Axis axis) {
        double[] values = new double[axis.channels()];
        for (int i = 0; i < values.length; i++) values[i] = axis.value(i);
        return values;
    }

    private static Abscissa abscissa(RegularAxis axis) {
        String label = axis.quantity().scale() == EnergyScale.OTHER
                ? axis.quantity().label()
                : axis.quantity().scale().name().toLowerCase(Locale.ROOT) + " energy";
        return new Abscissa(label, axis.quantity().unit(), Real.of(axis.first()), Real.of(axis.step()));
    }

    /** The standard's words for a number and for counts per second, where the statistics are known. */
    private static String unit(Ordinate ordinate) {
        String unit = ordinate.quantity().unit();
        if (ordinate.kind() != Ordinate.Kind.INTENSITY) return unit;
        if (unit.equals("counts")) return "d";
        return unit.equals("counts/s") ? "c/s" : unit;
    }

    private static AnalysisSource source(Acquisition a) {
        return new AnalysisSource(
                oneLine(a.excitation().source()),
                Optional.empty(),
                Real.of(a.excitation().photonEnergyEv()),
                Real.UNKNOWN,
                Real.UNKNOWN,
                Real.UNKNOWN,
                Optional.empty(),
                Optional.empty(),
                Real.UNKNOWN,
                Real.UNKNOWN);
    }

    private static AnalyserSettings analyser(Acquisition a) {
        OptionalDouble pass = a.analyser().passEnergyEv();
        return pass.isPresent() ? AnalyserSettings.constantPassEnergy(pass.getAsDouble()) : AnalyserSettings.UNKNOWN;
    }

    private static boolean counted(SpectrumSet set) {
        return set.ordinate(Ordinate.Kind.INTENSITY)
                .map(SpectrumExperiment::unit)
                .filter(unit -> unit.equals("d") || unit.equals("c/s"))
                .isPresent();
    }

    private static Signal signal(SpectrumSet set) {
        return new Signal(
                counted(set) ? Signal.PULSE_COUNTING : Signal.ANALOGUE,
                Real.of(set.acquisition().timing().dwellSeconds()),
                Real.of(set.acquisition().timing().scans()),
                Real.of(set.acquisition().timing().deadTimeSeconds()));
    }

    private static List<String> comments(SpectrumSet set) {
        Acquisition a = set.acquisition();
        List<String> lines = new ArrayList<>();
        if (!counted(set)) lines.add("signal mode: not known, written as analogue");
        for (String line : a.comments()) lines.add(oneLine(line));
        for (HeaderField field : a.header()) lines.add(oneLine(field.name() + ": " + field.value()));
        return lines;
    }

    /** A line of the file holds no line end, and no half of a surrogate pair. */
    private static String oneLine(String text) {
        String line = text.replace('\n', ' ').replace('\r', ' ');
        return new String(line.getBytes(StandardCharsets.UTF_8), StandardCharsets.UTF_8);
    }
}
