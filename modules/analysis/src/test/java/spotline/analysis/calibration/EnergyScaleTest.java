package spotline.analysis.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import spotline.analysis.calibration.EnergyScale.Verdict;
import spotline.analysis.calibration.MeasuredReference.Use;
import spotline.core.Estimate;
import spotline.core.Work;

class EnergyScaleTest {
    private static MeasuredReference line(String name, Use use, double measured, double reference, double u) {
        return new MeasuredReference(
                name,
                name + " scan",
                Estimate.of(measured, "measured " + name, u),
                OptionalDouble.empty(),
                Estimate.exact(reference),
                use,
                OptionalDouble.of(0.9),
                Optional.empty());
    }

    private static EnergyScale scale(double gold, double silver, double copper, double tolerance) {
        // Reference energies for monochromated Al K-alpha: ISO 15472:2010.
        return EnergyScale.of(
                List.of(
                        line("Au 4f7/2", Use.LOW, gold, 83.96, 0.005),
                        line("Ag 3d5/2", Use.CHECK, silver, 368.21, 0.005),
                        line("Cu 2p3/2", Use.HIGH, copper, 932.62, 0.005)),
                tolerance);
    }

    @Test
    void slopeOffsetAndLinearityOfAWorkedExample() {
        // Derived, arithmetic in the layout of ISO 15472: measured 84.01, 368.22, 932.55 eV.
        EnergyScale scale = scale(84.01, 368.22, 932.55, 0.2);
        assertThat(scale.a()).isCloseTo(1.41399e-4, within(1e-9));
        assertThat(scale.b()).isCloseTo(-0.061872, within(1e-6));
        assertThat(scale.linearity().get(0).departureEv().value()).isCloseTo(0.0002, within(5e-5));
        assertThat(scale.corrected(284.80)).isCloseTo(284.7784, within(5e-4));
        assertThat(scale.corrected(532.00)).isCloseTo(532.0134, within(5e-4));
        assertThat(scale.corrected(932.55)).isCloseTo(932.6200, within(5e-4));
        assertThat(scale.lines().stream().map(l -> l.deviationEv().value()))
                .satisfiesExactly(
                        d -> assertThat(d).isCloseTo(0.050, within(1e-9)),
                        d -> assertThat(d).isCloseTo(0.010, within(1e-9)),
                        d -> assertThat(d).isCloseTo(-0.070, within(1e-9)));
    }

    @Test
    void deviationBetweenTheEndsIsInterpolatedWithItsUncertainty() {
        EnergyScale scale = scale(84.01, 368.22, 932.55, 0.2);
        Estimate middle = scale.deviationAt(0.5 * (83.96 + 932.62)).orElseThrow();
        // Derived, closed form: mean of +0.050 and -0.070 with u = 0.005 / sqrt(2).
        assertThat(middle.value()).isCloseTo(-0.010, within(1e-9));
        assertThat(middle.standardUncertainty().orElseThrow()).isCloseTo(0.005 / Math.sqrt(2), within(1e-9));
    }

    @Test
    void verdictsFollowTheTolerance() {
        assertThat(scale(83.97, 368.22, 932.63, 0.2).verdict()).isEqualTo(Verdict.WITHIN);
        assertThat(scale(84.11, 368.36, 932.77, 0.2).verdict()).isEqualTo(Verdict.NEARLY_USED);
        assertThat(scale(84.01, 368.22, 932.30, 0.2).verdict()).isEqualTo(Verdict.OUTSIDE);
        assertThat(scale(83.97, 368.35, 932.63, 0.2).verdict()).as("bent").isEqualTo(Verdict.OUTSIDE);
        EnergyScale one = EnergyScale.of(List.of(line("Au 4f7/2", Use.LOW, 84.01, 83.96, 0.005)), 0.2);
        assertThat(one.verdict()).isEqualTo(Verdict.UNDETERMINED);
        assertThat(one.offsetOnly()).isTrue();
        assertThat(one.corrected(284.8)).isCloseTo(284.75, within(1e-9));
        assertThat(EnergyScale.of(List.of(), 0.2).verdict()).isEqualTo(Verdict.UNDETERMINED);
    }

    @Test
    void tolerancesBelowTheStandardsReachAreRefused() {
        // ISO 15472:2010 scope: no tolerance of 0.03 eV or less.
        assertThatThrownBy(() -> scale(84, 368.2, 932.6, 0.03)).hasMessageContaining("tolerance");
        assertThat(scale(84, 368.2, 932.6, 0.05).toleranceEv()).isEqualTo(0.05);
    }

    @Test
    void linesAreFoundInScansAndTheScaleRecovered() {
        List<MeasuredReference> lines = new ReferenceLines(MadeMetal.REFERENCE, MadeMetal.SOURCE)
                .measure(MadeMetal.scans(84.01, 368.22, 932.55, 7), Work.UNWATCHED);
        assertThat(lines).extracting(MeasuredReference::line).containsExactly("Au 4f7/2", "Ag 3d5/2", "Cu 2p3/2");
        EnergyScale scale = EnergyScale.of(lines, 0.2);
        assertThat(scale.corrected(84.01)).isCloseTo(83.96, within(0.01));
        assertThat(scale.corrected(368.22)).isCloseTo(368.21, within(0.02));
        assertThat(scale.corrected(932.55)).isCloseTo(932.62, within(0.01));
        // The reference energies themselves are known to 0.02 eV.
        assertThat(scale.deviationAt(84).orElseThrow().standardUncertainty().orElseThrow())
                .isBetween(0.02, 0.025);
        assertThat(lines.get(1).fwhmEv().orElseThrow()).isBetween(0.8, 1.0);
        assertThat(lines.get(1).intensity()).isPresent();
    }

    @Test
    void repeatsGiveTheirScatter() {
        List<MeasuredReference> lines = new ReferenceLines(MadeMetal.REFERENCE, MadeMetal.SOURCE)
                .measure(
                        List.of(
                                MadeMetal.scan("Ag 3d, 1", 368.17, 6, 0.67, 0.75, 360, 380, 1),
                                MadeMetal.scan("Ag 3d, 2", 368.21, 6, 0.67, 0.75, 360, 380, 2),
                                MadeMetal.scan("Ag 3d, 3", 368.25, 6, 0.67, 0.75, 360, 380, 3)),
                        Work.UNWATCHED);
        MeasuredReference silver = lines.get(0);
        assertThat(silver.repeatabilityEv().orElseThrow()).isCloseTo(0.04, within(0.01));
        assertThat(silver.measuredEv().value()).isCloseTo(368.21, within(0.01));
        // Standard deviation over the root of three.
        assertThat(silver.measuredEv().standardUncertainty().orElseThrow()).isCloseTo(0.023, within(0.006));
    }

    @Test
    void otherScansHoldNoReferenceLine() {
        assertThat(new ReferenceLines(MadeMetal.REFERENCE, MadeMetal.SOURCE)
                        .measure(List.of(MadeMetal.scan("C 1s", 284.8, 1.5, 0.2, 1.1, 278, 296, 5)), Work.UNWATCHED))
                .isEmpty();
    }
}
