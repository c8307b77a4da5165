package spotline.analysis.peakfit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import spotline.analysis.background.Constant;
import spotline.analysis.peakfit.ParameterRule.EqualTo;
import spotline.analysis.peakfit.ParameterRule.Fixed;
import spotline.analysis.peakfit.ParameterRule.Free;
import spotline.analysis.peakfit.ParameterRule.OffsetFrom;
import spotline.core.Problem;
import spotline.numerics.shape.Gaussian;
import spotline.numerics.shape.Voigt;
import spotline.reference.Line;
import spotline.spectra.Window;

class ModelChecksTest {
    private static List<String> fields(ComponentModel... components) {
        return FitModel.check(Optional.of(new Window(280, 290)), List.of(components)).stream()
                .map(Problem::field)
                .toList();
    }

    private static ComponentModel voigt(String name) {
        return ComponentModel.of(name, new Voigt());
    }

    @Test
    void aSoundModelHasNoProblem() {
        assertThat(fields(voigt("a"), voigt("b").with("position", new OffsetFrom("a", new Fixed(1)))))
                .isEmpty();
    }

    @Test
    void everyProblemIsToldAtOnce() {
        assertThat(fields(
                        voigt("a")
                                .with("position", Free.from(291, 282, 285))
                                .with("gaussianFwhm", new EqualTo("nobody"))
                                .with("lorentzianFwhm", new Fixed(-1)),
                        voigt("a").with("area", Free.within(5, 1)),
                        ComponentModel.of("g", new Gaussian()).with("gaussianFwhm", new Fixed(1)),
                        voigt("b").with("fwhm", new Fixed(1)).with(DoubletRule.of(Line.parse("C 1s")))))
                .containsExactlyInAnyOrder(
                        "/components/1/name",
                        "/components/0/position/start",
                        "/components/0/gaussianFwhm",
                        "/components/0/lorentzianFwhm/fixed",
                        "/components/1/area",
                        "/components/2/gaussianFwhm",
                        "/components/3/fwhm",
                        "/components/3/doublet");
    }

    @Test
    void aCircleOfTiesIsToldOnce() {
        assertThat(fields(
                        voigt("a").with("position", new OffsetFrom("c", new Fixed(1))),
                        voigt("b").with("position", new EqualTo("a")),
                        voigt("c").with("position", new EqualTo("b")),
                        voigt("d").with("position", new EqualTo("a")),
                        voigt("e").with("area", new EqualTo("e"))))
                .containsExactly("/components/0/position", "/components/4/area");
    }

    @Test
    void aPartnerTiedToItsOwnComponentMakesACircle() {
        ComponentModel a = voigt("a").with(DoubletRule.of(Line.parse("Ti 2p")));
        assertThat(fields(a.with("position", new EqualTo("a 2p1/2")))).containsExactly("/components/0/position");
        assertThat(fields(a, voigt("b").with("position", new OffsetFrom("a 2p1/2", new Fixed(3)))))
                .isEmpty();
        assertThat(fields(a, voigt("a 2p1/2"))).containsExactly("/components/1/name");
    }

    @Test
    void aTieToAShapeWithoutTheParameterIsTold() {
        assertThat(fields(ComponentModel.of("g", new Gaussian()), voigt("v").with("gaussianFwhm", new EqualTo("g"))))
                .containsExactly("/components/1/gaussianFwhm");
    }

    @Test
    void numbersOfADoubletAreChecked() {
        DoubletRule rule = new DoubletRule(
                Line.parse("Ti 2p"),
                Optional.of(Free.from(9, 5, 7)),
                Optional.of(new Fixed(0)),
                new Fixed(-1),
                Optional.of(new Fixed(0.2)));
        assertThat(fields(ComponentModel.of("a", new Gaussian()).with(rule)))
                .containsExactlyInAnyOrder(
                        "/components/0/doublet/splittingEv/start",
                        "/components/0/doublet/areaRatio",
                        "/components/0/doublet/widthRatio",
                        "/components/0/doublet/lorentzianFwhm");
    }

    @Test
    void aModelCannotBeMadeWithProblems() {
        assertThatThrownBy(() -> FitModel.of(
                        new Window(280, 290),
                        BackgroundModel.fittedAlong(Constant.of(3)),
                        voigt("a").with("position", new EqualTo("x")),
                        voigt("a")))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("/components/0/position")
                .hasMessageContaining("/components/1/name");
    }
}
