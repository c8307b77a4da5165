package spotline.analysis.quantify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spotline.core.Estimate;
import spotline.reference.Line;
import spotline.reference.ReferenceData;

class TheoreticalFactorsTest {
    private static final OptionalDouble MAGIC = OptionalDouble.of(54.7356103);
    private final ReferenceData reference = ReferenceData.shipped();

    private static FactorSettings settings(Anisotropy.Kind anisotropy) {
        return new FactorSettings(
                FactorKind.THEORETICAL,
                new MeanFreePathModel.Power(0.75),
                new Anisotropy(anisotropy, 14, 0.08),
                0.05,
                0.05,
                0.05,
                54.7356103);
    }

    private Estimate factor(String line, double kinetic, OptionalDouble gamma) {
        return new TheoreticalFactors(reference, settings(Anisotropy.Kind.DIPOLE))
                .factor(Line.parse(line), 1486.6, kinetic, gamma)
                .orElseThrow();
    }

    /** Cross sections relative to C 1s, Al K alpha. Source: J.H. Scofield, J. Electron Spectrosc. 8 (1976) 129, from memory. */
    @ParameterizedTest
    @CsvSource({
        "C 1s, 1.00",
        "N 1s, 1.80",
        "O 1s, 2.93",
        "F 1s, 4.43",
        "Na 1s, 8.52",
        "Si 2p, 0.817",
        "Si 2s, 0.955",
        "S 2p, 1.68",
        "Cl 2p, 2.285",
        "Cu 2p3/2, 16.73",
        "Cu 2p1/2, 8.66",
        "Ag 3d5/2, 10.66",
        "Ag 3d3/2, 7.38",
        "Au 4f, 17.12"
    })
    void atTheMagicAngleAndOneKiloelectronvoltTheFactorIsTheCrossSection(String line, double published) {
        assertThat(factor(line, 1000, MAGIC).value() / published).isCloseTo(1, within(0.01));
    }

    @Test
    void theMeanFreePathEntersAsAPower() {
        Estimate slow = factor("F 1s", 500, MAGIC);
        Estimate fast = factor("F 1s", 1000, MAGIC);
        assertThat(slow.value() / fast.value()).isCloseTo(Math.pow(0.5, 0.75), within(1e-12));
    }

    @Test
    void anSLineReadsHalfAgainAsHighAtARightAngle() {
        double ratio = factor("C 1s", 1200, OptionalDouble.of(90)).value()
                / factor("C 1s", 1200, MAGIC).value();
        // beta 2 of an s line: 1 + (2/2)(1.5 - 1) = 1.5, dipole approximation
        assertThat(ratio).isCloseTo(1.5, within(0.01));
    }

    @Test
    void linesOfOneEnergyShareTheirExponents() {
        Estimate ratio = factor("C 1s", 1200, MAGIC).dividedBy(factor("N 1s", 1200, MAGIC));
        double relative = ratio.standardUncertainty().orElseThrow() / ratio.value();
        assertThat(relative).isCloseTo(0.05 * Math.sqrt(2), within(1e-9));
    }

    @Test
    void distantLinesDoNot() {
        Estimate ratio = factor("C 1s", 1200, MAGIC).dividedBy(factor("F 1s", 800, MAGIC));
        double relative = ratio.standardUncertainty().orElseThrow() / ratio.value();
        double exponents = 0.05 * Math.sqrt(2) * Math.log(1200 / 800.0);
        assertThat(relative).isCloseTo(Math.hypot(0.05 * Math.sqrt(2), exponents), within(1e-9));
    }

    @Test
    void noCrossSectionNoFactor() {
        TheoreticalFactors factors = new TheoreticalFactors(reference, settings(Anisotropy.Kind.DIPOLE));
        assertThat(factors.factor(Line.parse("Cu 1s"), 1486.6, 500, MAGIC)).isEmpty();
        assertThat(factors.factor(Line.parse("C 1s"), 1486.6, -3, MAGIC)).isEmpty();
    }
}
