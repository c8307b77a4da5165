package spotline.analysis.charge;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.random.RandomGenerator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import spotline.analysis.charge.ChargeInput.MeasuredLine;
import spotline.analysis.charge.HolderEvidence.SpotCharge;
import spotline.core.Outcome;
import spotline.numerics.random.PoissonSampler;
import spotline.numerics.random.RandomStreams;
import spotline.numerics.shape.Voigt;
import spotline.spectra.BindingScan;

/** How often two equal patches of a surface at two potentials are found, and how often one is taken for two. */
class DifferentialChargingTest {
    /** Counts eV under hydrocarbon: 10 kcounts at steps of 0.1 eV. */
    private static final double AREA = 1000;

    /** Gaussian width that makes a whole width of 1.20 eV with the natural width of 0.1 eV. */
    private static final double GAUSSIAN = 1.145;

    /** What there is to hold the width of C 1s against. */
    enum Known {
        /** A width that the analyst states, known to 0.01 eV. */
        STATED(0.4),
        /** The same line, with the same counts, at another spot of the sample that does not charge differentially. */
        SAME_LINE_ELSEWHERE(0.4),
        /** The same line and a second line of the phase at another spot of the sample. */
        SECOND_LINE(0.4),
        /** Nothing. */
        NOTHING(0.7);

        private final double separationEv;

        Known(double separationEv) {
            this.separationEv = separationEv;
        }
    }

    private static ChargeReference spot(
            RandomGenerator random, Known known, String name, double width, double separationEv) {
        CarbonTruth truth = CarbonTruth.drawn(random, AREA, width);
        List<MeasuredLine> lines = new ArrayList<>();
        lines.add(Made.line("C 1s", truth.scan(random, name + " C 1s", separationEv)));
        if (known == Known.SECOND_LINE) {
            double at = truth.positionEv() + 247.2;
            lines.add(Made.line("O 1s", oxygen(random, name + " O 1s", at, width + 0.1, separationEv)));
        }
        ChargeInput input = Made.input(Made.ISOLATED, 284.8 - truth.positionEv(), lines.toArray(MeasuredLine[]::new));
        return Made.reference(settings(known, width), input);
    }

    private static BindingScan oxygen(
            RandomGenerator random, String label, double atEv, double width, double separationEv) {
        double[] energy = Made.grid(atEv - 9, atEv + 11);
        List<Made.Peak> patches = List.of(
                new Made.Peak(atEv - 0.5 * separationEv, 0.5 * AREA, width),
                new Made.Peak(atEv + 0.5 * separationEv, 0.5 * AREA, width));
        double[] means = Made.means(energy, patches, 0.05 * AREA, 0.1);
        return Made.scan(label, energy, PoissonSampler.sample(random, means));
    }

    private static ChargeSettings settings(Known known, double width) {
        ChargeSettings usual = ChargeSettings.byRecord();
        if (known != Known.STATED) return usual;
        double fwhm = new Voigt().fwhm(0, 1, width, CarbonModel.LORENTZIAN_EV);
        return new ChargeSettings(
                usual.method(),
                usual.referenceEv(),
                usual.referenceUncertaintyEv(),
                usual.referenceLine(),
                usual.shiftEv(),
                usual.workFunction(),
                usual.temperatureK(),
                usual.check(),
                Optional.of(new ChargeSettings.UnchargedWidth(fwhm, 0.01)),
                usual.interpolateDrift(),
                usual.reason(),
                usual.limits());
    }

    /** Whether the step itself, or the comparison across the holder, says so of the spot. */
    private static boolean found(RandomGenerator random, Known known, double separationEv) {
        double width = known == Known.NOTHING ? 1.0 + 0.3 * random.nextDouble() : GAUSSIAN;
        List<SpotCharge> holder = new ArrayList<>();
        ChargeReference spot = spot(random, known, "1", width, separationEv);
        holder.add(of("1", spot, settings(known, width)));
        if (known != Known.STATED && known != Known.NOTHING) {
            holder.add(of("2", spot(random, known, "2", width, 0), settings(known, width)));
        }
        boolean alone = spot.evidence()
                .shape()
                .filter(ChargeEvidence.TwoPotentials::asked)
                .isPresent();
        Outcome<ChargeReference> across = HolderEvidence.compare(holder).get(0);
        boolean compared = across.allFindings().stream().anyMatch(f -> f.rule().equals("differential-charging"));
        boolean doubted = across.result().orElseThrow().verdict() == ChargeVerdict.DOUBTFUL;
        assertThat(doubted || !(alone || compared)).as("found is doubted").isTrue();
        return alone || compared;
    }

    private static SpotCharge of(String spot, ChargeReference charge, ChargeSettings settings) {
        return new SpotCharge(spot, "sample", charge, settings, OptionalDouble.empty());
    }

    private static double share(int count, Known known, double separationEv, long seed) {
        RandomGenerator random = RandomStreams.stream(seed, known.name(), String.valueOf(separationEv));
        int found = 0;
        for (int k = 0; k < count; k++) if (found(random, known, separationEv)) found++;
        return (double) found / count;
    }

    @ParameterizedTest
    @EnumSource
    void aSampleOfPatchesIsFoundAndCleanSurfacesAreNot(Known known) {
        // 95 % of 20 are 19, 2 % are 0.4: three standard deviations away are 17 and 2.
        assertThat(share(20, known, known.separationEv, 41)).isGreaterThanOrEqualTo(0.85);
        assertThat(share(20, known, 0, 42)).isLessThanOrEqualTo(0.1);
    }

    @Tag("slow")
    @ParameterizedTest
    @EnumSource
    void patchesAreFoundInNinetyFiveOfAHundredAndCleanSurfacesTakenForTwoInUnderTwo(Known known) {
        assertThat(share(1000, known, known.separationEv, 43)).isGreaterThanOrEqualTo(0.95);
        assertThat(share(1000, known, 0, 44)).isLessThan(0.02);
    }
}
