package spotline.numerics.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import spotline.core.Work;
import spotline.numerics.Table;
import spotline.numerics.TextTable;

/** NIST/ITL StRD nonlinear regression: certified values from both starts, all sets with one setting. */
class StrdNonlinearTest {
    private static final List<List<String>> CERTIFIED =
            TextTable.read("strd/certified.csv").rows();

    static List<String> sets() {
        return CERTIFIED.stream().map(row -> row.get(0)).distinct().toList();
    }

    @ParameterizedTest
    @MethodSource("sets")
    void certifiedFromTheFirstStart(String name) {
        check(name, 3);
    }

    @ParameterizedTest
    @MethodSource("sets")
    void certifiedFromTheSecondStart(String name) {
        check(name, 4);
    }

    @ParameterizedTest
    @MethodSource("sets")
    void certifiedWithoutDerivatives(String name) {
        // differences of second order are worth about ten digits of the derivatives
        Set set = new Set(name);
        FitResult result = Fit.solve(set.problem(4, false), FitSettings.CAUTIOUS, Work.UNWATCHED);
        for (List<String> row : set.rows) {
            double certified = Double.parseDouble(row.get(5));
            double digits = name.equals("Lanczos1") ? 1e-9 : 1e-5;
            assertThat(result.value(row.get(2)))
                    .as(row.get(2))
                    .isCloseTo(certified, within(Math.abs(certified) * digits));
        }
    }

    private static void check(String name, int start) {
        Set set = new Set(name);
        FitResult result = Fit.solve(set.problem(start, true), FitSettings.CAUTIOUS, Work.UNWATCHED);
        assertThat(result.stopReason()).isEqualTo(StopReason.PRECISION_REACHED);
        for (List<String> row : set.rows) {
            String parameter = row.get(2);
            double relative = row.get(1).equals("Higher") ? 1e-6 : 1e-9;
            double certified = Double.parseDouble(row.get(5));
            assertThat(result.value(parameter))
                    .as(parameter)
                    .isCloseTo(certified, within(Math.abs(certified) * relative));
            // the residual of Lanczos1 is the rounding of its data: nothing certifies its square
            double deviation = Double.parseDouble(row.get(6));
            double tolerance = name.equals("Lanczos1") ? 0.01 : 1e-5;
            assertThat(result.standardUncertainty(parameter).orElseThrow())
                    .as("standard deviation of " + parameter)
                    .isCloseTo(deviation, within(deviation * tolerance));
        }
        if (name.equals("Lanczos1")) return;
        for (List<String> row : TextTable.read("strd/residuals.csv").rows()) {
            if (!row.get(0).equals(name)) continue;
            double rss = Double.parseDouble(row.get(2));
            assertThat(result.chiSquare()).isCloseTo(rss, within(1e-9 * rss));
        }
    }

    /** One data set. */
    private static final class Set {
        final List<List<String>> rows;
        private final double[] y;
        private final double[][] x;
        private final StrdModels.Model model;

        Set(String name) {
            rows = CERTIFIED.stream().filter(row -> row.get(0).equals(name)).toList();
            model = StrdModels.ALL.get(name);
            List<double[]> data = Table.read("strd/" + name + ".csv").rows();
            y = new double[data.size()];
            x = new double[data.size()][];
            for (int i = 0; i < y.length; i++) {
                double[] row = data.get(i);
                y[i] = name.equals("Nelson") ? Math.log(row[0]) : row[0];
                x[i] = Arrays.copyOfRange(row, 1, row.length);
            }
        }

        FitProblem problem(int start, boolean derivatives) {
            List<Parameter> parameters = new ArrayList<>();
            for (List<String> row : rows) {
                parameters.add(Parameter.free(row.get(2), Double.parseDouble(row.get(start))));
            }
            int m = rows.size();
            ModelFunction.Values values = (b, out) -> {
                for (int i = 0; i < y.length; i++) out[i] = model.at(x[i], b, new double[m]);
            };
            ModelFunction.Derivatives slopes = (b, out) -> {
                double[] d = new double[m];
                for (int i = 0; i < y.length; i++) {
                    model.at(x[i], b, d);
                    for (int k = 0; k < m; k++) out[k][i] = d[k];
                }
            };
            ModelFunction function =
                    derivatives ? ModelFunction.of(y.length, m, values, slopes) : ModelFunction.of(y.length, m, values);
            return FitProblem.of(function, y, Weighting.UNWEIGHTED, parameters);
        }
    }
}
