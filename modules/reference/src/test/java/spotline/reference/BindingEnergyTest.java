package spotline.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BindingEnergyTest {
    private final ReferenceData data = ReferenceData.shipped();

    private double energy(String line) {
        return data.bindingEnergy(Line.parse(line)).orElseThrow().valueEv();
    }

    // Well-known positions in solids, from memory; Cu, Ag, Au: ISO 15472
    @ParameterizedTest
    @CsvSource({
        "C 1s, 284.5, 285.0",
        "O 1s, 531, 533",
        "N 1s, 399, 401",
        "F 1s, 684.5, 689",
        "Si 2p3/2, 99.2, 99.6",
        "Al 2p, 72.6, 73.0",
        "Ti 2p3/2, 453.7, 454.2",
        "Fe 2p3/2, 706.6, 707.0",
        "Cu 2p3/2, 932.6, 932.7",
        "Zn 2p3/2, 1021.5, 1021.9",
        "Ag 3d5/2, 368.1, 368.3",
        "Au 4f7/2, 83.9, 84.0",
        "In 3d5/2, 443.7, 444.1",
        "Sn 3d5/2, 484.8, 485.2",
        "Pb 4f7/2, 136.7, 137.1",
        "Na 1s, 1071, 1072",
        "Cl 2p3/2, 198, 200",
        "Ca 2p3/2, 346, 347.5",
        "K 2p3/2, 292.5, 294",
        "S 2p3/2, 163.8, 164.2",
        "P 2p, 129.6, 130.2",
        "Mo 3d5/2, 227.8, 228.2",
        "W 4f7/2, 31.2, 31.5",
        "Pt 4f7/2, 70.9, 71.3",
        "Ta 4f7/2, 21.5, 21.9",
        "Mg 1s, 1302.8, 1303.4",
        "Ba 3d5/2, 779.5, 781",
        "Ar 2p3/2, 241, 243",
    })
    void knownPositions(String line, double low, double high) {
        assertThat(energy(line)).isBetween(low, high);
    }

    @Test
    void aWholeDoubletLiesWhereItsStrongerComponentDoes() {
        assertThat(energy("Ti 2p")).isEqualTo(energy("Ti 2p3/2"));
        assertThat(energy("Au 4f")).isEqualTo(energy("Au 4f7/2"));
        assertThat(energy("Ni 3p")).isEqualTo(energy("Ni 3p3/2"));
    }

    // Measured splittings, from memory; As 3d5/2 41.7: Elam, Ravel, Sieber 2002, which does not resolve the doublet
    @ParameterizedTest
    @CsvSource({"Ag 3d3/2, 374.21", "Au 4f5/2, 87.63", "Cu 2p1/2, 952.37", "Si 2p1/2, 99.9", "As 3d3/2, 42.39"})
    void theWeakerComponentLiesAboveByTheSplitting(String line, double expected) {
        assertThat(energy(line)).isEqualTo(expected, within(1e-9));
    }

    @Test
    void noCoreLevelHasItsWeakerComponentBelowTheStronger() {
        for (Element element : Elements.all()) {
            for (LineData line : data.lines(element, 5414.7)) {
                if (line.energy().valueEv() < 10
                        || data.bindingEnergy(line.line().low()).isEmpty()) continue;
                double low = data.bindingEnergy(line.line().low()).orElseThrow().valueEv();
                assertThat(low)
                        .as(line.line().toString())
                        .isGreaterThanOrEqualTo(line.energy().valueEv());
            }
        }
    }

    @Test
    void theGasValuesOfTheElamTableAreNeverUsedForSolids() {
        // Elam 2002: N 2s 37.3, F 2s 45.0, O 1s 543.1; Larkins 1977: 24.4, 34.0, 532.0
        assertThat(energy("N 2s")).isEqualTo(24.4);
        assertThat(energy("F 2s")).isEqualTo(34.0);
        assertThat(energy("O 1s")).isEqualTo(532.0);
        assertThat(data.stateRange(Line.parse("O 1s")).orElseThrow().highEv()).isLessThan(534);
    }

    @Test
    void everyValueSaysWhereItComesFrom() {
        assertThat(data.bindingEnergy(Line.parse("Au 4f7/2")).orElseThrow().source())
                .contains("ISO 15472");
        assertThat(data.bindingEnergy(Line.parse("Ti 2s")).orElseThrow().source())
                .contains("Williams");
        assertThat(data.bindingEnergy(Line.parse("O 1s")).orElseThrow().source())
                .contains("Larkins");
        assertThat(data.bindingEnergy(Line.parse("Kr 3p")).orElseThrow().source())
                .contains("gas");
        assertThat(data.bindingEnergy(Line.parse("K 2p")).orElseThrow().source())
                .contains("K+ salts");
    }

    @Test
    void noLevelMeansEmpty() {
        assertThat(data.bindingEnergy(Line.parse("H 2s"))).isEmpty();
        assertThat(data.stateRange(Line.parse("C 4f"))).isEmpty();
        assertThat(data.naturalWidth(Line.parse("C 4f"))).isEmpty();
    }

    // chemistry/chemical-states.csv, from memory; Ti metal 453.8, Al 72.5, Ce 883.8: Elam, Ravel, Sieber 2002
    @ParameterizedTest
    @CsvSource({
        "C 1s, 281.7, 293.4",
        "Ti 2p3/2, 453.8, 458.7",
        "Ti 2p, 453.8, 458.7",
        "Ti 2p1/2, 459.95, 464.75",
        "Al 2p, 72.5, 74.3",
        "S 2p, 161.5, 168.9",
        "Ce 3d5/2, 882.5, 883.8"
    })
    void searchWindowsSpanTheStatesAndTheElement(String line, double low, double high) {
        EnergyRange range = data.stateRange(Line.parse(line)).orElseThrow();
        assertThat(range.lowEv()).isEqualTo(low, within(1e-9));
        assertThat(range.highEv()).isEqualTo(high, within(1e-9));
    }

    @Test
    void thePreferredValueLiesInsideItsOwnRange() {
        for (Element element : Elements.all()) {
            for (LineData line : data.lines(element, 1486.6)) {
                EnergyRange range = data.stateRange(line.line()).orElseThrow();
                assertThat(range.contains(line.energy().valueEv()))
                        .as(line.line().toString())
                        .isTrue();
            }
        }
    }
}
