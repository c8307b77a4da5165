package spotline.analysis.charge;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import spotline.analysis.charge.ChargeInput.MeasuredLine;
import spotline.analysis.charge.SpotCondition.CarbonOrigin;
import spotline.analysis.charge.SpotCondition.Conduction;
import spotline.analysis.charge.SpotCondition.Contact;
import spotline.core.Finding;
import spotline.core.Outcome;
import spotline.core.Work;
import spotline.numerics.fit.PeakModel;
import spotline.numerics.random.PoissonSampler;
import spotline.numerics.random.RandomStreams;
import spotline.numerics.shape.Voigt;
import spotline.reference.Line;
import spotline.reference.ReferenceData;
import spotline.spectra.BindingScan;

/** Invented scans with Poisson noise from fixed seeds, and decisions on them. */
final class Made {
    static final ReferenceData REFERENCE = ReferenceData.shipped();
    static final SpotCondition ISOLATED =
            new SpotCondition(Conduction.INSULATOR, Contact.ISOLATED, CarbonOrigin.ADVENTITIOUS);
    static final SpotCondition GROUNDED_METAL =
            new SpotCondition(Conduction.CONDUCTOR, Contact.GROUNDED, CarbonOrigin.ADVENTITIOUS);

    private Made() {}

    /** One Voigt line: measured position and Gaussian width in eV, area in counts eV. */
    record Peak(double positionEv, double area, double gaussianFwhmEv) {}

    /** Adventitious carbon: hydrocarbon with the usual shares of carbon bonded to oxygen. */
    static List<Peak> carbon(double hydrocarbonEv, double area, double fwhmEv) {
        return List.of(
                new Peak(hydrocarbonEv, area, fwhmEv),
                new Peak(hydrocarbonEv + 1.5, 0.19 * area, fwhmEv),
                new Peak(hydrocarbonEv + 3.0, 0.08 * area, fwhmEv),
                new Peak(hydrocarbonEv + 4.2, 0.06 * area, fwhmEv));
    }

    static double[] grid(double lowEv, double highEv) {
        int n = (int) Math.round((highEv - lowEv) / 0.1) + 1;
        double[] energy = new double[n];
        for (int i = 0; i < n; i++) energy[i] = lowEv + 0.1 * i;
        return energy;
    }

    /** Expected counts of lines with a natural width of 0.1 eV on a sloping background. */
    static double[] means(double[] energy, List<Peak> peaks, double background, double slope) {
        PeakModel model = PeakModel.on(energy);
        List<Double> p = new ArrayList<>();
        for (int k = 0; k < peaks.size(); k++) {
            model = model.plus("line " + k, new Voigt());
            p.addAll(List.of(
                    peaks.get(k).positionEv(), peaks.get(k).area(), peaks.get(k).gaussianFwhmEv(), 0.1));
        }
        model = model.polynomialBackground(1, energy[0]);
        p.addAll(List.of(background, slope));
        double[] values = new double[energy.length];
        model.evaluator().values(p.stream().mapToDouble(Double::doubleValue).toArray(), values);
        return values;
    }

    static BindingScan scan(String label, double[] energy, double[] counts) {
        return new BindingScan(label, 1486.6, energy, counts, true, OptionalDouble.of(1), OptionalDouble.of(20));
    }

    /** Noisy counts; the key makes the stream. */
    static BindingScan noisy(
            String label, double lowEv, double highEv, List<Peak> peaks, double background, long seed) {
        double[] energy = grid(lowEv, highEv);
        double[] counts = PoissonSampler.sample(
                RandomStreams.stream(seed, label), means(energy, peaks, background, 0.01 * background));
        return scan(label, energy, counts);
    }

    static BindingScan carbonScan(double hydrocarbonEv, long seed) {
        return noisy("C 1s scan", 277, 302, carbon(hydrocarbonEv, 8000, 1.2), 400, seed);
    }

    static ChargeInput input(SpotCondition condition, double workingShiftEv, MeasuredLine... lines) {
        return new ChargeInput(
                condition, List.of(lines), List.of(), Optional.empty(), new TreeSet<>(), false, true, workingShiftEv);
    }

    static ChargeInput input(SpotCondition condition, BindingScan carbon, double workingShiftEv) {
        return input(condition, workingShiftEv, line("C 1s", carbon));
    }

    static ChargeInput input(SpotCondition condition, double workingShiftEv, String line, BindingScan scan) {
        return input(condition, workingShiftEv, line(line, scan));
    }

    static MeasuredLine line(String line, BindingScan scan) {
        return new MeasuredLine(Line.parse(line), scan);
    }

    static ChargeSettings settings(
            ChargeMethod method, OptionalDouble reference, OptionalDouble referenceU, String line, String reason) {
        return ChargeSettings.of(method, reference, referenceU, line, reason);
    }

    static ChargeSettings byRecord() {
        return ChargeSettings.byRecord();
    }

    static Outcome<ChargeReference> decide(ChargeSettings settings, ChargeInput input) {
        return new ChargeReferencing(REFERENCE, settings).decide(input, Work.UNWATCHED);
    }

    static ChargeReference reference(ChargeSettings settings, ChargeInput input) {
        return decide(settings, input).result().orElseThrow();
    }

    static List<String> rules(ChargeSettings settings, ChargeInput input) {
        return decide(settings, input).allFindings().stream().map(Finding::rule).toList();
    }
}
