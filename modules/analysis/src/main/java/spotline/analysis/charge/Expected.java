package spotline.analysis.charge;

import java.util.List;
import spotline.numerics.fit.DataSet;
import spotline.numerics.fit.ModelFunction;
import spotline.numerics.fit.Weighting;

/**
 * What is known of a fit's parameter beforehand, with its standard uncertainty: weighed against the counts like one more
 * measured value.
 */
record Expected(String parameter, double value, double standardUncertainty) {
    /** Several of them as data of a fit. */
    static DataSet data(List<Expected> expected) {
        int n = expected.size();
        ModelFunction identity =
                ModelFunction.of(n, n, (p, values) -> System.arraycopy(p, 0, values, 0, n), (p, rows) -> {
                    for (int k = 0; k < n; k++) {
                        for (int i = 0; i < n; i++) rows[k][i] = i == k ? 1 : 0;
                    }
                });
        return new DataSet(
                identity,
                expected.stream().mapToDouble(Expected::value).toArray(),
                Weighting.given(expected.stream()
                        .mapToDouble(Expected::standardUncertainty)
                        .toArray()),
                expected.stream().map(Expected::parameter).toList());
    }
}
