package spotline.analysis.charge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spotline.analysis.charge.ChargeInput.OtherScan;
import spotline.numerics.random.PoissonSampler;
import spotline.numerics.random.RandomStreams;
import spotline.spectra.BindingScan;

class WorkFunctionTest {
    private static ChargeSettings settings(Optional<ChargeSettings.WorkFunction> phi) {
        return new ChargeSettings(
                ChargeMethod.WORK_FUNCTION,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                "",
                OptionalDouble.empty(),
                phi,
                300,
                Optional.empty(),
                Optional.empty(),
                false,
                "",
                ChargeLimits.USUAL);
    }

    @ParameterizedTest
    @CsvSource({"4.0, 285.5", "4.5, 285.0", "5.0, 284.5", "5.5, 284.0"})
    void carbonIsSetTo28950LessTheWorkFunction(double phi, double carbonEv) {
        // Greczynski and Hultman, 2017: E(C 1s) + work function = 289.50 +/- 0.15 eV.
        ChargeReference charge = Made.reference(
                settings(Optional.of(new ChargeSettings.WorkFunction(phi, 0.1))),
                Made.input(Made.ISOLATED, Made.carbonScan(286.0, 41), -1));
        assertThat(charge.verdict()).isEqualTo(ChargeVerdict.ACCEPTED);
        assertThat(charge.referenceEv().orElseThrow()).isCloseTo(carbonEv, within(1e-9));
        assertThat(charge.shiftEv().orElseThrow()).isCloseTo(carbonEv - 286.0, within(0.02));
        assertThat(charge.referenceU().orElseThrow()).isCloseTo(Math.hypot(0.15, 0.1), within(1e-9));
    }

    /** Secondary electrons that end sharply at the cutoff. */
    private static BindingScan cutoff(double phi) {
        double hv = 1486.6;
        double[] x = new double[161];
        double[] means = new double[161];
        for (int i = 0; i < x.length; i++) {
            x[i] = hv - 10 + 0.05 * i;
            double above = hv - phi - x[i];
            means[i] = 20 + (above > 0 ? 30000 * Math.min(1, above / 0.5) : 0);
        }
        return Made.scan("cutoff", x, PoissonSampler.sample(RandomStreams.stream(4, "cutoff"), means));
    }

    @Test
    void theWorkFunctionIsReadFromTheCutoff() {
        BindingScan carbon = Made.carbonScan(286.0, 42);
        ChargeInput input = new ChargeInput(
                Made.ISOLATED,
                List.of(Made.line("C 1s", carbon)),
                List.of(new OtherScan("secondary cutoff", cutoff(4.62))),
                Optional.empty(),
                new TreeSet<>(),
                false,
                true,
                -1);
        ChargeReference charge = Made.reference(settings(Optional.empty()), input);
        assertThat(charge.referenceEv().orElseThrow()).isCloseTo(289.50 - 4.62, within(0.03));
        assertThat(charge.sentence()).contains("low-energy cutoff");
    }

    @Test
    void withoutEitherItFails() {
        ChargeReference charge =
                Made.reference(settings(Optional.empty()), Made.input(Made.ISOLATED, Made.carbonScan(286, 43), -1));
        assertThat(charge.verdict()).isEqualTo(ChargeVerdict.FAILED);
        assertThat(charge.sentence()).contains("work function");
    }
}
