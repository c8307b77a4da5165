package spotline.spectra;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class BindingScanTest {
    private static SpectrumSet set(Axis axis, Counting counting, double... values) {
        Ordinate ordinate = new Ordinate(Quantity.of("intensity", "d"), Ordinate.Kind.INTENSITY, counting, values);
        return new SpectrumSet(Acquisition.unknown("b"), axis, List.of(), List.of(ordinate));
    }

    /** BE = h nu - KE: Al K-alpha 1486.6, KE 1202.6 gives 284.0 with the work function folded in; closed form. */
    @Test
    void kineticEnergyTurnsIntoRisingBindingEnergy() {
        SpectrumSet set = set(new RegularAxis(Quantity.kineticEnergy(), 1202.6, 1, 3), Counting.COUNTS, 10, 20, 30);
        BindingScan scan = BindingScan.of(set.spectrum(0), 1486.6, "s");
        assertThat(scan.energies()).containsExactly(new double[] {282, 283, 284}, within(1e-9));
        assertThat(scan.counts()).containsExactly(30, 20, 10);
        assertThat(scan.kineticEv(2)).isCloseTo(1202.6, within(1e-9));
    }

    @Test
    void aRateBecomesCountsOverItsTime() {
        Counting counting = Counting.rate(OptionalDouble.of(0.5));
        SpectrumSet set = set(new RegularAxis(Quantity.bindingEnergy(), 290, -1, 2), counting, 100, 40);
        BindingScan scan = BindingScan.of(set.spectrum(0), 1486.6, "s");
        assertThat(scan.counts()).containsExactly(20, 50);
        assertThat(scan.countsKnown()).isTrue();
    }

    @Test
    void unknownStatisticsStayUnknown() {
        SpectrumSet set = set(new RegularAxis(Quantity.bindingEnergy(), 0, 1, 2), Counting.UNKNOWN, 100, 40);
        BindingScan scan = BindingScan.of(set.spectrum(0), 1486.6, "s");
        assertThat(scan.countsKnown()).isFalse();
        assertThat(scan.counts()).containsExactly(100, 40);
    }

    @Test
    void whatIsNoEnergyIsRefused() {
        SpectrumSet set = set(new RegularAxis(Quantity.of("time", "s"), 0, 1, 2), Counting.COUNTS, 1, 2);
        assertThatThrownBy(() -> BindingScan.of(set.spectrum(0), 1486.6, "s")).hasMessageContaining("time");
    }

    @Test
    void anAxisThatTurnsBackIsRefused() {
        SpectrumSet set =
                set(new ListedAxis(Quantity.bindingEnergy(), new double[] {1, 3, 2}), Counting.COUNTS, 1, 2, 3);
        assertThatThrownBy(() -> BindingScan.of(set.spectrum(0), 1486.6, "s")).hasMessageContaining("rise");
    }

    @Test
    void channelsAreFoundByEnergy() {
        double[] energy = new double[101];
        for (int i = 0; i < energy.length; i++) energy[i] = 280 + i * 0.1;
        BindingScan scan = new BindingScan(
                "s", 1486.6, energy, new double[101], true, OptionalDouble.empty(), OptionalDouble.empty());
        for (int i = 0; i < energy.length; i++) {
            assertThat(scan.firstAtOrAbove(280 + 0.1 * i)).isEqualTo(i);
            assertThat(scan.lastAtOrBelow(280 + 0.1 * i)).isEqualTo(i);
        }
        assertThat(scan.firstAtOrAbove(291)).isEqualTo(101);
        assertThat(scan.lastAtOrBelow(279)).isEqualTo(-1);
        assertThat(scan.stepEv()).isCloseTo(0.1, within(1e-12));
        assertThat(scan.part(10, 20).range().lowEv()).isCloseTo(281, within(1e-9));
    }

    @Test
    void channelWidthsOfAnUnevenAxis() {
        BindingScan scan = new BindingScan(
                "s",
                1486.6,
                new double[] {0, 1, 3, 4},
                new double[4],
                true,
                OptionalDouble.empty(),
                OptionalDouble.empty());
        assertThat(scan.channelWidthEv(0)).isEqualTo(1);
        assertThat(scan.channelWidthEv(1)).isEqualTo(1.5);
        assertThat(scan.channelWidthEv(3)).isEqualTo(1);
    }
}
