package spotline.analysis.background;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import spotline.core.Work;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

class ConstantTest {
    private static final BindingScan LEVEL =
            Scans.scan(Scans.unevenGrid(280, 90), e -> Scans.gaussian(e, 284.8, 0.5, 2000) + 400);
    private static final Window WINDOW = new Window(281, 288);

    @Test
    void levelBackgroundLeavesThePeak() {
        // The widths of an uneven axis add up to the window, so the trapezoid error of a smooth peak is all that is
        // left.
        assertThat(Scans.area(Constant.of(5), LEVEL, WINDOW)).isCloseTo(2000, within(0.5));
    }

    @Test
    void varianceOfTheLevel() {
        Subtraction subtraction = Scans.subtract(new Constant(10, EndpointPlacement.OUTSIDE), LEVEL, WINDOW);
        // derived, closed form: mean of 20 channels of 400 counts
        for (double variance : subtraction.backgroundVariances(Work.UNWATCHED)) {
            assertThat(variance).isCloseTo(20, within(1e-6));
        }
        double width = 0;
        for (int i = subtraction.from(); i < subtraction.to(); i++) width += subtraction.widthEv(i);
        assertThat(subtraction.netArea().contribution("endpoints/line")).isCloseTo(width * Math.sqrt(20), within(1e-6));
    }

    @Test
    void sensitivitiesAgreeWithDifferences() {
        Scans.assertSensitivities(Constant.of(4), LEVEL, WINDOW, 1e-7);
        Scans.assertSensitivities(new Constant(4, EndpointPlacement.OUTSIDE), LEVEL, WINDOW, 1e-7);
    }

    @Test
    void saysWhatItIs() {
        assertThat(Constant.of(2).describe()).isEqualTo("constant, 2 endpoint channels");
        assertThatThrownBy(() -> Constant.of(-1))
                .hasMessage("endpointChannels: -1 channels, expected 1 channel or more");
    }
}
