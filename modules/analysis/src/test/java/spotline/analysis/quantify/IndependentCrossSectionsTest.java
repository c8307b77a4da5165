package spotline.analysis.quantify;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import spotline.reference.Line;
import spotline.reference.ReferenceData;

/**
 * Theoretical factors without mean free path and angle are the cross sections of an X-ray library that has its own tables.
 * No such library is to be had as a Java artefact; the resource was computed with it once and names it.
 */
class IndependentCrossSectionsTest {
    private static final String TABLE = "/spotline/analysis/quantify/xraylib-relative-cross-sections.csv";
    private static final double[] PHOTONS = {1253.6, 1486.6, 2984.3};

    private final TheoreticalFactors factors = new TheoreticalFactors(
            ReferenceData.shipped(),
            new FactorSettings(
                    FactorKind.THEORETICAL,
                    new MeanFreePathModel.Power(0),
                    new Anisotropy(Anisotropy.Kind.NONE, 14, 0),
                    0.05,
                    0.05,
                    0.05,
                    54.7));

    private List<double[]> ratios() throws IOException {
        List<double[]> ratios = new ArrayList<>();
        try (BufferedReader lines = new BufferedReader(
                new InputStreamReader(requireNonNull(getClass().getResourceAsStream(TABLE)), StandardCharsets.UTF_8))) {
            for (String row : lines.lines().toList()) {
                if (row.startsWith("#") || row.startsWith("line,")) continue;
                String[] cells = row.split(",", -1);
                double[] ratio = new double[PHOTONS.length];
                for (int i = 0; i < PHOTONS.length; i++) {
                    double own = factors.factor(Line.parse(cells[0]), PHOTONS[i], 1000, OptionalDouble.empty())
                            .orElseThrow()
                            .value();
                    ratio[i] = own / Double.parseDouble(cells[i + 1]);
                    assertThat(ratio[i]).as(cells[0] + " at " + PHOTONS[i]).isBetween(0.98, 1.02);
                }
                ratios.add(ratio);
            }
        }
        return ratios;
    }

    @Test
    void ratiosToCarbonAgreeWithAnotherLibrary() throws IOException {
        List<double[]> ratios = ratios();
        assertThat(ratios).hasSize(50);
        for (int i = 0; i < PHOTONS.length; i++) {
            int source = i;
            double squares = ratios.stream()
                    .mapToDouble(r -> (r[source] - 1) * (r[source] - 1))
                    .sum();
            assertThat(Math.sqrt(squares / ratios.size()))
                    .as("scatter at %s eV", PHOTONS[i])
                    .isLessThan(0.005);
        }
    }
}
