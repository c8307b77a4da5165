package spotline.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CrossSectionsTest {
    private static final double AL = 1486.6;

    private final ReferenceData data = ReferenceData.shipped();

    private double relative(String line, double photonEv) {
        return data.crossSection(Line.parse(line), photonEv).orElseThrow();
    }

    // Scofield, J. Electron Spectrosc. Relat. Phenom. 8 (1976) 129, Al K-alpha, relative to C 1s, from memory
    @ParameterizedTest
    @CsvSource({
        "C 1s, 1.00",
        "N 1s, 1.80",
        "O 1s, 2.93",
        "F 1s, 4.43",
        "Na 1s, 8.52",
        "Si 2p, 0.817",
        "Si 2s, 0.955",
        "S 2p, 1.68",
        "Cl 2p, 2.285",
        "Cu 2p3/2, 16.73",
        "Cu 2p1/2, 8.66",
        "Ag 3d5/2, 10.66",
        "Ag 3d3/2, 7.38",
        "Au 4f, 17.12"
    })
    void scofieldWithinOnePerCent(String line, double scofield) {
        assertThat(relative(line, AL)).isCloseTo(scofield, Percentage.withPercentage(1));
    }

    @Test
    void everyRememberedScofieldValueWithinOnePerCent() {
        for (Table.Row row : Table.read(ReferenceData::open, "cross-sections/scofield-1976-check.csv")
                .rows()) {
            double scofield = row.number("scofield1976_rel_from_memory");
            String line = row.text("element") + " " + row.text("line");
            assertThat(relative(line, AL)).as(line).isCloseTo(scofield, Percentage.withPercentage(1));
        }
    }

    @Test
    void carbonIsOneAtEveryEnergy() {
        for (double photonEv : new double[] {1253.6, 1486.69, 2000, 2984.3, 4510.9, 5414.7, 8047.8, 9251.7}) {
            assertThat(relative("C 1s", photonEv)).isEqualTo(1, within(1e-12));
        }
    }

    @Test
    void theMonochromatedSourceUsesTheColumnOfAlKa() {
        assertThat(relative("Ti 2p", 1486.69)).isEqualTo(relative("Ti 2p", 1486.6));
        assertThat(relative("Ti 2p", 1487.2)).isNotEqualTo(relative("Ti 2p", 1486.6));
    }

    @Test
    void betweenColumnsTheLogarithmsRunStraight() {
        double middle = Math.sqrt(1486.6 * 2984.3);
        double expected = Math.sqrt(relative("Ag 3d", 1486.6) * relative("Ag 3d", 2984.3));
        assertThat(relative("Ag 3d", middle)).isCloseTo(expected, Percentage.withPercentage(1e-10));
    }

    @Test
    void outOfReachIsEmpty() {
        assertThat(data.crossSection(Line.parse("C 1s"), 1000)).isEmpty();
        assertThat(data.crossSection(Line.parse("C 1s"), 1252.9)).isEmpty();
        assertThat(data.crossSection(Line.parse("C 1s"), 9253)).isEmpty();
        assertThat(data.crossSection(Line.parse("Mg 1s"), 1253.6)).isEmpty();
        assertThat(data.crossSection(Line.parse("Si 1s"), AL)).isEmpty();
        assertThat(data.crossSection(Line.parse("Si 1s"), 2000))
                .as("one column alone")
                .isEmpty();
        assertThat(data.crossSection(Line.parse("Si 1s"), 2984.3)).isPresent();
        assertThat(data.crossSection(Line.parse("C 3d"), AL)).isEmpty();
    }

    @Test
    void aWholeDoubletIsTheSumOfItsComponents() {
        for (Element element : Elements.all()) {
            for (LineData line : data.lines(element, AL)) {
                double sum = line.members().stream()
                        .mapToDouble(member -> data.crossSection(member, AL).orElse(0))
                        .sum();
                assertThat(line.relativeCrossSection())
                        .as(line.line().toString())
                        .isCloseTo(sum, Percentage.withPercentage(0.02));
            }
        }
    }

    @Test
    void allCrossSectionsArePositiveAndSubstantialInSize() {
        for (Table.Row row :
                Table.read(ReferenceData::open, "cross-sections/subshell.csv").rows()) {
            for (String source : List.of("mg_ka", "al_ka", "ag_la", "cr_ka", "ga_ka")) {
                row.optional("rel_c1s_" + source)
                        .ifPresent(value -> assertThat(value).isBetween(1e-9, 1e4));
                assertThat(row.has("rel_c1s_" + source)).isEqualTo(row.has("sigma_barn_" + source));
            }
        }
    }

    @Test
    void everyFlagOfTheTableIsAWarningHere() {
        double[] photonEv = {1253.6, 1486.6, 2984.3, 5414.7, 9251.7};
        List<String> columns = List.of("MgKa", "AlKa", "AgLa", "CrKa", "GaKa");
        int flagged = 0;
        for (Table.Row row :
                Table.read(ReferenceData::open, "cross-sections/subshell.csv").rows()) {
            Line line = new Line(row.text("symbol"), Orbital.parse(row.text("orbital")));
            for (int i = 0; i < photonEv.length; i++) {
                if (row.text("flags").contains(columns.get(i))) {
                    flagged++;
                    assertThat(data.nearThreshold(line, photonEv[i]))
                            .as(line.toString())
                            .isTrue();
                    assertThat(data.nearThreshold(line.whole(), photonEv[i])).isTrue();
                }
            }
        }
        assertThat(flagged).isEqualTo(28);
        assertThat(data.nearThreshold(Line.parse("C 1s"), AL)).isFalse();
    }

    // Frozen output of cross-sections/asymmetry-program for Al K-alpha; s subshells are exactly 2 in its model
    @ParameterizedTest
    @CsvSource({"C 1s, 2.0000", "Si 2p, 1.0252", "Ti 2p, 1.3969", "Ag 3d, 1.2101", "Au 4f, 1.0319", "Au 4f7/2, 1.0319"})
    void asymmetry(String line, double beta) {
        assertThat(data.asymmetry(Line.parse(line), AL)).hasValue(beta);
        assertThat(data.asymmetry(Line.parse(line), 1486.69)).hasValue(beta);
    }

    // The model's own cross sections against EPDL2017: medians over all levels, measured
    @ParameterizedTest
    @CsvSource({"mg_ka, 1.036", "al_ka, 1.026", "ag_la, 0.999", "cr_ka, 0.980", "ga_ka, 0.958"})
    void theModelBehindBetaReproducesCrossSections(String source, double median) {
        double[] ratios = Table.read(ReferenceData::open, "cross-sections/asymmetry-beta.csv").rows().stream()
                .flatMapToDouble(row -> row.optional("sigma_ratio_to_epdl_" + source).stream())
                .sorted()
                .toArray();
        assertThat(ratios.length).isGreaterThan(600);
        assertThat(ratios[ratios.length / 2]).isEqualTo(median, within(0.001));
    }

    @Test
    void asymmetryStaysBetweenItsBoundsAndInterpolates() {
        for (Element element : Elements.all()) {
            for (LineData line : data.lines(element, AL)) {
                data.asymmetry(line.line(), AL)
                        .ifPresent(beta -> assertThat(beta).isBetween(-1.0, 2.0));
            }
        }
        double low = data.asymmetry(Line.parse("Ag 3d"), 1486.6).orElseThrow();
        double high = data.asymmetry(Line.parse("Ag 3d"), 2984.3).orElseThrow();
        double middle = data.asymmetry(Line.parse("Ag 3d5/2"), Math.sqrt(1486.6 * 2984.3))
                .orElseThrow();
        assertThat(middle).isEqualTo((low + high) / 2, within(1e-12));
    }

    // derived, closed form: beta = 2
    @ParameterizedTest
    @CsvSource({"45, 0.75, 1e-12", "54.7356103172, 1.00, 1e-10", "60, 1.125, 1e-12", "90, 1.50, 1e-12", "0, 0, 1e-12"})
    void angularFactor(double angleDeg, double factor, double tolerance) {
        assertThat(Angular.factor(2, angleDeg)).isEqualTo(factor, within(tolerance));
        assertThat(Angular.factor(0, angleDeg)).isEqualTo(1);
    }
}
