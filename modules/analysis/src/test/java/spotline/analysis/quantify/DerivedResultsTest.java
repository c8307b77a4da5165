package spotline.analysis.quantify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import spotline.core.Estimate;
import spotline.spectra.Window;

class DerivedResultsTest {
    private static Contribution of(String element, double q, double countingU, double factorU) {
        Estimate estimate = Estimate.of(q, "counting/" + element, q * countingU)
                .with("factor/cross section " + element, q * factorU);
        return new Contribution(element, element + " 1s", "made", Basis.NARROW, new Window(0, 1), estimate, 0, true);
    }

    private static final List<Contribution> FOUR = List.of(
            of("C", 30, 0.01, 0.05), of("O", 45, 0.01, 0.05), of("Si", 20, 0.02, 0.05), of("Na", 5, 0.04, 0.05));

    private static Estimate derived(String text) {
        return DerivedQuantity.parse(text).of(Composition.of(FOUR)).orElseThrow();
    }

    private static double relative(Estimate e) {
        return e.standardUncertainty().orElseThrow() / e.value();
    }

    /** The total cancels in a ratio, whatever else is in the composition. GUM 5.2.2, derived. */
    @Test
    void aRatioHasTheUncertaintyOfItsTwoLinesAlone() {
        Estimate ratio = derived("O/Si");
        assertThat(ratio.value()).isCloseTo(45 / 20.0, within(1e-12));
        assertThat(relative(ratio)).isCloseTo(Math.sqrt(1e-4 + 4e-4 + 2 * 25e-4), within(1e-12));
    }

    @Test
    void sumsAndGroupedRatios() {
        assertThat(derived("Si + Na").value()).isCloseTo(25, within(1e-12));
        assertThat(derived("(O+C)/Si").value()).isCloseTo(3.75, within(1e-12));
        Estimate all = derived("C+O+Si+Na");
        assertThat(all.value()).isCloseTo(100, within(1e-12));
        assertThat(all.standardUncertainty().orElseThrow()).isCloseTo(0, within(1e-9));
    }

    @Test
    void anElementWithoutANumberLeavesNoRatio() {
        assertThat(DerivedQuantity.parse("N/C").of(Composition.of(FOUR))).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "O/Si/C", "O/", "Xx+O", "O+", "CO/Si"})
    void refusesWhatIsNoQuantity(String text) {
        assertThatThrownBy(() -> DerivedQuantity.parse(text)).isInstanceOf(IllegalArgumentException.class);
    }

    /** Leaving carbon out must give what measuring the rest alone would. */
    @Test
    void withoutCarbonTheRestSumsToOneHundred() {
        List<Quantified> rest = Composition.without(Set.of("C"), FOUR);
        assertThat(rest).extracting(Quantified::element).containsExactly("O", "Si", "Na");
        assertThat(rest.get(0).atomicPercent().orElseThrow().value()).isCloseTo(100 * 45 / 70.0, within(1e-9));
        assertThat(rest.get(0).atomicPercent().orElseThrow().contribution("factor/cross section C"))
                .isZero();
    }

    @Test
    void statesShareOutTheirElement() {
        Estimate percent = Composition.of(FOUR).get(0).atomicPercent().orElseThrow();
        // Two components that the fit can hardly tell apart: their sum is sure, each is not
        Estimate a = Estimate.of(60, "fit/split", 12).with("fit/scale", 0.6);
        Estimate b = Estimate.of(40, "fit/split", -12).with("fit/scale", 0.4);
        List<StateShare> states = StateShare.of(
                "C",
                "C 1s",
                Optional.of(percent),
                List.of(new StateShare.Component("CH", a), new StateShare.Component("CO", b)));
        assertThat(states.get(0).fractionOfElement().value()).isCloseTo(0.6, within(1e-12));
        assertThat(states.get(0).fractionOfElement().standardUncertainty().orElseThrow())
                .isCloseTo(0.12, within(1e-12));
        Estimate sum = states.get(0)
                .atomicPercent()
                .orElseThrow()
                .plus(states.get(1).atomicPercent().orElseThrow());
        assertThat(sum.value()).isCloseTo(percent.value(), within(1e-9));
        assertThat(sum.standardUncertainty().orElseThrow())
                .isCloseTo(percent.standardUncertainty().orElseThrow(), within(1e-9));
    }

    @Test
    void statesOfAnElementWithoutANumberHaveSharesAlone() {
        List<StateShare> states = StateShare.of(
                "C", "C 1s", Optional.empty(), List.of(new StateShare.Component("CH", Estimate.exact(5))));
        assertThat(states.get(0).atomicPercent()).isEmpty();
        assertThat(states.get(0).fractionOfElement().value()).isEqualTo(1);
        assertThat(StateShare.of("C", "C 1s", Optional.empty(), List.of())).isEmpty();
        assertThat(StateShare.of(
                        "C", "C 1s", Optional.empty(), List.of(new StateShare.Component("CH", Estimate.exact(-5)))))
                .isEmpty();
    }

    @Test
    void aBudgetAddsUpToTheWhole() {
        Estimate x = Composition.of(FOUR).get(1).atomicPercent().orElseThrow().with("background/choice", 0.2);
        UncertaintyBudget budget = UncertaintyBudget.of(x);
        assertThat(budget.known()).isTrue();
        assertThat(budget.parts().keySet())
                .containsExactly(
                        UncertaintySource.COUNTING,
                        UncertaintySource.BACKGROUND_CHOICE,
                        UncertaintySource.CROSS_SECTION);
        double squares =
                budget.parts().values().stream().mapToDouble(u -> u * u).sum();
        assertThat(Math.sqrt(squares)).isCloseTo(x.standardUncertainty().orElseThrow(), within(1e-12));
        assertThat(budget.part(UncertaintySource.BLANK)).isZero();
        assertThat(UncertaintySource.BACKGROUND_CHOICE.field()).isEqualTo("backgroundChoice");
        assertThat(Composition.of(FOUR).get(1).budget().orElseThrow().part(UncertaintySource.COUNTING))
                .isEqualTo(Composition.of(FOUR).get(1).statisticalU().orElseThrow());
        assertThat(UncertaintySource.of("something else")).isEqualTo(UncertaintySource.OTHER);
        assertThat(UncertaintySource.of("factor/listed C 1s")).isEqualTo(UncertaintySource.FACTOR);
    }
}
