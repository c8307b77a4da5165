package spotline.bench;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Set;
import spotline.analysis.background.TougaardTwo;
import spotline.analysis.peakfit.DefaultFit;
import spotline.analysis.peakfit.DefaultModels;
import spotline.analysis.peakfit.FitModel;
import spotline.analysis.peakfit.PeakFit;
import spotline.core.Work;
import spotline.numerics.random.PoissonSampler;
import spotline.numerics.random.RandomStreams;
import spotline.numerics.shape.DoniachSunjic;
import spotline.numerics.shape.LineShape;
import spotline.numerics.shape.Voigt;
import spotline.reference.Line;
import spotline.reference.ReferenceData;
import spotline.spectra.BindingScan;

/**
 * A holder's 40 narrow scans with their default models, from the first guess to the uncertainties: processor time of one
 * thread. Scans are invented: eight lines, five scans each, 0.1 eV a channel, tails of a two-parameter Tougaard loss function.
 */
public final class DefaultFits {
    private static final int SCANS = 40;
    private static final int WARM_UP = 30;
    private static final int ROUNDS = 30;
    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();
    private static final ReferenceData REFERENCE = ReferenceData.shipped();

    private DefaultFits() {}

    /** @param peaks position and area, eV and counts eV, Gaussian and Lorentzian width, eV, and asymmetry, each */
    private record Kind(String line, String elements, double low, double high, double[][] peaks) {}

    private static final List<Kind> KINDS = List.of(
            new Kind("C 1s", "C O", 275, 301, new double[][] {
                {284.8, 4000, 1.1, 0.1, 0}, {286.3, 700, 1.1, 0.1, 0}, {288, 300, 1.1, 0.1, 0}, {289, 250, 1.1, 0.1, 0}
            }),
            new Kind("C 1s", "C O F", 275, 301, new double[][] {
                {284.8, 1500, 1.2, 0.1, 0}, {286.3, 500, 1.2, 0.1, 0}, {292, 5000, 1.2, 0.1, 0}
            }),
            new Kind(
                    "Ti 2p", "Ti O C", 448, 476, new double[][] {{458.7, 9000, 1, 0.25, 0}, {464.75, 4600, 1, 0.8, 0}}),
            new Kind("Al 2p", "Al O C", 62, 90, new double[][] {
                {72.7, 1500, 0.5, 0.04, 0.1},
                {73.11, 763, 0.5, 0.04, 0.1},
                {75, 2500, 1.3, 0.04, 0},
                {75.41, 1272, 1.3, 0.04, 0}
            }),
            new Kind("Si 2p", "Si O C", 92, 116, new double[][] {
                {99.3, 2000, 0.5, 0.08, 0.03},
                {99.9, 1020, 0.5, 0.08, 0.03},
                {103.4, 3000, 1.3, 0.08, 0},
                {104, 1530, 1.3, 0.08, 0}
            }),
            new Kind("Ag 3d", "Ag C O", 360, 386, new double[][] {
                {368.2, 9000, 0.7, 0.3, 0.05}, {374.2, 6200, 0.7, 0.3, 0.05}
            }),
            new Kind("S 2p", "S C O", 155, 180, new double[][] {
                {163.7, 900, 0.9, 0.07, 0},
                {164.86, 460, 0.9, 0.07, 0},
                {168.6, 700, 0.9, 0.07, 0},
                {169.76, 358, 0.9, 0.07, 0}
            }),
            new Kind(
                    "N 1s", "N C O", 390, 412, new double[][] {{399.9, 1200, 1.3, 0.12, 0}, {402, 300, 1.3, 0.12, 0}}));

    private record Scan(Line line, BindingScan scan, Set<String> elements) {}

    private static Scan scan(int number) {
        Kind kind = KINDS.get(number % KINDS.size());
        int n = (int) Math.round((kind.high() - kind.low()) / 0.1) + 1;
        double[] x = new double[n];
        for (int i = 0; i < n; i++) x[i] = kind.low() + 0.1 * i;
        double[] net = new double[n];
        double[] one = new double[n];
        double share = Math.pow(2, -(number / KINDS.size()));
        for (double[] p : kind.peaks()) {
            LineShape shape = p[4] > 0 ? new DoniachSunjic() : new Voigt();
            shape.evaluate(
                    x, Arrays.copyOf(new double[] {p[0], share * p[1], p[2], p[3], p[4]}, shape.parameterCount()), one);
            for (int i = 0; i < n; i++) net[i] += one[i];
        }
        double[] expected = TougaardTwo.spectrumOf(x, net, 2866, 1643);
        for (int i = 0; i < n; i++) expected[i] += 300 * share;
        double[] counts =
                PoissonSampler.sample(RandomStreams.stream(1, "default fits", Integer.toString(number)), expected);
        return new Scan(
                Line.parse(kind.line()),
                new BindingScan(
                        "scan " + number, 1486.6, x, counts, true, OptionalDouble.empty(), OptionalDouble.empty()),
                Set.of(kind.elements().split(" ")));
    }

    private static int fitted(List<Scan> scans) {
        DefaultModels models = new DefaultModels(REFERENCE);
        DefaultFit fit = new DefaultFit(new PeakFit(REFERENCE));
        int components = 0;
        for (Scan scan : scans) {
            FitModel model =
                    models.of(scan.line(), scan.scan(), 0, scan.elements()).orElseThrow();
            components += fit.fit(scan.scan(), model, scan.scan().label(), Work.UNWATCHED)
                    .result()
                    .orElseThrow()
                    .components()
                    .size();
        }
        return components;
    }

    public static void main(String[] arguments) {
        List<Scan> scans = new ArrayList<>();
        for (int k = 0; k < SCANS; k++) scans.add(scan(k));
        double[] seconds = new double[WARM_UP + ROUNDS];
        int components = 0;
        for (int r = 0; r < seconds.length; r++) {
            long since = THREADS.getCurrentThreadCpuTime();
            components = fitted(scans);
            seconds[r] = 1e-9 * (THREADS.getCurrentThreadCpuTime() - since);
        }
        double[] warm = Arrays.copyOfRange(seconds, WARM_UP, seconds.length);
        Arrays.sort(warm);
        System.out.printf(
                Locale.ROOT,
                "%d narrow scans, default models, %d components: first round %.3f s; after %d rounds median %.3f s, slowest"
                        + " %.3f s of processor time, one thread%n",
                SCANS,
                components,
                seconds[0],
                WARM_UP,
                warm[ROUNDS / 2],
                warm[ROUNDS - 1]);
    }
}
