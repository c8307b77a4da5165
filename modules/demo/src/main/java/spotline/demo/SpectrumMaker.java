package spotline.demo;

import static java.util.Objects.requireNonNull;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.formats.iso14976.AnalyserSettings;
import spotline.formats.iso14976.AnalysisSource;
import spotline.formats.iso14976.Experiment;
import spotline.formats.iso14976.ExperimentBlock;
import spotline.formats.iso14976.ExperimentHeader;
import spotline.formats.iso14976.Real;

/**
 * A spot's spectra as one file of ISO 14976 text: counts with Poisson noise, and the transmission of the analyser as a
 * second corresponding variable, over kinetic energies that rise.
 */
public final class SpectrumMaker {
    private static final String INVENTED = "Invented demonstration data: computed, never measured.";
    private static final double SOURCE_W = 150;
    private static final MathContext TRANSMISSION_DIGITS = new MathContext(6, RoundingMode.HALF_EVEN);

    private final DemoModel model;
    private final long seed;

    /** @param seed of the noise; each block draws from a stream of its own */
    public SpectrumMaker(DemoModel model, long seed) {
        this.model = requireNonNull(model, "model");
        this.seed = seed;
    }

    /** All scans of a spot, in their order. */
    public Experiment experiment(SpotPlan plan) {
        ExperimentHeader header = ExperimentHeader.norm(
                "invented demonstration",
                "simulated spectrometer",
                "surface lab",
                plan.sampleName(),
                List.of(INVENTED, "Made by spotline.demo with seed " + seed + "."));
        Map<AnalyserMode, LossSpectrum> spectra = new HashMap<>();
        List<ExperimentBlock> blocks = new ArrayList<>();
        for (int i = 0; i < plan.scans().size(); i++) {
            AnalyserMode mode = plan.scans().get(i).mode();
            LossSpectrum spectrum = spectra.computeIfAbsent(mode, m -> model.spectrum(plan.surface(), m));
            blocks.add(block(plan, i, spectrum));
        }
        return new Experiment(header.withSpectralRegions(blocks.size()), blocks);
    }

    private ExperimentBlock block(SpotPlan plan, int index, LossSpectrum spectrum) {
        Scan scan = plan.scans().get(index);
        InstrumentModel instrument = model.instrument();
        double[] expected = model.expectedCounts(spectrum, scan, plan.driftEv(index));
        PoissonNoise noise = PoissonNoise.stream(seed, plan.file() + "/" + (index + 1));
        double[] counts = new double[expected.length];
        double[] transmission = new double[expected.length];
        for (int i = 0; i < counts.length; i++) {
            counts[i] = noise.draw(expected[i]);
            transmission[i] = rounded(scan.mode().transmission(instrument.photonEnergyEv() - scan.bindingEv(i)));
        }
        String label = (scan.species() + " " + scan.transition()).strip();
        return ExperimentBlock.xps("spot " + plan.id() + ", " + (index + 1) + ", " + label, plan.sampleId())
                .time(plan.startOf(index))
                .comments(List.of(INVENTED))
                .source(source(instrument))
                .analyser(analyser(instrument, scan.mode()))
                .region(scan.species(), scan.transition())
                .kineticAxis(cent(instrument.photonEnergyEv() - scan.highEv()), scan.stepEv())
                .pulseCounting(scan.dwellSeconds(), scan.scans(), OptionalDouble.empty())
                .counts(counts)
                .variable("Transmission", "d", transmission)
                .build();
    }

    private static AnalysisSource source(InstrumentModel instrument) {
        return new AnalysisSource(
                "Al mono",
                Optional.empty(),
                Real.of(instrument.photonEnergyEv()),
                Real.of(SOURCE_W),
                Real.UNKNOWN,
                Real.UNKNOWN,
                Optional.empty(),
                Optional.empty(),
                Real.of(InstrumentModel.SOURCE_ANALYSER_ANGLE_DEG),
                Real.UNKNOWN);
    }

    private static AnalyserSettings analyser(InstrumentModel instrument, AnalyserMode mode) {
        return new AnalyserSettings(
                "FAT",
                Real.of(mode.passEnergyEv()),
                Optional.empty(),
                Real.UNKNOWN,
                Real.UNKNOWN,
                Real.ZERO,
                Real.of(1000 * InstrumentModel.ANALYSIS_WIDTH_X_MM),
                Real.of(1000 * InstrumentModel.ANALYSIS_WIDTH_Y_MM),
                Real.of(instrument.emissionAngleDeg()),
                Real.UNKNOWN);
    }

    private static double rounded(double transmission) {
        return new BigDecimal(transmission).round(TRANSMISSION_DIGITS).doubleValue();
    }

    /** Kinetic energies start on a hundredth of an eV, as the photon energy does. */
    private static double cent(double kineticEv) {
        return new BigDecimal(kineticEv).setScale(2, RoundingMode.HALF_EVEN).doubleValue();
    }
}
