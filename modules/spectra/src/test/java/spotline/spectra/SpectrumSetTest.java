package spotline.spectra;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class SpectrumSetTest {
    private static final Axis AXIS = new RegularAxis(Quantity.kineticEnergy(), 100, 1, 3);

    private static Ordinate ordinate(Ordinate.Kind kind, double... values) {
        return new Ordinate(Quantity.of("y", "d"), kind, Counting.COUNTS, values);
    }

    @Test
    void aSpectrumIsAViewOfItsSet() {
        SpectrumSet set = new SpectrumSet(
                Acquisition.unknown("b"),
                AXIS,
                List.of(new Coordinate("etch time", "s", new double[] {0, 60})),
                List.of(ordinate(Ordinate.Kind.INTENSITY, 1, 2, 3, 4, 5, 6)));
        assertThat(set.size()).isEqualTo(2);
        assertThat(set.spectrum(1).values(Ordinate.Kind.INTENSITY)).hasValue(new double[] {4, 5, 6});
        assertThat(set.spectrum(1).values(Ordinate.Kind.TRANSMISSION)).isEmpty();
        assertThatThrownBy(() -> set.spectrum(2)).isInstanceOf(IndexOutOfBoundsException.class);
    }

    @Test
    void lengthsMustAgree() {
        assertThatThrownBy(() -> new SpectrumSet(
                        Acquisition.unknown("b"), AXIS, List.of(), List.of(ordinate(Ordinate.Kind.INTENSITY, 1, 2))))
                .hasMessageContaining("3 channels");
        assertThatThrownBy(() -> new SpectrumSet(
                        Acquisition.unknown("b"),
                        AXIS,
                        List.of(new Coordinate("x", "mm", new double[2])),
                        List.of(ordinate(Ordinate.Kind.INTENSITY, 1, 2, 3))))
                .hasMessageContaining("coordinate x");
    }

    @Test
    void secondsPerChannelNeedDwellAndScans() {
        assertThat(new Timing(OptionalDouble.of(0.1), OptionalDouble.of(5), OptionalDouble.empty()).secondsPerChannel())
                .hasValue(0.5);
        assertThat(Timing.UNKNOWN.secondsPerChannel()).isEmpty();
    }

    @Test
    void transmissionsByLawAndByTable() {
        assertThat(new Transmission.PowerLaw(-0.5).at(4000)).isCloseTo(0.5, within(1e-12));
        Transmission table = new Transmission.Tabulated("t", new double[] {100, 200, 400}, new double[] {1, 2, 3});
        assertThat(table.at(50)).isEqualTo(1);
        assertThat(table.at(150)).isCloseTo(1.5, within(1e-12));
        assertThat(table.at(200)).isEqualTo(2);
        assertThat(table.at(900)).isEqualTo(3);
        assertThatThrownBy(() -> new Transmission.Tabulated("t", new double[] {1, 2}, new double[] {1, 0}))
                .hasMessageContaining("above 0");
        assertThatThrownBy(() -> new Transmission.Tabulated("t", new double[] {2, 1}, new double[] {1, 1}))
                .hasMessageContaining("rise");
    }

    @Test
    void aWindowRunsUpwards() {
        assertThatThrownBy(() -> new Window(3, 3)).isInstanceOf(IllegalArgumentException.class);
        assertThat(new Window(1, 3).overlaps(new Window(3, 4))).isFalse();
        assertThat(Window.around(10, 1, 2)).isEqualTo(new Window(9, 12));
    }
}
