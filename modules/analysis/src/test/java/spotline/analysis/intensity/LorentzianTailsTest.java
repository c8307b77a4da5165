package spotline.analysis.intensity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import spotline.analysis.background.Linear;
import spotline.core.Estimate;
import spotline.core.Work;
import spotline.numerics.shape.Voigt;
import spotline.reference.Line;
import spotline.spectra.BindingScan;
import spotline.spectra.Window;

class LorentzianTailsTest {
    private static LineTarget target(double natural, double partnerRatio) {
        return new LineTarget(
                Line.parse("Zn 2p3/2"),
                1015,
                1030,
                1022,
                0,
                List.of(),
                Optional.of(new LineTarget.Widths(natural, natural, partnerRatio)));
    }

    private static BindingScan voigt(double gauss, double lorentz) {
        double[] energy = new double[401];
        double[] counts = new double[401];
        for (int i = 0; i < energy.length; i++) energy[i] = 1002 + 0.1 * i;
        new Voigt().evaluate(energy, new double[] {1022, 5000, gauss, lorentz}, counts);
        for (int i = 0; i < counts.length; i++) counts[i] += 100;
        return new BindingScan("made", 1486.6, energy, counts, true, OptionalDouble.of(1), OptionalDouble.empty());
    }

    /** A Lorentzian of width w above the chord between -a and a: (2/pi)[atan(2a/w) - (2a/w) / (1 + (2a/w)^2)]; derived. */
    @Test
    void agreesWithTheClosedFormForALorentzian() {
        double a = 4;
        double t = 2 * a / 1.0;
        double kept = 2 / Math.PI * (Math.atan(t) - t / (1 + t * t));
        Estimate factor = LorentzianTails.wholePerWindow(
                voigt(0, 1), new Window(1022 - a, 1022 + a), Linear.of(1), target(1, 0), 1022, 1.0);
        assertThat(factor.value()).isCloseTo(1 / kept, within(0.003));
        assertThat(factor.contribution("tails/Zn 2p3/2")).isCloseTo(0.3 * (factor.value() - 1), within(1e-12));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.05, 0.3, 0.7, 1.1})
    void theWholeAreaOfAVoigtLineIsFound(double natural) {
        BindingScan scan = voigt(1.2, natural);
        double fwhm = new Voigt().fwhm(1022, 5000, 1.2, natural);
        Intensity found = new IntensityMeasurement(MadeScan.settings())
                .measure(scan, target(natural, 0), "k", Work.UNWATCHED)
                .result()
                .orElseThrow();
        assertThat(found.fwhmEv()).isCloseTo(fwhm, within(0.05));
        Estimate whole = found.area().times(found.wholePerWindow());
        // 5000 counts eV were put in
        assertThat(whole.value()).isCloseTo(5000, within(25.0));
    }

    @Test
    void anUnknownWidthCorrectsNothing() {
        LineTarget unknown = MadeScan.target("Zn 2p3/2", 1015, 1030, 1022, 0);
        assertThat(LorentzianTails.wholePerWindow(
                        voigt(1, 1), new Window(1018, 1026), Linear.of(5), unknown, 1022, 1.6))
                .isEqualTo(Estimate.exact(1));
    }
}
