package spotline.analysis.peakfit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import spotline.analysis.background.Background;
import spotline.analysis.background.Constant;
import spotline.analysis.background.Linear;
import spotline.analysis.background.Polynomial;
import spotline.analysis.background.Shirley;
import spotline.analysis.background.TougaardTwo;
import spotline.analysis.peakfit.ParameterRule.EqualTo;
import spotline.analysis.peakfit.ParameterRule.Free;
import spotline.analysis.peakfit.ParameterRule.OffsetFrom;
import spotline.analysis.peakfit.ParameterRule.RatioTo;
import spotline.numerics.fit.ModelFunction;
import spotline.numerics.shape.DoniachSunjic;
import spotline.numerics.shape.Voigt;
import spotline.reference.Line;
import spotline.spectra.Window;

class SpectrumModelTest {
    static List<Background> backgrounds() {
        return List.of(Constant.of(3), Linear.of(3), Polynomial.of(3, 4), Shirley.of(3), TougaardTwo.universal(3));
    }

    /** Ties by free ratios and offsets, a partner, satellites and the background's answer, against central differences. */
    @ParameterizedTest
    @MethodSource("backgrounds")
    void derivativesAreRight(Background background) {
        double[] x = Made.grid(450, 472, 0.25);
        DoubletRule partner = new DoubletRule(
                Line.parse("Ti 2p"),
                Optional.of(Free.within(4, 8)),
                Optional.of(Free.within(0.2, 0.8)),
                Free.within(0.5, 2),
                Optional.of(Free.within(0.1, 3)));
        ComponentModel a = ComponentModel.of("a", new Voigt()).with(partner);
        ComponentModel b = ComponentModel.of("b", new Voigt())
                .with("position", new OffsetFrom("a", Free.within(1, 4)))
                .with("area", new RatioTo("a", Free.within(0.1, 2)))
                .with("gaussianFwhm", new RatioTo("a 2p1/2", Free.within(0.5, 2)))
                .with("lorentzianFwhm", new EqualTo("a 2p1/2"));
        ComponentModel c = ComponentModel.of("c", new DoniachSunjic()).with("area", new RatioTo("b", Free.UNBOUNDED));
        FitModel model = FitModel.of(new Window(450, 472), BackgroundModel.fittedAlong(background), a, b, c);
        ParameterGraph graph = new ParameterGraph(Member.of(model, Made.REFERENCE, Made.PHOTON_EV));
        List<Satellite> satellites = List.of(new Satellite(9.8, 0.07), new Satellite(11.8, 0.03));
        SpectrumModel function = new SpectrumModel(x, graph, satellites, new double[x.length], background.fitted(x));
        double[] p = new double[function.parameterCount()];
        for (int k = 0; k < graph.slots().size(); k++) {
            ParameterGraph.Slot slot = graph.slots().get(k);
            boolean bounded = Double.isFinite(slot.max());
            p[k] = bounded ? slot.min() + 0.4 * (slot.max() - slot.min()) : graph.isArea(k) ? 500 : 0.7;
        }
        for (int k = graph.slots().size(); k < p.length; k++)
            p[k] = 3 + 2 * (k - graph.slots().size());
        if (background instanceof Shirley) p[p.length - 1] = 0.03;
        if (background instanceof TougaardTwo) p[p.length - 1] = 2500;
        ModelFunction.Evaluator evaluator = function.evaluator();
        double[] values = new double[x.length];
        double[][] rows = new double[p.length][x.length];
        assertThat(evaluator.derivatives(p, values, rows)).isTrue();
        double[] plain = new double[x.length];
        evaluator.values(p, plain);
        assertThat(plain).containsExactly(values, within(1e-9));
        for (int k = 0; k < p.length; k++) {
            double h = 1e-5 * Math.max(0.1, Math.abs(p[k]));
            double[] up = new double[x.length];
            double[] down = new double[x.length];
            p[k] += h;
            evaluator.values(p, up);
            p[k] -= 2 * h;
            evaluator.values(p, down);
            p[k] += h;
            for (int i = 0; i < x.length; i += 3) {
                double slope = (up[i] - down[i]) / (2 * h);
                assertThat(rows[k][i])
                        .as("parameter %d at %f", k, x[i])
                        .isCloseTo(slope, within(1e-5 * (Math.abs(slope) + Math.abs(values[i]))));
            }
        }
    }
}
