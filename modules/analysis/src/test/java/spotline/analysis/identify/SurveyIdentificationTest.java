package spotline.analysis.identify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;
import spotline.core.Work;
import spotline.reference.ReferenceData;
import spotline.spectra.BindingScan;
import spotline.spectra.Transmission;

class SurveyIdentificationTest {
    private static final IdentifySettings SETTINGS = new IdentifySettings(2.4, 5, -12, 10, 1);
    private static final double AL = 1486.6;

    private static Identification identify(BindingScan scan, boolean monochromated) {
        return new SurveyIdentification(ReferenceData.shipped(), SETTINGS)
                .identify(
                        scan, new Transmission.Flat(), Set.of(), OptionalDouble.empty(), monochromated, Work.UNWATCHED);
    }

    private static List<String> present(Identification found) {
        return found.elements().stream()
                .filter(e -> e.verdict() == Verdict.PRESENT)
                .map(ElementSeen::element)
                .toList();
    }

    @Test
    void anOxideUnderCarbonIsNamedAndPlacedOnTheScale() {
        BindingScan scan = new Sketch(AL, 3.4)
                .element("C", 12000)
                .element("O", 30000)
                .element("Ti", 14000)
                .scan(1);
        Identification found = identify(scan, true);
        assertThat(present(found)).containsExactly("C", "O", "Ti");
        // The sketch has carbon at the tabulated 285.0 eV, hydrocarbon belongs at 284.8 eV.
        assertThat(found.shiftEv()).isCloseTo(-3.6, within(0.15));
        Identification.Detail detail = found.detail().orElseThrow();
        assertThat(detail.shiftLowEv()).isLessThan(found.shiftEv());
        assertThat(detail.shiftHighEv()).isGreaterThan(found.shiftEv());
        assertThat(detail.doubts()).isEmpty();
        ElementSeen titanium = found.element("Ti").orElseThrow();
        assertThat(titanium.lines()).extracting(LineSeen::line).contains("Ti 2p3/2", "Ti 2p1/2", "Ti 3p");
        assertThat(titanium.lines().get(0).ratioToExpected()).isCloseTo(1, within(0.1));
        assertThat(titanium.evidence().likelihoodGain()).isGreaterThan(400);
        assertThat(titanium.evidence().reasons().get(0)).startsWith("Seen: Ti 2p3/2 at 457.");
    }

    @Test
    void theQuickCompositionFollowsTheAmountsPutIn() {
        BindingScan scan = new Sketch(AL, 0)
                .element("C", 12000)
                .element("O", 30000)
                .element("Ti", 14000)
                .scan(2);
        List<QuickShare> shares = identify(scan, true).detail().orElseThrow().composition();
        assertThat(shares).extracting(QuickShare::element).containsExactly("O", "Ti", "C");
        // 30, 14 and 12 parts of 56
        double[] truth = {100 * 30 / 56.0, 100 * 14 / 56.0, 100 * 12 / 56.0};
        for (int i = 0; i < 3; i++) {
            assertThat(shares.get(i).atomicPercent().value()).isCloseTo(truth[i], within(2.0));
            assertThat(shares.get(i).atomicPercent().standardUncertainty()).isPresent();
        }
        assertThat(shares.stream().mapToDouble(s -> s.atomicPercent().value()).sum())
                .isCloseTo(100, within(1e-9));
    }

    @Test
    void theModelAddsUpToWhatWasMeasured() {
        BindingScan scan =
                new Sketch(AL, 0).element("C", 20000).element("O", 20000).scan(3);
        SurveyModel model = identify(scan, true).detail().orElseThrow().model();
        assertThat(model.channels()).isEqualTo(scan.channels());
        assertThat(model.parts()).containsExactlyInAnyOrder("C", "O");
        double[] residual = model.residual();
        double[] sum = model.fittedSum();
        double[] deviation = model.standardDeviation();
        double chi = 0;
        int counted = 0;
        for (int i = 0; i < residual.length; i++) {
            assertThat(residual[i] + sum[i]).isCloseTo(scan.counts(i), within(1e-6 * sum[i]));
            if (Double.isInfinite(deviation[i])) continue;
            chi += residual[i] * residual[i] / (deviation[i] * deviation[i]);
            counted++;
        }
        assertThat(chi / counted).isBetween(0.6, 1.3);
        assertThat(model.curve("C")).isPresent();
        assertThat(model.curve("Xe")).isEmpty();
    }

    @Test
    void aSurveyOfNoiseHasNoElements() {
        for (long seed = 0; seed < 5; seed++) {
            Identification found = identify(new Sketch(AL, 0).scan(seed), true);
            assertThat(found.elements()).isEmpty();
            assertThat(found.detail().orElseThrow().composition()).isEmpty();
        }
    }

    @Test
    void aGivenShiftIsKept() {
        BindingScan scan =
                new Sketch(AL, 0.4).element("C", 9000).element("Cu", 3000).scan(4);
        Identification found = new SurveyIdentification(ReferenceData.shipped(), SETTINGS)
                .identify(scan, new Transmission.Flat(), Set.of(), OptionalDouble.of(0), true, Work.UNWATCHED);
        assertThat(found.shiftEv()).isZero();
        assertThat(present(found)).containsExactly("C", "Cu");
        assertThat(found.detail().orElseThrow().shiftReason()).contains("given");
    }

    @Test
    void carbonExcitedByTheOtherAnodeIsNoVanadium() {
        // Stray Mg Ka under Al Ka: everything repeats 233.0 eV higher (difference of the photon energies).
        BindingScan scan = new Sketch(AL, 0)
                .element("C", 60000)
                .element("O", 8000)
                .repeated(233.0, 0.02)
                .scan(5);
        Identification found = identify(scan, false);
        assertThat(present(found)).doesNotContain("V", "Sb", "Sn");
        assertThat(found.detail().orElseThrow().model().parts()).contains("stray radiation");
    }

    @Test
    void aBumpThatNothingExplainsIsListed() {
        BindingScan scan = new Sketch(AL, 0)
                .element("C", 20000)
                .element("O", 20000)
                .bump(605, 2500)
                .scan(6);
        Identification found = identify(scan, true);
        boolean listed = found.unassigned().stream().anyMatch(p -> Math.abs(p.energyEv() - 605) < 1.5);
        boolean possible = found.elements().stream()
                .filter(e -> e.verdict() == Verdict.POSSIBLE)
                .flatMap(e -> e.lines().stream())
                .anyMatch(l -> Math.abs(l.energyEv() - 605) < 1.5);
        assertThat(listed || possible).isTrue();
        assertThat(present(found)).containsExactly("C", "O");
    }

    @Test
    void proposedScansHoldTheirLineAndAskForReasonableTime() {
        BindingScan scan =
                new Sketch(AL, 0).element("C", 20000).element("Ti", 8000).scan(7);
        List<ScanProposal> proposals =
                identify(scan, true).detail().orElseThrow().proposals();
        ScanProposal titanium = proposals.stream()
                .filter(p -> p.element().equals("Ti"))
                .findFirst()
                .orElseThrow();
        assertThat(titanium.line()).isEqualTo("Ti 2p");
        assertThat(titanium.window().lowEv()).isBetween(440.0, 450.0);
        assertThat(titanium.window().highEv()).isBetween(468.0, 478.0);
        // Counting alone would need well under a second; nobody sets up a scan for that (common practice, no source).
        assertThat(titanium.seconds().orElseThrow())
                .isCloseTo(0.5 * titanium.window().widthEv(), within(1e-9));
        assertThat(titanium.relativeUncertainty()).isEqualTo(0.03);
    }

    @Test
    void aWeakElementNeedsAScanAsLongAsItsCountsAsk() {
        BindingScan scan =
                new Sketch(AL, 0).element("C", 20000).element("Ti", 60).scan(7);
        ScanProposal titanium = identify(scan, true).detail().orElseThrow().proposals().stream()
                .filter(p -> p.element().equals("Ti"))
                .findFirst()
                .orElseThrow();
        assertThat(titanium.seconds().orElseThrow())
                .isGreaterThan(2 * 0.5 * titanium.window().widthEv());
    }

    @Test
    void whatIsMeasuredAlreadyIsNotProposed() {
        BindingScan scan =
                new Sketch(AL, 0).element("C", 20000).element("Ti", 8000).scan(7);
        Identification found = identify(scan, true).unplanned(Set.of("C", "O"));
        assertThat(found.detail().orElseThrow().proposals())
                .extracting(ScanProposal::element)
                .containsExactly("Ti");
    }

    @Test
    void hydrocarbonBesideFluorocarbonIsNoRuthenium() {
        // C 1s of CF2 lies 6.9 eV above hydrocarbon (G. Beamson, D. Briggs 1992, from memory).
        BindingScan scan = new Sketch(AL, 0)
                .element("C", 9000)
                .bump(292.0, 14000)
                .element("F", 30000)
                .element("O", 4000)
                .scan(11);
        Identification found = identify(scan, true);
        assertThat(present(found)).containsExactly("C", "O", "F");
        assertThat(found.element("Ru")).isEmpty();
        assertThat(found.unassigned()).noneMatch(p -> Math.abs(p.energyEv() - 285) < 9);
    }

    @Test
    void aReversedAxisIsTold() {
        BindingScan right = new Sketch(AL, 0)
                .element("C", 20000)
                .element("O", 30000)
                .element("Fe", 9000)
                .scan(8);
        double[] counts = right.counts();
        double[] wrong = new double[counts.length];
        for (int i = 0; i < wrong.length; i++) wrong[i] = counts[counts.length - 1 - i];
        Identification found = identify(
                new BindingScan(
                        "reversed", AL, right.energies(), wrong, true, OptionalDouble.empty(), OptionalDouble.empty()),
                true);
        List<HeaderDoubt> doubts = found.detail().orElseThrow().doubts();
        assertThat(doubts).hasSize(1);
        assertThat(doubts.get(0).kind()).isEqualTo(HeaderDoubt.Kind.AXIS_REVERSED);
        assertThat(doubts.get(0).elements()).contains("C", "O", "Fe");
        assertThat(present(found)).isEmpty();
    }

    @Test
    void aPhotonEnergyThatMovedTheScaleIsTold() {
        // Kinetic energies of Al Ka read with the photon energy of Mg Ka: every binding energy 233.0 eV too low.
        BindingScan right = new Sketch(AL, 0)
                .element("C", 20000)
                .element("O", 30000)
                .element("Zn", 6000)
                .scan(9);
        double[] moved = right.energies();
        for (int i = 0; i < moved.length; i++) moved[i] -= 233.0;
        Identification found = identify(
                new BindingScan(
                        "moved", 1253.6, moved, right.counts(), true, OptionalDouble.empty(), OptionalDouble.empty()),
                false);
        List<HeaderDoubt> doubts = found.detail().orElseThrow().doubts();
        assertThat(doubts).hasSize(1);
        assertThat(doubts.get(0).kind()).isEqualTo(HeaderDoubt.Kind.PHOTON_ENERGY);
        assertThat(doubts.get(0).photonEnergyEv().orElseThrow()).isCloseTo(1486.6, within(0.2));
    }

    @Test
    void surveysOfUnknownStatisticsAndOfFineStepsAreRead() {
        Sketch sketch =
                new Sketch(AL, 0).element("C", 20000).element("O", 30000).element("Ti", 9000);
        int n = 6501;
        double[] energy = new double[n];
        for (int i = 0; i < n; i++) energy[i] = -5 + 0.2 * i;
        BindingScan fine = Sketch.noisy(energy, sketch.expected(energy), 10, AL);
        assertThat(present(identify(fine, true))).containsExactly("C", "O", "Ti");
        double[] rate = fine.counts();
        for (int i = 0; i < rate.length; i++) rate[i] *= 37.5;
        BindingScan unknown =
                new BindingScan("rate", AL, energy, rate, false, OptionalDouble.empty(), OptionalDouble.empty());
        Identification found = identify(unknown, true);
        assertThat(present(found)).containsExactly("C", "O", "Ti");
        assertThat(found.detail().orElseThrow().proposals())
                .allSatisfy(p -> assertThat(p.seconds()).isEmpty());
    }

    @Test
    void theSameSurveyGivesTheSameAnswer() {
        BindingScan scan = new Sketch(AL, 1)
                .element("C", 9000)
                .element("Si", 30000)
                .element("O", 40000)
                .scan(11);
        Identification first = identify(scan, true);
        Identification second = identify(scan, true);
        assertThat(first.elements()).isEqualTo(second.elements());
        assertThat(first.shiftEv()).isEqualTo(second.shiftEv());
        assertThat(first.detail().orElseThrow().model().fittedSum())
                .isEqualTo(second.detail().orElseThrow().model().fittedSum());
    }

    @Test
    void workThatIsNoLongerWantedStops() {
        Work cancelled = new Work() {
            @Override
            public void check() {
                throw new CancellationException("not wanted");
            }

            @Override
            public void progress(double done, String what) {}
        };
        BindingScan scan = new Sketch(AL, 0).element("C", 9000).scan(12);
        assertThatThrownBy(() -> new SurveyIdentification(ReferenceData.shipped(), SETTINGS)
                        .identify(scan, new Transmission.Flat(), Set.of(), OptionalDouble.empty(), true, cancelled))
                .isInstanceOf(CancellationException.class);
    }

    @Test
    void sentencesKnowNoLocale() {
        assertThat(Locale.getDefault().getLanguage()).isEqualTo("tr");
        BindingScan scan =
                new Sketch(AL, 0).element("C", 9000).element("Si", 9000).scan(13);
        String reason = identify(scan, true)
                .element("Si")
                .orElseThrow()
                .evidence()
                .reasons()
                .get(0);
        assertThat(reason).contains("Si 2p at 99.").contains("sigma").doesNotContain("ı");
    }
}
