package spotline.analysis.identify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import spotline.reference.Elements;
import spotline.reference.ReferenceData;
import spotline.spectra.BindingScan;
import spotline.spectra.Transmission;

class SurveyModelPartsTest {
    private static SurveyGrid grid(double[] counts) {
        double[] energy = new double[counts.length];
        for (int i = 0; i < energy.length; i++) energy[i] = i;
        return SurveyGrid.of(
                new BindingScan("grid", 1486.6, energy, counts, true, OptionalDouble.empty(), OptionalDouble.empty()));
    }

    private static double[] constant(int n, double value) {
        double[] values = new double[n];
        Arrays.fill(values, value);
        return values;
    }

    @Test
    void theTailHoldsEveryOrderOfScattering() {
        // Full multiple scattering of a peak of unit area, B = 2866, C = 1643 eV2; derived, computed from the series.
        assertThat(LossTail.at(10)).isCloseTo(0.00961, within(4e-5));
        assertThat(LossTail.at(23.4)).isCloseTo(0.01569, within(4e-5));
        assertThat(LossTail.at(50)).isCloseTo(0.01534, within(4e-5));
        assertThat(LossTail.at(100)).isCloseTo(0.01265, within(4e-5));
        assertThat(LossTail.at(0)).isZero();
        assertThat(LossTail.at(-1)).isZero();
    }

    @Test
    void aPeakShapeHasUnitAreaAndItsWidth() {
        for (double lorentz : new double[] {0, 0.3, 1, 3}) {
            PeakShape shape = new PeakShape(1.5, lorentz);
            double sum = 0;
            for (double x = -200; x <= 200; x += 0.02) sum += 0.02 * shape.at(x);
            assertThat(sum).isCloseTo(1, within(0.01));
            assertThat(shape.at(shape.fwhmEv / 2)).isCloseTo(shape.at(0) / 2, within(1e-9));
        }
        // Voigt of Gaussian 1 and Lorentzian 0.2: 1.11100; derived; the polynomial is good to 0.3 %.
        assertThat(new PeakShape(1, 0.2).fwhmEv).isCloseTo(1.11100, within(0.003));
    }

    /** Whether or not the deviations are kept, to the last bit, and again for the next curve. */
    @Test
    void theSquareOfAWhiteCurveIsThatOfItsDeviations() {
        Random random = new Random(3);
        int n = 300;
        double[] variance = constant(n, 50);
        for (int i = 0; i < 6; i++) variance[i] = Double.POSITIVE_INFINITY;
        double[] counts = constant(n, 100);
        Design design = new Design(counts, new Whitening(grid(counts), constant(n, 0.01), variance));
        for (int round = 0; round < 20; round++) {
            Curve.Builder builder = new Curve.Builder(n);
            int first = random.nextInt(n - 20);
            for (int i = first; i < first + 20; i++) builder.add(i, random.nextGaussian());
            Curve curve = builder.build();
            double kept = design.white(curve).square();
            assertThat(kept).isGreaterThan(0);
            assertThat(design.square(curve)).isEqualTo(kept);
        }
    }

    @Test
    void whiteNoiseStaysWhite() {
        int n = 2000;
        Random random = new Random(1);
        double[] counts = new double[n];
        for (int i = 0; i < n; i++) counts[i] = 1000 + 0.5 * i + Math.sqrt(1000) * random.nextGaussian();
        Whitening whitening = new Whitening(grid(counts), constant(n, 1e-3), constant(n, 1000));
        double sum = 0;
        double product = 0;
        double[] white = whitening.apply(counts);
        for (int i = 10; i < n; i++) {
            sum += white[i] * white[i];
            product += white[i] * white[i - 1];
        }
        // 1 +/- sqrt(2/N), and no correlation beyond 3/sqrt(N)
        assertThat(sum / (n - 10)).isCloseTo(1, within(3 * Math.sqrt(2.0 / n)));
        assertThat(product / (n - 10)).isCloseTo(0, within(3 / Math.sqrt(n)));
    }

    @Test
    void theSmoothPartOfAStraightLineIsTheLine() {
        int n = 300;
        double[] line = new double[n];
        for (int i = 0; i < n; i++) line[i] = 50 + 3.0 * i;
        double[] smooth = new Whitening(grid(line), constant(n, 0.01), constant(n, 100)).smooth(line);
        for (int i = 0; i < n; i++) assertThat(smooth[i]).isCloseTo(line[i], within(1e-3));
    }

    @Test
    void channelsThatDoNotCountAreBridged() {
        int n = 200;
        double[] y = new double[n];
        double[] variance = constant(n, 100);
        for (int i = 0; i < n; i++) y[i] = 10 * i;
        for (int i = 90; i < 100; i++) {
            y[i] = 1e6;
            variance[i] = Double.POSITIVE_INFINITY;
        }
        Whitening whitening = new Whitening(grid(y), constant(n, 0.01), variance);
        assertThat(whitening.smooth(y)[95]).isCloseTo(950, within(5.0));
        assertThat(whitening.apply(y)[95]).isZero();
    }

    @Test
    void residualsThatAreTooLargeInPlacesAreFoundThere() {
        int n = 600;
        Random random = new Random(2);
        double[] residual = new double[n];
        for (int i = 0; i < n; i++) residual[i] = (i > 300 ? 3 : 1) * random.nextGaussian();
        // One line that is missing from a model does not enlarge its own surroundings.
        for (int i = 100; i < 105; i++) residual[i] = 15;
        double[] excess = Discrepancy.excess(grid(constant(n, 1)), residual);
        assertThat(excess[102]).isBetween(0.6, 1.9);
        assertThat(excess[450]).isBetween(5.0, 14.0);
    }

    @Test
    void sparseCurvesBehaveAsTheirDenseForms() {
        Curve.Builder builder = new Curve.Builder(20);
        builder.add(3, 1);
        builder.add(4, 2);
        builder.add(12, 5);
        Curve a = builder.build();
        builder.add(4, 3);
        builder.add(13, 1);
        Curve b = builder.build();
        assertThat(a.dense(20)[12]).isEqualTo(5);
        assertThat(b.dense(20)[3]).isZero();
        double[] sum = a.dense(20);
        b.addTo(sum, 2);
        assertThat(sum[4]).isEqualTo(8);
        assertThat(builder.build().isEmpty()).isTrue();
    }

    @Test
    void everyElementOfTheTableHasItsMainLineFirst() {
        for (double photon : new double[] {1486.6, 1253.6}) {
            AtomTable table = AtomTable.of(ReferenceData.shipped(), photon);
            assertThat(table.atoms()).hasSizeGreaterThan(85);
            for (Atom atom : table.atoms()) {
                assertThat(atom.main().main()).isTrue();
                assertThat(atom.lowestEv()).isLessThan(0);
                assertThat(atom.highestEv()).isGreaterThan(0);
                assertThat(atom.lines().stream().filter(AtomLine::main)).hasSize(1);
            }
            assertThat(AtomTable.of(ReferenceData.shipped(), photon + 0.1)).isSameAs(table);
        }
    }

    @Test
    void estimatedAugerBranchesLieNearTheListedOnes() {
        AtomTable table = AtomTable.of(ReferenceData.shipped(), 1486.6);
        // Kinetic energies in eV as usually listed, from memory.
        assertThat(branch(table, "O", "KL1L23")).isCloseTo(490, within(6.0));
        assertThat(branch(table, "O", "KL1L1")).isCloseTo(470, within(10.0));
        assertThat(branch(table, "Cu", "L2M45M45")).isCloseTo(938, within(4.0));
        assertThat(branch(table, "Zn", "L3M23M45")).isCloseTo(908, within(10.0));
        assertThat(table.atom("Li").orElseThrow().auger()).isEmpty();
    }

    private static double branch(AtomTable table, String symbol, String name) {
        return table.atom(symbol).orElseThrow().auger().stream()
                .filter(b -> b.name().equals(name))
                .mapToDouble(AugerBranch::kineticEv)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aBuriedElementLosesItsSlowElectrons() {
        Atom copper = AtomTable.of(ReferenceData.shipped(), 1486.6).atom("Cu").orElseThrow();
        assertThat(Elements.bySymbol("Cu").orElseThrow()).isEqualTo(copper.element());
        Emitter bare = new Emitter(copper);
        Emitter deep = new Emitter(copper, 0.8);
        double main = 1486.6 - copper.main().bindingEv();
        assertThat(bare.factor(1400, 1486.6)).isEqualTo(1);
        assertThat(deep.factor(main, 1486.6)).isCloseTo(1, within(1e-12));
        // derived: exp(-0.8 (1.4^-0.842 - (main/1000)^-0.842))
        double expected = Math.exp(-0.8 * (Math.pow(1.4, -0.842) - Math.pow(main / 1000, -0.842)));
        assertThat(deep.factor(1400, 1486.6)).isCloseTo(expected, within(1e-12));
        assertThat(expected).isGreaterThan(1.5);
    }

    @Test
    void theLineWidthIsReadFromTheStrongLines() {
        double[] energy = new double[900];
        for (int i = 0; i < energy.length; i++) energy[i] = i;
        for (double fwhm : new double[] {1.6, 2.2, 3}) {
            double[] counts = constant(900, 200);
            for (double centre : new double[] {150.3, 400.7, 640}) {
                double sigma = fwhm / 2.3548;
                for (int i = 0; i < 900; i++) {
                    double t = (i - centre) / sigma;
                    counts[i] += 20000 * Math.exp(-0.5 * t * t);
                }
            }
            assertThat(LineWidth.of(grid(counts))).isCloseTo(fwhm, within(0.25));
        }
        assertThat(LineWidth.of(grid(constant(900, 500)))).isEqualTo(2);
    }

    @Test
    void templatesScaleWithTheTransmission() {
        SurveyGrid grid = grid(constant(1200, 100));
        Atom oxygen = AtomTable.of(ReferenceData.shipped(), 1486.6).atom("O").orElseThrow();
        Templates flat = new Templates(grid, new Transmission.Flat(), List.of(), 2);
        Templates power = new Templates(grid, new Transmission.PowerLaw(-1), List.of(), 2);
        double kinetic = 1486.6 - oxygen.main().bindingEv();
        Emitter emitter = new Emitter(oxygen);
        assertThat(power.area(emitter, oxygen.main()) / flat.area(emitter, oxygen.main()))
                .isCloseTo(1000 / kinetic, within(1e-9));
        double sum = Arrays.stream(flat.line(emitter, oxygen.main(), 0.3).dense(1200))
                .sum();
        assertThat(sum).isCloseTo(flat.area(emitter, oxygen.main()), within(0.02 * sum));
    }
}
