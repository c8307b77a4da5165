package spotline.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashMap;
import java.util.Map;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ElementsTest {
    // IUPAC/CIAAW abridged standard atomic weights 2021, from memory
    @ParameterizedTest
    @CsvSource({
        "1, H, hydrogen, 1.0080", "6, C, carbon, 12.011", "8, O, oxygen, 15.999", "16, S, sulfur, 32.06",
        "22, Ti, titanium, 47.867", "29, Cu, copper, 63.546", "49, In, indium, 114.82", "55, Cs, caesium, 132.91",
        "79, Au, gold, 196.97", "82, Pb, lead, 207.2", "92, U, uranium, 238.03", "98, Cf, californium, 251"
    })
    void elements(int z, String symbol, String name, double weight) {
        Element element = Elements.byNumber(z).orElseThrow();
        assertThat(element).isEqualTo(new Element(z, symbol, name, weight));
        assertThat(Elements.bySymbol(symbol)).contains(element);
    }

    @Test
    void numbersRunWithoutAGapAndSymbolsAreCaseSensitive() {
        assertThat(Elements.all()).hasSize(98);
        for (int i = 0; i < 98; i++) assertThat(Elements.all().get(i).z()).isEqualTo(i + 1);
        assertThat(Elements.bySymbol("CO")).isEmpty();
        assertThat(Elements.bySymbol("co")).isEmpty();
        assertThat(Elements.bySymbol("")).isEmpty();
        assertThat(Elements.byNumber(0)).isEmpty();
        assertThat(Elements.byNumber(99)).isEmpty();
    }

    // Elam, Ravel, Sieber 2002; Ti and Ge were revised since
    @Test
    void weightsAgreeWithAnIndependentTable() {
        for (Table.Row row :
                Table.read(ReferenceData::open, "constants/elements.csv").rows()) {
            if (!row.yes("standard")) continue;
            double limit = row.text("symbol").equals("Ti") || row.text("symbol").equals("Ge") ? 0.06 : 0.02;
            assertThat(row.number("atomic_weight"))
                    .as(row.text("symbol"))
                    .isCloseTo(row.number("elam2002_atomic_weight"), Percentage.withPercentage(limit));
        }
    }

    // CODATA 2022
    @Test
    void constantsAreThoseOfTheTable() {
        Map<String, Double> codata = new HashMap<>();
        for (Table.Row row :
                Table.read(ReferenceData::open, "constants/codata.csv").rows()) {
            codata.put(row.text("name"), row.number("value"));
        }
        assertThat(KnownConstants.ELECTRON_REST_ENERGY_EV)
                .isEqualTo(1e6 * codata.get("electron mass energy equivalent in MeV"), within(1e-6));
        assertThat(KnownConstants.AVOGADRO_PER_MOL).isEqualTo(codata.get("Avogadro constant"));
        assertThat(KnownConstants.BOLTZMANN_EV_PER_K)
                .isEqualTo(codata.get("Boltzmann constant") / codata.get("elementary charge"), within(1e-18))
                .isEqualTo(codata.get("Boltzmann constant in eV/K"), within(1e-18));
    }
}
