package spotline.analysis.peakfit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.random.RandomGenerator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import spotline.analysis.background.Background;
import spotline.analysis.background.Constant;
import spotline.analysis.background.EndpointPlacement;
import spotline.analysis.background.Linear;
import spotline.analysis.background.Shirley;
import spotline.analysis.background.TougaardTwo;
import spotline.core.Estimate;
import spotline.core.Outcome;
import spotline.core.Work;
import spotline.numerics.random.RandomStreams;
import spotline.numerics.shape.Voigt;
import spotline.reference.Line;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

/** Whether stated intervals cover the truth. */
class CoverageTest {
    private static final double LORENTZIAN = 0.1;
    /** Net counts of a component below which coverage is told, not held. */
    private static final double FEW = 500;

    enum Kind {
        CONSTANT,
        LINEAR,
        SHIRLEY,
        TOUGAARD
    }

    enum Peaks {
        ONE,
        DOUBLET,
        PAIR
    }

    /** Normalised errors of one quantity. */
    private static final class Tally {
        int draws;
        int covered;
        double sum;
        double squares;

        void add(Estimate estimate, double truth) {
            double z =
                    (estimate.value() - truth) / estimate.standardUncertainty().orElseThrow();
            draws++;
            if (Math.abs(z) < 1.96) covered++;
            sum += z;
            squares += z * z;
        }

        double coverage() {
            return (double) covered / draws;
        }

        double bias() {
            return sum / draws;
        }

        @Override
        public String toString() {
            return String.format(
                    Locale.ROOT,
                    "%d: %.4f bias %+.3f scatter %.3f",
                    draws,
                    coverage(),
                    bias(),
                    Math.sqrt(squares / draws));
        }
    }

    /** One made scan, its truth and its model. */
    private record Case(
            Kind kind,
            boolean fitted,
            Peaks peaks,
            double counts,
            double position,
            double fwhm,
            double area,
            BindingScan scan,
            FitModel model) {}

    private static Case make(long number) {
        RandomGenerator random = RandomStreams.stream(7, "coverage", Long.toString(number));
        Kind kind = Kind.values()[(int) (number % 4)];
        boolean fitted = number / 4 % 2 == 0;
        Peaks peaks = Peaks.values()[(int) (number / 8 % 3)];
        double counts = 200 * Math.pow(1000, random.nextDouble());
        double step = 0.1;
        double area = counts * step;
        double high = kind == Kind.TOUGAARD ? 325 : 299;
        double[] x = Made.grid(276, high, step);
        double position = 286 + random.nextDouble();
        double gaussian = 0.9 + 0.5 * random.nextDouble();
        double[] net = Made.voigt(x, position, area, gaussian, LORENTZIAN);
        if (peaks == Peaks.DOUBLET) {
            net = Made.sum(net, Made.voigt(x, position + 1.6, 0.5 * area, gaussian, LORENTZIAN));
        } else if (peaks == Peaks.PAIR) {
            net = Made.sum(net, Made.voigt(x, position + 2.5, 0.6 * area, gaussian, LORENTZIAN));
        }
        double level = (0.02 + 0.2 * random.nextDouble()) * counts * step + 5;
        Background background;
        double[] expected;
        int m = 8;
        switch (kind) {
            case CONSTANT -> {
                background = Constant.of(m);
                expected = Made.sum(net, Made.flat(x, level));
            }
            case LINEAR -> {
                background = Linear.of(m);
                double[] slope = new double[x.length];
                for (int i = 0; i < slope.length; i++) slope[i] = level * (1 + 0.03 * (x[i] - 287));
                expected = Made.sum(net, slope);
            }
            case SHIRLEY -> {
                background = Shirley.of(m);
                expected = Made.sum(
                        net, Made.flat(x, level), Made.times(Made.passed(x, net), 0.02 + 0.05 * random.nextDouble()));
            }
            case TOUGAARD -> {
                background = new TougaardTwo(m, EndpointPlacement.INSIDE, OptionalDouble.empty(), 1643);
                expected = Made.sum(
                        Made.flat(x, level), TougaardTwo.spectrumOf(x, net, 2000 + 1000 * random.nextDouble(), 1643));
            }
            default -> throw new AssertionError(kind);
        }
        Voigt voigt = new Voigt();
        ComponentModel a = ComponentModel.of("a", voigt)
                .with("position", ParameterRule.Free.within(285, 288))
                .with("lorentzianFwhm", new ParameterRule.Fixed(LORENTZIAN))
                .with("gaussianFwhm", ParameterRule.Free.within(0.3, 3));
        List<ComponentModel> components = new ArrayList<>(List.of(a));
        if (peaks == Peaks.DOUBLET) {
            DoubletRule rule = new DoubletRule(
                    Line.parse("Cl 2p"),
                    Optional.of(new ParameterRule.Fixed(1.6)),
                    Optional.of(new ParameterRule.Fixed(0.5)),
                    new ParameterRule.Fixed(1),
                    Optional.empty());
            components.set(0, a.with(rule));
        } else if (peaks == Peaks.PAIR) {
            components.add(ComponentModel.of("b", voigt)
                    .with("position", ParameterRule.Free.within(287.5, 290.5))
                    .with("lorentzianFwhm", new ParameterRule.EqualTo("a"))
                    .with("gaussianFwhm", new ParameterRule.EqualTo("a")));
        }
        FitModel model = new FitModel(
                new Window(x[0], x[x.length - 1]), new BackgroundModel(background, fitted), components, List.of());
        double fwhm = new Voigt().fwhm(0, 1, gaussian, LORENTZIAN);
        return new Case(kind, fitted, peaks, counts, position, fwhm, area, Made.noisy(x, expected, random), model);
    }

    /** Tallies by group and quantity; groups are all scans, those of a background, and those of a kind of model. */
    private static final class Report {
        final Map<String, Tally> above = new TreeMap<>();
        final Map<String, Tally> below = new TreeMap<>();
        int refused;

        void add(Case made, PeakFitResult result) {
            FittedComponent c = result.component("a");
            Map<String, Tally> tallies = made.counts >= FEW ? above : below;
            for (String group : List.of("all", made.kind.toString(), made.peaks.toString())) {
                tally(tallies, group + " position").add(c.position(), made.position);
                tally(tallies, group + " width").add(c.fwhm(), made.fwhm);
                tally(tallies, group + " area").add(c.area(), made.area);
            }
        }

        private static Tally tally(Map<String, Tally> tallies, String name) {
            return tallies.computeIfAbsent(name, n -> new Tally());
        }

        String lines() {
            StringBuilder lines = new StringBuilder();
            above.forEach((k, v) ->
                    lines.append("\n").append(k).append(" above 500 counts, ").append(v));
            below.forEach((k, v) ->
                    lines.append("\n").append(k).append(" below 500 counts, ").append(v));
            return lines.append("\nrefused ").append(refused).toString();
        }
    }

    private static Report report(int scans) {
        Report report = new Report();
        PeakFit fit = new PeakFit(Made.REFERENCE);
        for (int k = 0; k < scans; k++) {
            Case made = make(k);
            Outcome<PeakFitResult> outcome = fit.fit(made.scan, made.model, Work.UNWATCHED);
            if (outcome.result().isEmpty()) report.refused++;
            else report.add(made, outcome.result().get());
        }
        return report;
    }

    /** Backgrounds that do not exist for noisy data are refused; that is no failure of an interval. */
    @Test
    @Tag("slow")
    void tenThousandScansAreCoveredAsStated() {
        Report report = report(10_000);
        for (Map.Entry<String, Tally> t : report.above.entrySet()) {
            String why = report.lines();
            assertThat(t.getValue().draws).as(why).isGreaterThan(1500);
            assertThat(t.getValue().coverage()).as(t.getKey() + why).isBetween(0.93, 0.97);
            assertThat(Math.abs(t.getValue().bias())).as(t.getKey() + why).isLessThan(0.1);
        }
        assertThat(report.refused).isLessThan(500);
    }

    /** Of 200 scans 95 % are 190, give or take 3 by chance: four times that is allowed. */
    @Test
    void twoHundredScansAreCoveredAsStated() {
        Report report = report(200);
        for (String quantity : List.of("position", "width", "area")) {
            Tally all = report.above.get("all " + quantity);
            assertThat(all.draws).isGreaterThan(150);
            double chance = Math.sqrt(0.95 * 0.05 / all.draws);
            assertThat(all.coverage()).as(quantity + report.lines()).isBetween(0.95 - 4 * chance, 1.0);
            assertThat(Math.abs(all.bias())).as(quantity + report.lines()).isLessThan(0.1 + 3 / Math.sqrt(all.draws));
        }
        assertThat(report.refused).isLessThan(15);
    }
}
