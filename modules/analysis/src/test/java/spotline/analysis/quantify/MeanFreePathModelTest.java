package spotline.analysis.quantify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spotline.reference.Material;

class MeanFreePathModelTest {
    /** Mean free paths in nm at 500, 1000 and 1400 eV. Source: TPP-2M, evaluated independently; non-relativistic form. */
    @ParameterizedTest
    @CsvSource({
        "0.92, 14.03, 6, 8.8, 2.259, 3.831, 5.011",
        "2.19, 60.084, 16, 9.1, 1.819, 3.038, 3.952",
        "2.33, 28.086, 4, 1.1, 1.412, 2.386, 3.112",
        "8.96, 63.546, 11, 0, 0.940, 1.545, 1.994"
    })
    void tpp2mGoesWithEnergyAsTabulated(
            double density, double mass, double valence, double gap, double at500, double at1000, double at1400) {
        MeanFreePathModel model = new MeanFreePathModel.Tpp2m(new Material("made", density, mass, valence, gap));
        // the relativistic form differs by up to 0.3 % at these energies
        assertThat(model.relative(500)).isCloseTo(at500 / at1000, within(0.003));
        assertThat(model.relative(1400)).isCloseTo(at1400 / at1000, within(0.004));
        assertThat(model.relative(1000)).isEqualTo(1);
        assertThat(model.describe()).contains("TPP-2M");
    }

    @Test
    void theOthersArePowers() {
        assertThat(new MeanFreePathModel.Power(0.75).relative(500)).isCloseTo(Math.pow(0.5, 0.75), within(1e-12));
        // 0.00837 E^0.842 nm: Seah and Spencer 2011, from memory
        assertThat(new MeanFreePathModel.Organic().relative(500)).isCloseTo(Math.pow(0.5, 0.842), within(1e-12));
    }
}
