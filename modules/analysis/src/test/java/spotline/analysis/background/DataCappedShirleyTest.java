package spotline.analysis.background;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import spotline.core.Outcome;
import spotline.core.Severity;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

class DataCappedShirleyTest {
    private static final Window WINDOW = new Window(-6, 6);

    /** Rises behind the peak, so that a plain Shirley background cuts through the data there. */
    private static BindingScan risingBehind() {
        BindingScan expected = Scans.scan(
                Scans.unevenGrid(-8, 160),
                e -> Scans.gaussian(e, 0, 0.5, 2000)
                        + 400
                        + 20 * Scans.smoothStep(e, 0, 0.5)
                        + 25 * Math.max(0, e - 2));
        return Scans.poisson(expected, Scans.random(35));
    }

    private static final DataCappedShirley TIGHT = new DataCappedShirley(5, EndpointPlacement.INSIDE, 1e-13, 500);

    @Test
    void neverAboveTheRunningMean() {
        Subtraction plain = Scans.subtract(Shirley.of(5), risingBehind(), WINDOW);
        Subtraction capped = Scans.subtract(TIGHT, risingBehind(), WINDOW);
        int n = capped.to() - capped.from();
        int held = 0;
        boolean plainAbove = false;
        for (int i = 0; i < n; i++) {
            int start = Math.max(0, i - 2);
            int end = Math.min(n, i + 3);
            double mean = 0;
            for (int j = start; j < end; j++) mean += risingBehind().counts(capped.from() + j) / (end - start);
            assertThat(capped.backgrounds()[i]).isLessThanOrEqualTo(mean + 1e-9);
            if (capped.backgrounds()[i] > mean - 1e-9) held++;
            plainAbove |= plain.backgrounds()[i] > mean + 1;
        }
        assertThat(plainAbove).isTrue();
        assertThat(capped.limitedChannels()).isEqualTo(held).isGreaterThan(20);
        assertThat(plain.limitedChannels()).isZero();
        assertThat(capped.netArea().value()).isGreaterThan(plain.netArea().value());
    }

    @Test
    void saysHowManyChannelsWereLimited() {
        Outcome<Subtraction> outcome = Scans.outcome(DataCappedShirley.of(5), risingBehind(), WINDOW);
        assertThat(outcome.allFindings()).singleElement().satisfies(finding -> {
            assertThat(finding.severity()).isEqualTo(Severity.CAUTION);
            assertThat(finding.message()).startsWith("The data-capped Shirley background was held down in ");
            assertThat(finding.message()).endsWith("not comparable with one above a plain Shirley background.");
        });
    }

    @Test
    void withoutNeedItIsThePlainOne() {
        BindingScan clear =
                Scans.scan(Scans.grid(-6, 0.1, 121), e -> Scans.gaussian(e, 0, 0.8, 2000) + 400 + 3 * (e + 6));
        Window inner = new Window(-1.5, 1.5);
        Outcome<Subtraction> capped = Scans.outcome(DataCappedShirley.of(1), clear, inner);
        Subtraction plain = Scans.subtract(Shirley.of(1), clear, inner);
        assertThat(capped.result().orElseThrow().netArea().value())
                .isCloseTo(plain.netArea().value(), within(1e-9));
        assertThat(Scans.u(capped.result().orElseThrow())).isCloseTo(Scans.u(plain), within(1e-6));
    }

    @Test
    void sensitivitiesAgreeWithDifferences() {
        Scans.assertSensitivities(TIGHT, risingBehind(), WINDOW, 1e-5);
    }

    @Test
    void saysWhatItIs() {
        assertThat(DataCappedShirley.of(5).describe()).isEqualTo("data-capped Shirley, 5 endpoint channels");
    }
}
