package spotline.holder.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SurfacePotentialTest {
    /** Derived, Ohm's law. */
    @ParameterizedTest
    @CsvSource({"10e-9, 1e6, 0.01", "10e-9, 1e7, 0.1", "10e-9, 1e8, 1"})
    void ofAPathIsCurrentTimesResistance(double ampere, double ohm, double volt) {
        assertThat(SurfacePotential.ofPath(ampere, ohm)).isCloseTo(volt, within(1e-12));
    }

    /** Derived: 10 nA through 0.3 mm2 is 3.33 uA/cm2; 1 um of 1e10 ohm cm, then the resistivities that leave 0.1 V. */
    @ParameterizedTest
    @CsvSource({"1e-4, 1e10, 3.3333", "1e-4, 3e8, 0.1", "1e-2, 3e6, 0.1"})
    void ofALayerIsCurrentDensityTimesThicknessTimesResistivity(double cm, double ohmCm, double volt) {
        assertThat(SurfacePotential.ofLayer(10e-9, 0.3, cm, ohmCm)).isCloseTo(volt, within(1e-4));
    }
}
