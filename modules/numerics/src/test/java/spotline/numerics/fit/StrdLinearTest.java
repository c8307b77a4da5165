package spotline.numerics.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import spotline.core.Work;
import spotline.numerics.Table;
import spotline.numerics.TextTable;

/** NIST/ITL StRD linear regression through the same engine, from zeros, against the exact rational solution. */
class StrdLinearTest {
    /**
     * Digits of the worst parameter. Below nine where double precision ends: the columns of Filip are dependent to ten
     * digits, the residuals of Wampler4 and Wampler5 are 1e5 and 1e7 times the coefficients.
     */
    @ParameterizedTest
    @CsvSource({
        "norris,9",
        "pontius,9",
        "noint1,9",
        "noint2,9",
        "filip,7",
        "longley,9",
        "wampler1,9",
        "wampler2,9",
        "wampler3,9",
        "wampler4,7",
        "wampler5,5"
    })
    void solvesTo(String name, int digits) {
        List<List<String>> certified = TextTable.read("strd/linear/certified.csv").rows().stream()
                .filter(row -> row.get(0).equals(name))
                .toList();
        Table data = Table.read("strd/linear/" + name + ".csv");
        int n = data.rows().size();
        double[] y = new double[n];
        for (int i = 0; i < n; i++) y[i] = data.rows().get(i)[0];
        int m = certified.size();
        List<Parameter> parameters = new ArrayList<>();
        for (List<String> row : certified) parameters.add(Parameter.free(row.get(1), 0));
        ModelFunction model = ModelFunction.of(
                n,
                m,
                (b, out) -> {
                    for (int i = 0; i < n; i++) out[i] = value(name, data, i, b);
                },
                (b, out) -> {
                    for (int i = 0; i < n; i++) {
                        for (int k = 0; k < m; k++) out[k][i] = regressor(name, data, i, k);
                    }
                });
        FitResult result = Fit.solve(
                FitProblem.of(model, y, Weighting.UNWEIGHTED, parameters), FitSettings.CAUTIOUS, Work.UNWATCHED);
        double worst = 0;
        for (List<String> row : certified) {
            double exact = Double.parseDouble(row.get(2));
            worst = Math.max(worst, Math.abs(result.value(row.get(1)) / exact - 1));
            double deviation = Double.parseDouble(row.get(3));
            double found = result.standardUncertainty(row.get(1)).orElseThrow();
            // an exact fit leaves rounding where the deviation is 0
            if (deviation == 0) assertThat(found).isLessThan(1e-9);
            else assertThat(found).isCloseTo(deviation, within(deviation * (name.equals("filip") ? 1e-7 : 1e-9)));
        }
        assertThat(-Math.log10(worst)).as("digits").isGreaterThanOrEqualTo(digits);
    }

    private static double value(String name, Table data, int i, double[] b) {
        if (!name.equals("longley") && !name.startsWith("noint")) {
            return compensatedHorner(data.rows().get(i)[1], b);
        }
        double sum = 0;
        for (int k = 0; k < b.length; k++) sum += b[k] * regressor(name, data, i, k);
        return sum;
    }

    /** Polynomial as if in twice the precision: S. Graillat, P. Langlois, N. Louvet (2009), compensated Horner scheme. */
    private static double compensatedHorner(double x, double[] b) {
        double sum = b[b.length - 1];
        double error = 0;
        for (int k = b.length - 2; k >= 0; k--) {
            double product = sum * x;
            double productError = Math.fma(sum, x, -product);
            double next = product + b[k];
            double part = next - product;
            double sumError = (product - (next - part)) + (b[k] - part);
            error = error * x + (productError + sumError);
            sum = next;
        }
        return sum + error;
    }

    /** Powers of x are computed: the copy's own columns of them are rounded to ten digits. */
    private static double regressor(String name, Table data, int i, int k) {
        if (name.startsWith("noint")) return data.rows().get(i)[1];
        if (k == 0) return 1;
        return name.equals("longley")
                ? data.rows().get(i)[k]
                : Math.pow(data.rows().get(i)[1], k);
    }
}
