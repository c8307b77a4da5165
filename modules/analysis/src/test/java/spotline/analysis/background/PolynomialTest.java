package spotline.analysis.background;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

class PolynomialTest {
    private static final Window WINDOW = new Window(281, 288);

    @ParameterizedTest
    @ValueSource(ints = {2, 3, 4, 5})
    void leavesNothingOfAPolynomialOfItsDegree(int degree) {
        BindingScan curve =
                Scans.scan(Scans.unevenGrid(280, 90), e -> 500 + 10 * (e - 284) + 3 * Math.pow((e - 284) / 2, degree));
        for (EndpointPlacement placement : EndpointPlacement.values()) {
            for (double net : Scans.subtract(new Polynomial(degree, 6, placement), curve, WINDOW)
                    .nets()) {
                assertThat(net).isCloseTo(0, within(1e-8));
            }
        }
    }

    @Test
    void sensitivitiesAgreeWithDifferencesAndDraws() {
        BindingScan scan = Scans.scan(
                Scans.unevenGrid(280, 90),
                e -> Scans.gaussian(e, 284.8, 0.6, 3000) + 300 + 20 * (e - 280) + 4 * (e - 284) * (e - 284));
        Scans.assertSensitivities(Polynomial.of(2, 8), scan, WINDOW, 1e-6);
        Scans.assertSensitivities(new Polynomial(3, 8, EndpointPlacement.OUTSIDE), scan, WINDOW, 1e-6);
        Scans.assertMonteCarlo(Polynomial.of(2, 12), scan, WINDOW, 31);
    }

    @Test
    void higherDegreeIsDearer() {
        BindingScan level = Scans.scan(Scans.grid(280, 0.1, 100), e -> 400);
        double line = Scans.u(Scans.subtract(Linear.of(10), level, WINDOW));
        double two = Scans.u(Scans.subtract(Polynomial.of(2, 10), level, WINDOW));
        double four = Scans.u(Scans.subtract(Polynomial.of(4, 10), level, WINDOW));
        assertThat(two).isGreaterThan(line);
        assertThat(four).isGreaterThan(two);
    }

    @Test
    void saysWhatItIs() {
        assertThat(Polynomial.of(2, 5).describe()).isEqualTo("polynomial of degree 2, 5 endpoint channels");
        assertThatThrownBy(() -> Polynomial.of(7, 0))
                .hasMessage("endpointChannels: 0 channels, expected 1 channel or more; degree: 7, expected 2 to 5");
        assertThatThrownBy(() -> Polynomial.of(4, 2))
                .hasMessage("endpointChannels: 2 channels at each end, expected 3 or more for degree 4");
    }
}
