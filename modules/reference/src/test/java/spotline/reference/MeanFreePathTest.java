package spotline.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MeanFreePathTest {
    private final ReferenceData data = ReferenceData.shipped();

    // TPP-2M of Tanuma, Powell, Penn 1994 evaluated independently, rounded to 0.001 nm
    @ParameterizedTest
    @CsvSource({
        "0.92, 14.03, 6, 8.8, 2.259, 3.831, 5.011",
        "2.19, 60.084, 16, 9.1, 1.819, 3.038, 3.952",
        "2.33, 28.086, 4, 1.1, 1.412, 2.386, 3.112",
        "8.96, 63.546, 11, 0, 0.940, 1.545, 1.994"
    })
    void tpp2m(double density, double mass, double electrons, double gap, double at500, double at1000, double at1400) {
        Material material = new Material("test", density, mass, electrons, gap);
        assertThat(MeanFreePath.tpp2m(material, 500)).isEqualTo(at500, within(0.002));
        assertThat(MeanFreePath.tpp2m(material, 1000)).isEqualTo(at1000, within(0.002));
        assertThat(MeanFreePath.tpp2m(material, 1400)).isEqualTo(at1400, within(0.002));
    }

    @Test
    void tpp2mAgreesWithEveryCheckValue() {
        for (Table.Row row : Table.read(ReferenceData::open, "mean-free-path/tpp2m-check.csv")
                .rows()) {
            Material material = data.material(row.text("material")).orElseThrow();
            double energy = row.number("energy_ev");
            assertThat(MeanFreePath.tpp2m(material, energy))
                    .as(material.name() + " at " + energy)
                    .isEqualTo(row.number("imfp_nm"), within(1.01e-6));
            assertThat(MeanFreePath.tpp2mRelativistic(material, energy))
                    .as(material.name() + " at " + energy + ", relativistic")
                    .isEqualTo(row.number("imfp_relativistic_nm"), within(1.01e-6));
        }
    }

    // Optical data of Tanuma, Powell, Penn 2011, 2015: published RMS deviation of TPP-2M 10 to 12 %, most found here 17
    // %
    @Test
    void tpp2mStaysWithinItsPublishedScatterOfOpticalData() {
        double sum = 0;
        int count = 0;
        for (String symbol : new String[] {"Au", "Cu", "Si", "Ni", "Ge", "Ag", "W"}) {
            Material material = data.material(symbol).orElseThrow();
            for (Table.Row row : Table.read(ReferenceData::open, "mean-free-path/optical-elements.csv")
                    .rows()) {
                double energy = row.number("energy_ev");
                if (energy < 200 || energy > 2000) continue;
                double ratio = MeanFreePath.tpp2m(material, energy) / row.number(symbol);
                assertThat(ratio).as(symbol + " at " + energy).isBetween(0.825, 1.085);
                sum += (ratio - 1) * (ratio - 1);
                count++;
            }
        }
        assertThat(Math.sqrt(sum / count)).isLessThan(0.12);
        Material silica = data.material("SiO2").orElseThrow();
        for (Table.Row row : Table.read(ReferenceData::open, "mean-free-path/optical-sio2.csv")
                .rows()) {
            double energy = row.number("energy_ev");
            if (energy < 200 || energy > 2000) continue;
            double ratio = MeanFreePath.tpp2m(silica, energy) / row.number("SiO2");
            assertThat(ratio).as("SiO2 at " + energy).isBetween(1.0, 1.04);
        }
    }

    @Test
    void ratiosToOpticalDataAreThoseOfTheTable() {
        for (Table.Row row : Table.read(ReferenceData::open, "mean-free-path/tpp2m-against-optical.csv")
                .rows()) {
            Optional<Material> material = data.material(row.text("material"));
            if (material.isEmpty()) continue;
            double computed = MeanFreePath.tpp2m(material.get(), row.number("energy_ev"));
            assertThat(computed).isCloseTo(row.number("imfp_tpp2m_nm"), Percentage.withPercentage(0.1));
            assertThat(row.number("imfp_tpp2m_nm") / row.number("imfp_table_nm"))
                    .isEqualTo(row.number("ratio"), within(0.0007)); // rounding of all three columns
        }
    }

    // Seah, Spencer 2011: 0.00837 E^0.842, evaluated independently
    @ParameterizedTest
    @CsvSource({"1201.8, 3.281", "954.6, 2.702", "554.0, 1.709"})
    void organicAttenuationLength(double kineticEv, double nm) {
        assertThat(MeanFreePath.organicEal(kineticEv)).isEqualTo(nm, within(0.0006));
    }

    // derived, closed form: transmission of 1 nm and 2 nm of organic at normal emission
    @ParameterizedTest
    @CsvSource({"954.6, 0.691, 0.477", "554.0, 0.557, 0.310"})
    void transmissionOfAnOrganicLayer(double kineticEv, double oneNm, double twoNm) {
        double length = MeanFreePath.organicEal(kineticEv);
        assertThat(Math.exp(-1 / length)).isEqualTo(oneNm, within(0.0006));
        assertThat(Math.exp(-2 / length)).isEqualTo(twoNm, within(0.0006));
    }

    @Test
    void powerLaw() {
        assertThat(MeanFreePath.powerLaw(1000)).isEqualTo(1);
        // derived, closed form: (lambda T) of F 1s over C 1s with T ~ E^-0.5 at Al K-alpha
        double ratio = MeanFreePath.powerLaw(799.6) / MeanFreePath.powerLaw(1201.8) * Math.sqrt(1201.8 / 799.6);
        assertThat(ratio).isEqualTo(0.903, within(0.0005));
    }

    @Test
    void seahFormulasAgreeWithTheirCheckTable() {
        for (Table.Row row :
                Table.read(ReferenceData::open, "mean-free-path/s1-check.csv").rows()) {
            double z = row.number("z");
            double a = row.number("a_nm");
            double w = row.number("w");
            double energy = row.number("energy_ev");
            Percentage close = Percentage.withPercentage(0.1); // the table rounds a and W
            assertThat(MeanFreePath.s1(z, a, w, energy)).isCloseTo(row.number("s1_nm"), close);
            assertThat(MeanFreePath.s2(z, a, energy)).isCloseTo(row.number("s2_nm"), close);
            assertThat(MeanFreePath.s3(z, a, w, energy)).isCloseTo(row.number("s3_nm"), close);
            assertThat(MeanFreePath.s4(z, energy)).isCloseTo(row.number("s4_nm"), close);
        }
    }

    // mean-free-path/s1-check.csv; cube root of M / (rho N_A)
    @ParameterizedTest
    @CsvSource({"Au, 1, 0.25686", "Cu, 1, 0.22751", "Ag, 1, 0.25743", "Si, 1, 0.27152", "SiO2, 3, 0.24764"})
    void atomSize(String name, int atoms, double nm) {
        Material material = data.material(name).orElseThrow();
        assertThat(MeanFreePath.atomSizeNm(material, atoms)).isEqualTo(nm, within(0.00005));
    }

    // derived, closed form: 143/1e6 + 0.054 sqrt(1000)
    @Test
    void universalCurve() {
        assertThat(MeanFreePath.universalCurve(1000)).isEqualTo(1.70777294, within(1e-8));
    }

    @Test
    void noLengthIsAnError() {
        Material silicon = data.material("Si").orElseThrow();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> MeanFreePath.tpp2m(silicon, 0))
                .withMessageContaining("TPP-2M");
        assertThatIllegalArgumentException().isThrownBy(() -> MeanFreePath.organicEal(-5));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Material("x", 0, 28, 4, 1))
                .withMessageContaining("density");
        assertThatIllegalArgumentException().isThrownBy(() -> new Material("x", 2, 28, 4, -1));
    }

    @Test
    void derivedParametersOfTheMaterialsFollowFromThem() {
        for (Table.Row row :
                Table.read(ReferenceData::open, "mean-free-path/materials.csv").rows()) {
            double u = row.number("valence_electrons") * row.number("density_g_cm3") / row.number("molar_mass_g_mol");
            assertThat(28.8 * Math.sqrt(u)).isEqualTo(row.number("plasmon_ev"), within(1e-4));
        }
    }
}
