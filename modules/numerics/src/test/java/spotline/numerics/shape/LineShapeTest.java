package spotline.numerics.shape;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.random.RandomGenerator;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import spotline.numerics.random.RandomStreams;

/** What holds for every shape. */
class LineShapeTest {
    static List<LineShape> shapes() {
        return List.of(
                new Gaussian(),
                new Lorentzian(),
                new GaussianLorentzianSum(),
                new GaussianLorentzianProduct(),
                new Voigt(),
                new DoniachSunjic(new AreaLimits(15, 25)),
                new VoigtExponentialTail(),
                template());
    }

    /** An invented skewed line, wide enough that it ends near 0. */
    static Template template() {
        double[] x = new double[81];
        double[] y = new double[81];
        for (int i = 0; i < x.length; i++) {
            x[i] = -4 + 0.1 * i;
            double width = 1.2 / (1 + Math.exp(-0.4 * x[i]));
            y[i] = Math.exp(-Math.pow(x[i] / width, 2) / (1 + 0.05 * x[i] * x[i]));
        }
        return new Template(x, y);
    }

    private static double[] draw(LineShape shape, RandomGenerator random) {
        double[] p = new double[shape.parameterCount()];
        for (int k = 0; k < p.length; k++) {
            p[k] = switch (shape.parameterNames().get(k)) {
                case "position" -> 284 + 2 * random.nextDouble();
                case "area" -> 3000 * random.nextDouble() - 500;
                case "lorentzianFraction" -> 0.02 + 0.96 * random.nextDouble();
                case "asymmetry" -> 0.01 + 0.45 * random.nextDouble();
                default -> 0.15 + 2 * random.nextDouble();
            };
        }
        return p;
    }

    private static double[] axis(double from, double step, int n) {
        double[] x = new double[n];
        for (int i = 0; i < n; i++) x[i] = from + i * step;
        return x;
    }

    @ParameterizedTest
    @MethodSource("shapes")
    void derivativesAgreeWithDifferencesOfHighOrder(LineShape shape) {
        double[] x = axis(278, 0.11, 121);
        RandomGenerator random = RandomStreams.stream(7, "derivatives", shape.name());
        for (int trial = 0; trial < 40; trial++) {
            double[] p = draw(shape, random);
            double[] values = new double[x.length];
            double[][] derivatives = new double[p.length][x.length];
            shape.evaluate(x, p, values, derivatives);
            for (int k = 0; k < p.length; k++) {
                double scale =
                        Arrays.stream(derivatives[k]).map(Math::abs).max().orElseThrow();
                double[] differences = differences(shape, x, p, k);
                for (int i = 0; i < x.length; i++) {
                    assertThat(derivatives[k][i])
                            .as(
                                    "%s by %s at %s for %s",
                                    shape.name(), shape.parameterNames().get(k), x[i], Arrays.toString(p))
                            .isCloseTo(differences[i], within(2e-8 * scale + 1e-13));
                }
            }
        }
    }

    /** Central differences of the eighth order. */
    private static double[] differences(LineShape shape, double[] x, double[] p, int k) {
        double[] weights = {4.0 / 5, -1.0 / 5, 4.0 / 105, -1.0 / 280};
        double h =
                k == LineShape.AREA ? 1 : "1".equals(shape.parameters().get(k).unit()) ? 2e-3 : 2.5e-3;
        double[] sum = new double[x.length];
        double[] q = p.clone();
        double[] y = new double[x.length];
        for (int j = 1; j <= 4; j++) {
            for (int side = -1; side <= 1; side += 2) {
                q[k] = p[k] + side * j * h;
                shape.evaluate(x, q, y);
                for (int i = 0; i < x.length; i++) sum[i] += side * weights[j - 1] * y[i] / h;
            }
        }
        return sum;
    }

    @ParameterizedTest
    @MethodSource("shapes")
    void valuesAreTheSameHoweverTheyAreAskedFor(LineShape shape) {
        double[] x = axis(270, 0.13, 231);
        RandomGenerator random = RandomStreams.stream(8, "order", shape.name());
        for (int trial = 0; trial < 20; trial++) {
            double[] p = draw(shape, random);
            double[] alone = new double[x.length];
            shape.evaluate(x, p, alone);
            double[] together = new double[x.length];
            double[][] derivatives = new double[p.length][x.length];
            shape.evaluate(x, p, together, derivatives);
            double[] descending = new double[x.length];
            for (int i = 0; i < x.length; i++) descending[i] = x[x.length - 1 - i];
            double[] reversed = new double[x.length];
            double[][] reversedDerivatives = new double[p.length][x.length];
            shape.evaluate(descending, p, reversed, reversedDerivatives);
            double height = Arrays.stream(alone).map(Math::abs).max().orElseThrow();
            for (int i = 0; i < x.length; i++) {
                assertThat(together[i]).isCloseTo(alone[i], within(2e-13 * height));
                assertThat(reversed[x.length - 1 - i]).isCloseTo(alone[i], within(2e-13 * height));
                for (int k = 0; k < p.length; k++) {
                    double scale =
                            Arrays.stream(derivatives[k]).map(Math::abs).max().orElseThrow();
                    assertThat(reversedDerivatives[k][x.length - 1 - i])
                            .isCloseTo(derivatives[k][i], within(1e-11 * scale));
                }
            }
        }
    }

    @ParameterizedTest
    @MethodSource("shapes")
    void everythingIsFiniteForAllParametersWithinTheirLimits(LineShape shape) {
        Map<String, double[]> corners = Map.of(
                "position", new double[] {-1e5, 0, 284.8},
                "area", new double[] {-1e9, 0, 1e9},
                "lorentzianFraction", new double[] {0, 1e-9, 0.5, 1 - 1e-12, 1},
                "asymmetry", new double[] {0, 1e-9, 0.25, 0.5});
        double[] widths = {0, 1e-12, 1e-4, 0.7, 1e4};
        double[] x = {-1e5, -300, 0, 1e-3, 280, 284.7, 284.8, 284.80001, 285, 300, 1e6};
        RandomGenerator random = RandomStreams.stream(9, "corners", shape.name());
        for (int trial = 0; trial < 400; trial++) {
            double[] p = new double[shape.parameterCount()];
            for (int k = 0; k < p.length; k++) {
                double[] choice = corners.getOrDefault(shape.parameterNames().get(k), widths);
                p[k] = choice[random.nextInt(choice.length)];
                assertThat(p[k])
                        .isBetween(
                                shape.parameters().get(k).lowest(),
                                shape.parameters().get(k).highest());
            }
            double[] values = new double[x.length];
            double[][] derivatives = new double[p.length][x.length];
            shape.evaluate(x, p, values, derivatives);
            for (int i = 0; i < x.length; i++) {
                assertThat(values[i])
                        .as("%s at %s of %s", shape.name(), x[i], Arrays.toString(p))
                        .isFinite();
                for (double[] row : derivatives) {
                    assertThat(row[i])
                            .as("%s at %s of %s", shape.name(), x[i], Arrays.toString(p))
                            .isFinite();
                }
            }
        }
    }

    @ParameterizedTest
    @MethodSource("shapes")
    void theAreaParameterIsTheArea(LineShape shape) {
        RandomGenerator random = RandomStreams.stream(10, "area", shape.name());
        for (int trial = 0; trial < 5; trial++) {
            double[] p = draw(shape, random);
            p[LineShape.AREA] = 1;
            double low = shape.areaLimits().map(AreaLimits::belowEv).orElse(4000.0);
            double high = shape.areaLimits().map(AreaLimits::aboveEv).orElse(4000.0);
            if (shape instanceof DoniachSunjic) p[2] = 0; // the limits cut the line before it is broadened
            double area = trapezium(shape, p, p[0] - low, p[0] + high);
            // what a Lorentzian of 2 eV leaves beyond 4000 eV on both sides: 2 * (w / 2) / (pi 4000)
            assertThat(area).isCloseTo(1, within(6e-4));
        }
    }

    /** Trapezium rule on the whole, finer towards the position. */
    private static double trapezium(LineShape shape, double[] p, double from, double to) {
        int n = 20_001;
        double[] x = new double[n];
        double a = org.apache.commons.math3.util.FastMath.asinh((from - p[0]) / 0.05);
        double b = org.apache.commons.math3.util.FastMath.asinh((to - p[0]) / 0.05);
        for (int i = 0; i < n; i++) x[i] = p[0] + 0.05 * Math.sinh(a + (b - a) * i / (n - 1));
        double[] y = new double[n];
        shape.evaluate(x, p, y);
        double sum = 0;
        for (int i = 1; i < n; i++) sum += 0.5 * (y[i] + y[i - 1]) * (x[i] - x[i - 1]);
        return sum;
    }

    @ParameterizedTest
    @MethodSource("shapes")
    void areaHeightAndWidthConvertBothWays(LineShape shape) {
        RandomGenerator random = RandomStreams.stream(11, "convert", shape.name());
        for (int trial = 0; trial < 5; trial++) {
            double[] p = draw(shape, random);
            p[LineShape.AREA] = 700;
            PeakMeasure measure = shape.measure(p);
            assertThat(shape.value(measure.maximumAt(), p)).isEqualTo(measure.height());
            double[] higher = shape.withHeight(p, 123.5);
            assertThat(shape.height(higher)).isCloseTo(123.5, within(1e-9));
            double wanted = 1.37 * measure.fwhm();
            double[] wider = shape.withFwhm(p, wanted);
            assertThat(shape.fwhm(wider)).isCloseTo(wanted, within(1e-7 * wanted));
            assertThat(wider[LineShape.AREA]).isEqualTo(700);
            // half the height on both sides of what the width says
            double[] ends = ends(shape, p, measure);
            assertThat(ends[1] - ends[0]).isCloseTo(measure.fwhm(), within(1e-7));
        }
        assertThatThrownBy(() -> shape.withFwhm(draw(shape, random), 0)).isInstanceOf(IllegalArgumentException.class);
    }

    private static double[] ends(LineShape shape, double[] p, PeakMeasure measure) {
        double[] ends = new double[2];
        for (int side = 0; side < 2; side++) {
            double inside = measure.maximumAt();
            double outside = measure.maximumAt() + (side == 0 ? -2 : 2) * measure.fwhm();
            for (int i = 0; i < 100; i++) {
                double middle = 0.5 * (inside + outside);
                if (shape.value(middle, p) > 0.5 * measure.height()) inside = middle;
                else outside = middle;
            }
            ends[side] = inside;
        }
        return ends;
    }

    @ParameterizedTest
    @MethodSource("shapes")
    void positionComesFirstAndTheAreaSecond(LineShape shape) {
        assertThat(shape.parameterNames()).startsWith("position", "area").doesNotHaveDuplicates();
        assertThat(shape.parameters().get(0).unit()).isEqualTo("eV");
        assertThat(shape.parameters().get(1).unit()).isEqualTo("counts eV");
        assertThat(shape.name()).matches("[a-z]+(-[a-z]+)*");
        assertThat(LineShape.named(shape.name()).map(LineShape::name).orElse("template"))
                .isEqualTo(shape.name());
    }
}
