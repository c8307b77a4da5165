package spotline.spectra;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class AxisTest {
    @Test
    void aRegularAxisDoesNotDrift() {
        RegularAxis axis = new RegularAxis(Quantity.kineticEnergy(), 0, 0.1, 100_001);
        assertThat(axis.last()).isEqualTo(100_000 * 0.1);
        assertThat(axis.first()).isZero();
    }

    @Test
    void anAxisThatStandsStillIsRefused() {
        assertThatThrownBy(() -> new RegularAxis(Quantity.kineticEnergy(), 0, 0, 5))
                .hasMessageContaining("step");
        assertThatThrownBy(() -> new RegularAxis(Quantity.kineticEnergy(), Double.NaN, 1, 5))
                .hasMessageContaining("start");
        assertThatThrownBy(() -> new RegularAxis(Quantity.kineticEnergy(), 0, 1, 0))
                .hasMessageContaining("channels");
    }

    @Test
    void aListedAxisKeepsItsOwnCopy() {
        double[] values = {1, 2, 4};
        ListedAxis axis = new ListedAxis(Quantity.bindingEnergy(), values);
        values[0] = 9;
        assertThat(axis.first()).isEqualTo(1);
        assertThat(axis).isEqualTo(new ListedAxis(Quantity.bindingEnergy(), new double[] {1, 2, 4}));
        assertThatThrownBy(() -> new ListedAxis(Quantity.bindingEnergy(), new double[] {1, Double.NaN}))
                .hasMessageContaining("not finite");
    }
}
