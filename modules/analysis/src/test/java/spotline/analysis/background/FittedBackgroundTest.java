package spotline.analysis.background;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import spotline.spectra.BindingScan;

class FittedBackgroundTest {
    private static final double[] ENERGY = Scans.unevenGrid(278, 200);

    static Stream<Background> fitted() {
        return Stream.of(
                Constant.of(5),
                Linear.of(5),
                Polynomial.of(3, 5),
                Shirley.of(5),
                TougaardTwo.universal(5),
                new TougaardTwo(5, EndpointPlacement.INSIDE, OptionalDouble.of(2500), 1643),
                new TougaardThree(5, EndpointPlacement.INSIDE, OptionalDouble.empty(), 325, 96, 3));
    }

    private static double[] peaks(double centre, double area) {
        return Arrays.stream(ENERGY)
                .map(e -> Scans.gaussian(e, centre, 0.7, area))
                .toArray();
    }

    /** Data that the background describes with its peak, and parameters that are not its own first guess. */
    private static double[] parameters(Background settings, FittedBackground background) {
        double[] parameters = new double[background.parameters().size()];
        for (int p = 0; p < parameters.length; p++) {
            parameters[p] = switch (background.parameters().get(p)) {
                case "rise per area, 1/eV" -> 0.03;
                case "b, eV^2" -> settings instanceof TougaardTwo ? 2500 : 300;
                default -> 100 + 40 * p;
            };
        }
        return parameters;
    }

    @ParameterizedTest
    @MethodSource("fitted")
    void derivativesAgreeWithDifferences(Background settings) {
        FittedBackground background = settings.fitted(ENERGY).orElseThrow();
        double[] parameters = parameters(settings, background);
        double[] peaks = peaks(284.8, 3000);
        double[] curve = background.curve(parameters, peaks);
        for (int p = 0; p < parameters.length; p++) {
            double[] up = parameters.clone();
            double[] down = parameters.clone();
            double h = 1e-4 * parameters[p];
            up[p] += h;
            down[p] -= h;
            double[] slope = background.slope(p, parameters, peaks);
            double[] above = background.curve(up, peaks);
            double[] below = background.curve(down, peaks);
            for (int i = 0; i < slope.length; i++) {
                assertThat(slope[i] * h).isCloseTo((above[i] - below[i]) / 2, within(1e-8));
            }
        }
        double[] more = peaks(287, 500);
        double[] both = peaks.clone();
        for (int i = 0; i < both.length; i++) both[i] += more[i];
        double[] moved = background.curve(parameters, both);
        double[] response = background.response(parameters, more);
        for (int i = 0; i < moved.length; i++) assertThat(moved[i] - curve[i]).isCloseTo(response[i], within(1e-9));
    }

    @ParameterizedTest
    @MethodSource("fitted")
    void underTheTruePeaksItIsTheSubtractedBackground(Background settings) {
        FittedBackground background = settings.fitted(ENERGY).orElseThrow();
        double[] parameters = parameters(settings, background);
        double[] peaks = peaks(284.8, 3000);
        double[] curve = background.curve(parameters, peaks);
        double[] data = new double[curve.length];
        for (int i = 0; i < data.length; i++) data[i] = curve[i] + peaks[i];
        BindingScan scan = Scans.scan(ENERGY, data);
        double[] subtracted = Scans.subtract(settings, scan, scan.range()).backgrounds();
        double[] start = background.start(data);
        // A linear or polynomial curve, and losses in closed form, come back exactly; Shirley to its tolerance.
        for (int i = 0; i < curve.length; i++) {
            assertThat(subtracted[i]).isCloseTo(curve[i], within(1e-3));
        }
        for (int p = 0; p < start.length; p++) {
            assertThat(start[p])
                    .as(background.parameters().get(p))
                    .isCloseTo(parameters[p], within(1e-4 * parameters[p]));
        }
    }

    @Test
    void aBackgroundCappedByTheDataCannotBeFitted() {
        assertThat(DataCappedShirley.of(5).fitted(ENERGY)).isEmpty();
    }
}
