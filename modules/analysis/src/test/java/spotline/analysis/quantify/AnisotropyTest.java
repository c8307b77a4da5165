package spotline.analysis.quantify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spotline.core.Estimate;

class AnisotropyTest {
    private static Anisotropy of(Anisotropy.Kind kind, double z) {
        return new Anisotropy(kind, z, 0.08);
    }

    /** Dipole approximation, derived. */
    @ParameterizedTest
    @CsvSource({"45, 0.75", "54.7356103, 1.00", "60, 1.125", "90, 1.50"})
    void anSLineInAFreeAtom(double gamma, double expected) {
        assertThat(of(Anisotropy.Kind.DIPOLE, 14).factor(2, gamma).value()).isCloseTo(expected, within(1e-6));
    }

    /** a(41) = 0.622. Source: Seah and Gilmore 2001, coefficients from memory; arithmetic derived. */
    @Test
    void elasticScatteringSmearsIt() {
        assertThat(of(Anisotropy.Kind.REDUCED, 41).reduction()).isCloseTo(0.6224, within(1e-4));
        Estimate factor = of(Anisotropy.Kind.REDUCED, 41).factor(2, 90);
        assertThat(factor.value()).isCloseTo(1.3112, within(1e-4));
        assertThat(factor.contribution("factor/reduced asymmetry")).isCloseTo(0.04, within(1e-12));
    }

    @Test
    void atTheMagicAngleNothingIsAddedToTheUncertainty() {
        Estimate factor = of(Anisotropy.Kind.REDUCED, 14).factor(2, 54.7356103);
        assertThat(factor.standardUncertainty().orElseThrow()).isLessThan(1e-8);
    }

    @Test
    void notAppliedIsOne() {
        assertThat(of(Anisotropy.Kind.NONE, 14).factor(2, 90)).isEqualTo(Estimate.exact(1));
        assertThat(Anisotropy.Kind.of("reduced")).contains(Anisotropy.Kind.REDUCED);
    }

    @Test
    void refusesWhatNoSolidIs() {
        assertThatThrownBy(() -> of(Anisotropy.Kind.REDUCED, 0)).hasMessageContaining("meanAtomicNumber");
        assertThatThrownBy(() -> new Anisotropy(Anisotropy.Kind.REDUCED, 14, -1))
                .hasMessageContaining("reductionU");
    }
}
