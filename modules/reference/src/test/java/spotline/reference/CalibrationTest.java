package spotline.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CalibrationTest {
    private final ReferenceData data = ReferenceData.shipped();

    // Universal values, from memory
    @ParameterizedTest
    @CsvSource({
        "Al Ka, false, 1486.6",
        "Al Ka, true, 1486.69",
        "Mg Ka, false, 1253.6",
        "Ag La, true, 2984.3",
        "Cr Ka, true, 5414.7",
        "Ga Ka, true, 9251.7"
    })
    void photonEnergies(String name, boolean mono, double photonEv) {
        XraySource source = data.source(name, mono).orElseThrow();
        assertThat(source.photonEnergyEv()).isEqualTo(photonEv);
        assertThat(source.name()).isEqualTo(name);
        assertThat(source.naturalWidthEv()).isPositive();
        assertThat(data.sourceNear(photonEv, mono)).contains(source);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Al Ka",
                "al ka",
                "AlKa",
                "Al K-alpha",
                "Al K\u03b1",
                "Al K\u03b11,2",
                "AL",
                "Al",
                "Al mono",
                "Al Ka monochromated"
            })
    void labelsAreReadLeniently(String label) {
        assertThat(data.source(label, true).map(XraySource::photonEnergyEv)).contains(1486.69);
    }

    @Test
    void whatIsNotUsedIsNotThere() {
        assertThat(data.source("Mg Ka", true)).isEmpty();
        assertThat(data.source("O Ka", false))
                .as("stray radiation is no source")
                .isEmpty();
        assertThat(data.source("", false)).isEmpty();
        assertThat(data.source("synchrotron", false)).isEmpty();
        assertThat(data.sourceNear(1300, false)).isEmpty();
        assertThat(data.xraySources()).hasSize(13);
    }

    // ISO 15472: as public pages quote the standard (monochromated), the rest from memory
    @Test
    void referenceEnergies() {
        Map<String, Double> mono = data
                .calibrationEnergies(data.source("Al Ka", true).orElseThrow())
                .stream()
                .collect(Collectors.toMap(CalibrationEnergy::line, CalibrationEnergy::bindingEv));
        assertThat(mono)
                .containsExactlyInAnyOrderEntriesOf(
                        Map.of("Au 4f7/2", 83.96, "Ag 3d5/2", 368.21, "Cu 2p3/2", 932.62, "Cu 3p3/2", 75.13));
        List<CalibrationEnergy> magnesium =
                data.calibrationEnergies(data.source("Mg Ka", false).orElseThrow());
        assertThat(magnesium).hasSize(6);
        assertThat(magnesium)
                .filteredOn(CalibrationEnergy::informationOnly)
                .extracting(CalibrationEnergy::line)
                .containsExactlyInAnyOrder("Au 4f7/2", "Ag 3d5/2");
        assertThat(magnesium).allMatch(energy -> energy.standardUncertaintyEv() == 0.02);
        assertThat(data.calibrationEnergies(data.source("Ga Ka", true).orElseThrow()))
                .isEmpty();
    }

    @Test
    void augerReferenceEnergiesMoveWithTheSource() {
        double aluminium = energy("Al Ka", "Cu L3VV");
        double magnesium = energy("Mg Ka", "Cu L3VV");
        // ISO 15472, from memory: 567.93 and 334.90, apart by the photon energies
        assertThat(aluminium - magnesium).isEqualTo(1486.6 - 1253.6, within(0.05));
    }

    private double energy(String source, String line) {
        return data.calibrationEnergies(data.source(source, false).orElseThrow()).stream()
                .filter(energy -> energy.line().equals(line))
                .findFirst()
                .orElseThrow()
                .bindingEv();
    }

    @Test
    void earlierSetsDifferByLittle() {
        for (EarlierReferenceEnergy earlier : data.earlierReferenceEnergies()) {
            Line.find(earlier.line())
                    .ifPresent(line -> assertThat(earlier.bindingEv())
                            .as(earlier.toString())
                            .isEqualTo(data.bindingEnergy(line).orElseThrow().valueEv(), within(0.3)));
        }
    }

    // Handbook set, from memory
    @Test
    void satellites() {
        XraySource aluminium = data.source("Al Ka", false).orElseThrow();
        assertThat(data.satellites(aluminium)).hasSize(6);
        XraySatellite third = data.satellites(aluminium).stream()
                .filter(s -> s.line().equals("K-alpha3"))
                .findFirst()
                .orElseThrow();
        assertThat(third.displacementEv()).isEqualTo(9.8);
        assertThat(third.relativeHeight()).isEqualTo(0.064, within(1e-12));
        assertThat(third.otherDisplacementEv()).hasValue(9.6);
        assertThat(data.satellites(aluminium).get(0).otherRelativeHeight())
                .as("one set alone")
                .isEmpty();
        assertThat(data.satellites(data.source("Al Ka", true).orElseThrow())).isEmpty();
        assertThat(data.satellites(data.source("Ag La", false).orElseThrow())).isEmpty();
        assertThat(data.satellites(data.source("Mg Ka", false).orElseThrow()))
                .allMatch(s -> s.displacementEv() > 4 && s.relativeHeight() < 0.1);
    }

    @Test
    void ghostsAgreeWithTheirTable() {
        for (Table.Row row :
                Table.read(ReferenceData::open, "calibration/ghost-lines.csv").rows()) {
            checkGhost(row.text("contaminant"), 1253.6, row.number("apparent_shift_mg_ka_ev"));
            checkGhost(row.text("contaminant"), 1486.6, row.number("apparent_shift_al_ka_ev"));
        }
    }

    private void checkGhost(String contaminant, double photonEv, double shiftEv) {
        List<GhostLine> ghosts = data.ghostLines(photonEv).stream()
                .filter(ghost -> ghost.contaminant().equals(contaminant))
                .toList();
        if (shiftEv == 0) {
            assertThat(ghosts).as("a source is no ghost of itself").isEmpty();
        } else {
            assertThat(ghosts).hasSize(1);
            assertThat(ghosts.get(0).apparentShiftEv()).isEqualTo(shiftEv, within(1e-9));
            assertThat(ghosts.get(0).cause()).isNotBlank();
        }
    }

    @Test
    void adventitiousCarbon() {
        assertThat(data.carbonReferences()).hasSize(10);
        CarbonReference glossary = data.carbonReferences().get(0);
        assertThat(glossary.valueEv()).hasValue(285.0);
        assertThat(glossary.range()).contains(new EnergyRange(284.6, 285.2));
    }
}
