package spotline.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import spotline.reference.AugerLine;
import spotline.reference.Elements;
import spotline.reference.ReferenceData;

class DemoModelTest {
    private static final double PHOTON_EV = 1486.69;
    private static final AtomicData ATOMS = new ReferenceAtoms(PHOTON_EV);
    private static final DemoModel MODEL = new DemoModel(Footbridge.INSTRUMENT, ATOMS, LossFunction.UNIVERSAL);
    private static final AnalyserMode NARROW = Footbridge.INSTRUMENT.narrow();
    private static final Medium SILICA = new Medium(2.19, 60.084, 3, 16, 9.1);

    static List<SpotPlan> spots() {
        return Footbridge.spots();
    }

    private static Surface silica(double overlayerNm) {
        return new Surface(
                "silica",
                SILICA,
                List.of(
                        new ElementState("Si", "SiO2", 1, "2p3/2", 103.4, 1),
                        new ElementState("O", "SiO2", 2, "1s", 532.9, 1)),
                new Overlayer(overlayerNm, 284.8),
                0,
                0,
                OptionalDouble.empty());
    }

    private static double area(Surface surface, String element, String shell) {
        return MODEL.lines(surface, NARROW).stream()
                .filter(line -> line.element().equals(element) && line.line().equals(shell))
                .mapToDouble(Emission::area)
                .sum();
    }

    @Test
    void aBareSurfaceGivesCrossSectionTimesDensityTimesMeanFreePath() { // derived, closed form
        double oxygenPerNm3 = 2 * 2.19 / 60.084 * 602.214076;
        double expected = 2.9294 * oxygenPerNm3 * ATOMS.inelasticMeanFreePathNm(SILICA, PHOTON_EV - 532.9);
        assertThat(area(silica(0), "O", "1s")).isCloseTo(expected, within(1e-4 * expected)); // EPDL2017: 2.9294
    }

    @Test
    void theOverlayerTakesTheSubstrateDownAndGivesItsOwn() { // derived, closed form
        double length = 0.00837 * Math.pow(PHOTON_EV - 103.4, 0.842);
        assertThat(area(silica(1), "Si", "2p") / area(silica(0), "Si", "2p"))
                .isCloseTo(Math.exp(-1 / length), within(1e-4)); // 2p1/2 is 0.6 eV slower
        double carbon = 0.00837 * Math.pow(PHOTON_EV - 284.8, 0.842);
        double expected = Overlayer.CARBON_PER_NM3 * carbon * (1 - Math.exp(-1 / carbon));
        assertThat(area(silica(1), "C", "1s")).isCloseTo(expected, within(2e-3 * expected)); // its states differ in KE
    }

    /** Apparent composition of silica under 0, 0.5, 1 and 2 nm of pure hydrocarbon, layer oxygen taken off again. */
    @ParameterizedTest
    @CsvSource({"0, 0, 33.57, 66.43", "0.5, 8.60, 31.71, 59.69", "1, 17.13, 29.69, 53.18", "2, 33.39, 25.40, 41.21"
    }) // derived independently of this code, same model
    void silicaUnderHydrocarbonHasTheIndependentComposition(double nm, double carbon, double silicon, double oxygen) {
        Surface surface = silica(nm);
        double c = nm > 0 ? amount(surface, "C", "1s") : 0;
        double o = MODEL.apparentStates(surface, "O", "1s").get("SiO2");
        double si = amount(surface, "Si", "2p");
        double sum = c + o + si;
        assertThat(100 * c / sum).isCloseTo(carbon, within(0.05));
        assertThat(100 * si / sum).isCloseTo(silicon, within(0.05));
        assertThat(100 * o / sum).isCloseTo(oxygen, within(0.05));
    }

    private static double amount(Surface surface, String element, String shell) {
        return MODEL.apparentStates(surface, element, shell).values().stream()
                .mapToDouble(Double::doubleValue)
                .sum();
    }

    @ParameterizedTest
    @MethodSource("spots")
    void theApparentCompositionSumsToAHundredAndEveryElementIsWellSeen(SpotPlan spot) {
        Map<String, Double> percent = MODEL.apparentPercent(spot.surface(), spot.quantified());
        assertThat(percent.values().stream().mapToDouble(Double::doubleValue).sum())
                .isCloseTo(100, within(1e-9));
        assertThat(percent.values()).allMatch(value -> value >= 1.5);
        assertThat(percent.keySet())
                .containsExactlyInAnyOrderElementsOf(MODEL.lines(spot.surface(), NARROW).stream()
                        .map(Emission::element)
                        .distinct()
                        .toList());
    }

    /** The zero-loss lines of a spot, put through the grid without losses, integrate to what was asked. */
    @ParameterizedTest
    @MethodSource("spots")
    void zeroLossLinesIntegrateToTheirAreas(SpotPlan spot) {
        List<Emission> lines = MODEL.emissions(spot.surface(), NARROW);
        double asked = lines.stream().mapToDouble(Emission::area).sum();
        double[] values =
                LossSpectrum.of(lines, LossSpectrum.transformOf(loss -> 0)).values(0);
        double sum = 0;
        for (double value : values) sum += value;
        assertThat(sum * LossSpectrum.STEP_EV).isCloseTo(asked, within(1e-9 * asked)); // closed form
    }

    /** Strongest features stand where the reference table has the element's Auger line, within its 4 eV. */
    @Test
    void augerFeaturesStandWhereTheTableHasThem() {
        for (String element : List.of("C", "N", "O", "F", "Na", "Ti", "Cu", "Zn", "Ag")) {
            for (AugerLine line : ReferenceData.shipped()
                    .augerLines(Elements.bySymbol(element).orElseThrow())) {
                assertThat(AugerGroup.of(element))
                        .as(line.toString())
                        .anyMatch(group -> Math.abs(group.kineticEv() - line.kineticEv()) <= 4);
            }
        }
    }

    @Test
    void augerSharesDoNotExceedTheHoles() {
        for (String element : List.of("C", "O", "F", "Na", "Ti", "Cu", "Zn", "Ag")) {
            for (AtomicData.Level level : ATOMS.levels(element)) {
                double shares = AugerGroup.of(element).stream()
                        .filter(group -> group.levels().contains(level.level()))
                        .mapToDouble(AugerGroup::share)
                        .sum();
                assertThat(shares).as(element + " " + level.level()).isLessThanOrEqualTo(1 + 1e-12);
            }
        }
    }

    @Test
    void thePotentialMovesEveryLineAndNoArea() {
        Surface still = Footbridge.spots().get(0).surface();
        Surface moved = new Surface(
                still.name(),
                still.medium(),
                still.states(),
                still.overlayer(),
                still.potentialEv() + 1,
                still.driftEv(),
                still.conductionBand());
        List<Emission> before = MODEL.emissions(still, NARROW);
        List<Emission> after = MODEL.emissions(moved, NARROW);
        assertThat(after).hasSameSizeAs(before);
        for (int i = 0; i < before.size(); i++) {
            assertThat(after.get(i).area()).isEqualTo(before.get(i).area());
            assertThat(after.get(i).peaks().get(0).bindingEv())
                    .isCloseTo(before.get(i).peaks().get(0).bindingEv() + 1, within(1e-9));
        }
    }

    @Test
    void silverShowsAFermiEdgeAtZero() {
        SpotPlan strip = Footbridge.spots().get(3);
        Scan scan = new Scan("valence", "band", NARROW, 14, -4, 0.1, 0.1, 1);
        double[] counts = MODEL.expectedCounts(MODEL.spectrum(strip.surface(), NARROW), scan, 0);
        double below = counts[scan.channels() - 1 - 10]; // -3 eV: nothing but the secondary background
        double above = counts[120]; // 2 eV
        double atEdge = counts[140]; // 0 eV
        assertThat(above).isGreaterThan(2 * below);
        assertThat((atEdge - below) / (above - below)).isCloseTo(0.5, within(0.05)); // derived, symmetric edge
    }

    @Test
    void aLevelOutOfReachIsRefused() {
        Surface surface = new Surface(
                "x",
                SILICA,
                List.of(new ElementState("Si", "x", 1, "1s", 1839, 1)),
                new Overlayer(0, 284.8),
                0,
                0,
                OptionalDouble.empty());
        assertThatThrownBy(() -> MODEL.lines(surface, NARROW))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("Si has no level 1s");
    }
}
