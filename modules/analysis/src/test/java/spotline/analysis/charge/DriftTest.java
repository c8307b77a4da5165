package spotline.analysis.charge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import spotline.analysis.charge.ChargeEvidence.Position;
import spotline.analysis.charge.ChargeInput.MeasuredLine;
import spotline.core.Estimate;
import spotline.reference.Line;

class DriftTest {
    private static final OffsetDateTime START = OffsetDateTime.parse("2026-05-12T09:00:00+02:00");

    private static Drift.Scan at(int minutes, double positionEv, double u) {
        return new Drift.Scan(
                "scan at " + minutes,
                Optional.of(START.plusMinutes(minutes)),
                Estimate.of(positionEv, "scan at " + minutes, u));
    }

    @Test
    void aTenthOfAnElectronvoltInTwentyMinutesIsThreeTenthsAnHour() {
        // Derived, closed form.
        Drift drift = Drift.of("C 1s", List.of(at(0, 287.30, 0.01), at(20, 287.40, 0.01)));
        assertThat(drift.slopeEvPerHour().orElseThrow().value()).isCloseTo(0.30, within(1e-9));
        assertThat(drift.slopeEvPerHour().orElseThrow().standardUncertainty().orElseThrow())
                .isCloseTo(0.01 * Math.sqrt(2) * 3, within(1e-9));
        assertThat(drift.changeEv().value()).isCloseTo(0.10, within(1e-9));
        Estimate middle = drift.positionAt(START.plusMinutes(10));
        assertThat(middle.value()).isCloseTo(287.35, within(1e-9));
        assertThat(middle.standardUncertainty().orElseThrow()).isCloseTo(0.01 / Math.sqrt(2), within(1e-9));
    }

    @Test
    void theRegressionWeighsByUncertainty() {
        // Derived, weighted normal equations: weights 1, 1, 1/100 over 0, 1, 2 h about the weighted mean.
        Drift drift = Drift.of("C 1s", List.of(at(0, 287.0, 0.01), at(60, 287.1, 0.01), at(120, 288.0, 0.1)));
        double mean = (0 + 1 + 0.01 * 2) / 2.01;
        double spread = mean * mean + (1 - mean) * (1 - mean) + 0.01 * (2 - mean) * (2 - mean);
        double slope = (-mean * 287.0 + (1 - mean) * 287.1 + 0.01 * (2 - mean) * 288.0) / spread;
        assertThat(drift.slopeEvPerHour().orElseThrow().value()).isCloseTo(slope, within(1e-6));
    }

    @Test
    void withoutTimesOnlyTheDifferenceIsKnown() {
        Drift drift = Drift.of(
                "C 1s",
                List.of(
                        new Drift.Scan("first", Optional.empty(), Estimate.of(287, "a", 0.01)),
                        new Drift.Scan("last", Optional.empty(), Estimate.of(287.2, "b", 0.01))));
        assertThat(drift.slopeEvPerHour()).isEmpty();
        assertThat(drift.changeEv().value()).isCloseTo(0.2, within(1e-9));
        assertThat(drift.positionAt(START).value()).isEqualTo(287);
    }

    /** Carbon at 0, 30 and 60 min, oxygen at 15 min, on a surface that drifts by 0.3 eV/h. */
    private static ChargeInput drifting(long seed) {
        List<MeasuredLine> lines = new ArrayList<>();
        for (int minutes : new int[] {0, 15, 30, 60}) {
            double middle = minutes + 0.5 * 251 / 60; // a scan of 251 channels takes 251 s
            double charging = 2.5 + 0.3 * middle / 60;
            boolean oxygen = minutes == 15;
            var scan = oxygen
                    ? Made.noisy(
                            "O 1s at 15", 522, 547, List.of(new Made.Peak(532.0 + charging, 20000, 1.4)), 400, seed)
                    : Made.noisy("C 1s at " + minutes, 277, 302, Made.carbon(284.8 + charging, 6000, 1.2), 300, seed);
            lines.add(new MeasuredLine(
                    Line.parse(oxygen ? "O 1s" : "C 1s"), scan, Optional.of(START.plusMinutes(minutes))));
        }
        return Made.input(Made.ISOLATED, -2.5, lines.toArray(MeasuredLine[]::new));
    }

    @Test
    void threeTenthsAnHourAreRecoveredToTwoHundredths() {
        for (long seed = 60; seed < 70; seed++) {
            ChargeReference charge = Made.reference(Made.byRecord(), drifting(seed));
            Drift drift = charge.evidence().drift().orElseThrow();
            assertThat(drift.slopeEvPerHour().orElseThrow().value()).isCloseTo(0.3, within(0.02));
            assertThat(drift.positionAt(START.plusMinutes(15)).value()).isCloseTo(287.3 + 0.075, within(0.02));
            assertThat(charge.verdict()).isEqualTo(ChargeVerdict.DOUBTFUL);
            assertThat(charge.sentence()).contains("eV/h");
        }
    }

    @Test
    void eachScanIsShiftedByItsOwnTimeOnlyWhenTheAnalystAgrees() {
        ChargeInput input = drifting(71);
        ChargeSettings agreed = new ChargeSettings(
                ChargeMethod.BY_RECORD,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                "",
                OptionalDouble.empty(),
                Optional.empty(),
                300,
                Optional.empty(),
                Optional.empty(),
                true,
                "",
                ChargeLimits.USUAL);
        double carbonMiddle = 0.3 * 0.5 * 251 / 3600;
        double oxygenMiddle = carbonMiddle + 0.3 * 0.25;
        Position plain = oxygen(Made.reference(Made.byRecord(), input));
        assertThat(plain.referenced().orElseThrow().value())
                .as("shifted by the first carbon scan")
                .isCloseTo(532.0 + oxygenMiddle - carbonMiddle, within(0.02));
        Position interpolated = oxygen(Made.reference(agreed, input));
        assertThat(interpolated.referenced().orElseThrow().value()).isCloseTo(532.0, within(0.02));
    }

    private static Position oxygen(ChargeReference charge) {
        return charge.evidence().positions().stream()
                .filter(p -> p.line().equals("O 1s"))
                .findFirst()
                .orElseThrow();
    }
}
