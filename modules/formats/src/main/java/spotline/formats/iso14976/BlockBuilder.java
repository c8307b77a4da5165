package spotline.formats.iso14976;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Gathers a photoelectron block on a regular scan for an experiment of mode NORM. What it is not told is written as
 * "not known".
 */
public final class BlockBuilder {
    private final String blockId;
    private final String sampleId;
    private final List<Variable> variables = new ArrayList<>();
    private final List<double[]> values = new ArrayList<>();
    private BlockTime time = BlockTime.UNKNOWN;
    private List<String> comments = List.of();
    private List<Real> experimentalValues = List.of();
    private AnalysisSource source = AnalysisSource.UNKNOWN;
    private AnalyserSettings analyser = AnalyserSettings.UNKNOWN;
    private String species = "";
    private String transition = "";
    private Optional<Abscissa> abscissa = Optional.empty();
    private Signal signal = Signal.UNKNOWN;
    private SampleOrientation orientation = SampleOrientation.UNKNOWN;
    private List<AdditionalParameter> parameters = List.of();

    BlockBuilder(String blockId, String sampleId) {
        this.blockId = blockId;
        this.sampleId = sampleId;
    }

    public BlockBuilder time(OffsetDateTime start) {
        time = BlockTime.of(start);
        return this;
    }

    public BlockBuilder comments(List<String> lines) {
        comments = lines;
        return this;
    }

    /** One value an experimental variable of the header, in its order. */
    public BlockBuilder experimentalValues(double... ofVariables) {
        List<Real> list = new ArrayList<>();
        for (double value : ofVariables) list.add(Real.of(value));
        experimentalValues = list;
        return this;
    }

    /** @param strengthW power of the X-ray source, W */
    public BlockBuilder source(String label, double photonEnergyEv, OptionalDouble strengthW) {
        return source(new AnalysisSource(
                label,
                Optional.empty(),
                Real.of(photonEnergyEv),
                Real.of(strengthW),
                Real.UNKNOWN,
                Real.UNKNOWN,
                Optional.empty(),
                Optional.empty(),
                Real.UNKNOWN,
                Real.UNKNOWN));
    }

    public BlockBuilder source(AnalysisSource analysisSource) {
        source = analysisSource;
        return this;
    }

    public BlockBuilder passEnergyEv(double passEnergyEv) {
        return analyser(AnalyserSettings.constantPassEnergy(passEnergyEv));
    }

    public BlockBuilder analyser(AnalyserSettings settings) {
        analyser = settings;
        return this;
    }

    /** Species and transition: {@code "C"}, {@code "1s"}. */
    public BlockBuilder region(String speciesLabel, String transitionLabel) {
        species = speciesLabel;
        transition = transitionLabel;
        return this;
    }

    public BlockBuilder kineticAxis(double startEv, double stepEv) {
        return abscissa(new Abscissa("kinetic energy", "eV", Real.of(startEv), Real.of(stepEv)));
    }

    public BlockBuilder bindingAxis(double startEv, double stepEv) {
        return abscissa(new Abscissa("binding energy", "eV", Real.of(startEv), Real.of(stepEv)));
    }

    public BlockBuilder abscissa(Abscissa regular) {
        abscissa = Optional.of(regular);
        return this;
    }

    /** @param dwellSeconds s per scan and channel */
    public BlockBuilder pulseCounting(double dwellSeconds, int scans, OptionalDouble deadTimeSeconds) {
        return signal(
                new Signal(Signal.PULSE_COUNTING, Real.of(dwellSeconds), Real.of(scans), Real.of(deadTimeSeconds)));
    }

    public BlockBuilder signal(Signal collected) {
        signal = collected;
        return this;
    }

    public BlockBuilder orientation(SampleOrientation sample) {
        orientation = sample;
        return this;
    }

    public BlockBuilder parameters(List<AdditionalParameter> additional) {
        parameters = additional;
        return this;
    }

    /** Counts of all scans together. */
    public BlockBuilder counts(double[] counts) {
        return variable("intensity", "d", counts);
    }

    /** One more corresponding variable with a value a channel. */
    public BlockBuilder variable(String label, String unit, double[] ofChannels) {
        variables.add(new Variable(label, unit));
        values.add(ofChannels.clone());
        return this;
    }

    /** Errors: {@link IllegalArgumentException} when the variables differ in length or no abscissa was given. */
    public ExperimentBlock build() {
        if (abscissa.isEmpty()) throw new IllegalArgumentException("a regular scan needs an abscissa");
        return new ExperimentBlock(
                blockId,
                sampleId,
                time,
                comments,
                Technique.XPS,
                Optional.empty(),
                experimentalValues,
                source,
                analyser,
                species,
                transition,
                Real.of(-1),
                abscissa,
                variables,
                signal,
                Optional.empty(),
                orientation,
                parameters,
                List.of(),
                Ordinates.ofVariables(values));
    }
}
