package spotline.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import spotline.core.Finding;
import spotline.core.Provenance;
import spotline.holder.SpectrumRole;
import spotline.spectra.BindingScan;
import spotline.spectra.Transmission;

class PreparationTest {
    private static LinkedSpectrum scan(String label, SpectrumRole role, double seconds, double... counts) {
        double[] energy = new double[counts.length];
        for (int i = 0; i < energy.length; i++) energy[i] = 280 + 0.1 * i;
        return scan(label, role, seconds, energy, counts);
    }

    private static LinkedSpectrum scan(
            String label, SpectrumRole role, double seconds, double[] energy, double[] counts) {
        return new LinkedSpectrum(
                label,
                new Provenance("made", "00", 1, 1, "made"),
                "C 1s",
                false,
                role,
                new BindingScan(label, 1486.6, energy, counts, true, OptionalDouble.of(seconds), OptionalDouble.of(20)),
                new Transmission.Flat(),
                Optional.empty());
    }

    private static PreparationSettings settings(boolean sum, double dead, boolean spikes) {
        return new PreparationSettings(sum, dead > 0 ? OptionalDouble.of(dead) : OptionalDouble.empty(), spikes, 8);
    }

    private static List<String> rules(Preparation preparation) {
        return preparation.findings().stream().map(Finding::rule).toList();
    }

    @Test
    void nothingIsDoneUnlessAskedFor() {
        List<LinkedSpectrum> given = List.of(
                scan("a#1", SpectrumRole.MAIN, 1, 1, 2, 900, 2, 1), scan("a#2", SpectrumRole.MAIN, 1, 1, 2, 3, 2, 1));
        Preparation none = new Preparation(DefaultTreatment.treatment().prepare());
        assertThat(none.of(given)).isEqualTo(given);
        assertThat(none.findings()).isEmpty();
    }

    /** m = n / (1 + n tau / t), inverted: 1e6 counts a second and 100 ns lose 9.1 %. Closed form, derived. */
    @Test
    void deadTimeIsGivenBack() {
        double truth = 1e6 * 2;
        double measured = truth / (1 + truth * 1e-7 / 2);
        Preparation p = new Preparation(settings(false, 1e-7, false));
        LinkedSpectrum after =
                p.of(List.of(scan("a#1", SpectrumRole.MAIN, 2, measured, 10))).get(0);
        assertThat(after.scan().counts(0)).isCloseTo(truth, within(1e-3));
        assertThat(after.scan().counts(1)).isCloseTo(10, within(1e-4));
        assertThat(rules(p)).containsExactly("dead-time-corrected");
    }

    @Test
    void tooMuchDeadTimeIsLeftAlone() {
        Preparation p = new Preparation(settings(false, 1e-6, false));
        LinkedSpectrum after =
                p.of(List.of(scan("a#1", SpectrumRole.MAIN, 1, 4e5, 10))).get(0);
        assertThat(after.scan().counts(0)).isEqualTo(4e5);
        assertThat(rules(p)).containsExactly("dead-time-too-large");
    }

    @Test
    void aSpikeGoesAndALineStays() {
        double[] counts = new double[200];
        for (int i = 0; i < counts.length; i++) {
            double x = (i - 100) / 5.1;
            counts[i] = 100 + 5000 * Math.exp(-0.5 * x * x);
        }
        double[] spiked = counts.clone();
        spiked[40] = 400;
        Preparation p = new Preparation(settings(false, 0, true));
        LinkedSpectrum after =
                p.of(List.of(scan("a#1", SpectrumRole.MAIN, 1, spiked))).get(0);
        assertThat(after.scan().counts(40)).isCloseTo(100, within(1e-6));
        assertThat(after.scan().counts(100)).isEqualTo(counts[100]);
        assertThat(rules(p)).containsExactly("spike-removed");
        assertThat(p.findings().get(0).message()).contains("284.00 eV").contains("400");
        assertThat(p.findings().get(0).spectrum()).isEqualTo("a#1");
    }

    @Test
    void repeatedScansAreSummedWithTheirTimes() {
        Preparation p = new Preparation(settings(true, 0, false));
        List<LinkedSpectrum> after = p.of(List.of(
                scan("a#1", SpectrumRole.MAIN, 2, 100, 200, 300),
                scan("a#4", SpectrumRole.UNKNOWN, 3, 160, 290, 455),
                scan("a#9", SpectrumRole.LAST, 2, 5, 5, 5)));
        assertThat(after).hasSize(2);
        assertThat(after.get(0).label()).isEqualTo("a#1+4");
        assertThat(after.get(0).scan().counts()).containsExactly(260, 490, 755);
        assertThat(after.get(0).scan().secondsPerChannel()).hasValue(5);
        assertThat(after.get(1).role()).isEqualTo(SpectrumRole.LAST);
        assertThat(rules(p)).containsExactly("scans-summed");
    }

    @Test
    void scansThatDifferAreNotSummed() {
        Preparation p = new Preparation(settings(true, 0, false));
        List<LinkedSpectrum> after =
                p.of(List.of(scan("a#1", SpectrumRole.MAIN, 2, 1, 2, 3), scan("a#2", SpectrumRole.MAIN, 2, 1, 2)));
        assertThat(after).hasSize(2);
        assertThat(rules(p)).containsExactly("scan-not-summed");
        assertThat(Arrays.asList(after.get(0).label(), after.get(1).label())).containsExactly("a#1", "a#2");
    }

    /** A survey's line of 1.6 eV on channels of 1 eV, and a line of 0.45 eV on channels of 0.1 eV, both strong. */
    @Test
    void aStrongLineOfFewChannelsIsNoSpike() {
        for (double[] made : new double[][] {{1, 1.6}, {0.1, 0.45}}) {
            double[] energy = new double[81];
            double[] counts = new double[81];
            for (int i = 0; i < energy.length; i++) {
                energy[i] = 280 + made[0] * i;
                double x = (i - 40) * made[0] / made[1];
                counts[i] = Math.rint(500 + 90000 * Math.exp(-4 * Math.log(2) * x * x));
            }
            LinkedSpectrum line = scan("a#1", SpectrumRole.MAIN, 1, energy, counts);
            Preparation p = new Preparation(settings(false, 0, true));
            assertThat(p.of(List.of(line)).get(0).scan().counts()).isEqualTo(counts);
            assertThat(rules(p)).doesNotContain("spike-removed");
            assertThat(rules(p).contains("spikes-not-looked-for")).isEqualTo(made[0] == 1);
        }
    }

    @Test
    void scansThatDriftedOrLostIntensityAreNotSummed() {
        double[] first = new double[100];
        double[] drifted = new double[100];
        double[] faded = new double[100];
        for (int i = 0; i < first.length; i++) {
            double x = (i - 50) / 5.0;
            double y = (i - 54) / 5.0;
            first[i] = 100 + 5000 * Math.exp(-0.5 * x * x);
            drifted[i] = 100 + 5000 * Math.exp(-0.5 * y * y);
            faded[i] = 0.9 * first[i];
        }
        Preparation p = new Preparation(settings(true, 0, false));
        List<LinkedSpectrum> after = p.of(List.of(
                scan("a#1", SpectrumRole.MAIN, 1, first),
                scan("a#2", SpectrumRole.MAIN, 1, drifted),
                scan("a#3", SpectrumRole.MAIN, 1, faded),
                scan("a#4", SpectrumRole.MAIN, 1, first),
                scan("a#5", SpectrumRole.REPEAT, 1, first)));
        assertThat(after.stream().map(LinkedSpectrum::label)).containsExactly("a#1+4", "a#2", "a#3", "a#5");
        assertThat(rules(p)).containsExactly("scan-not-summed", "scan-not-summed", "scans-summed", "scan-not-summed");
        assertThat(p.findings().get(0).severity()).isEqualTo(spotline.core.Severity.CAUTION);
    }
}
