package spotline.analysis.quantify;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import spotline.core.Estimate;

/**
 * Takes out of each intensity what lines of the other elements bring into its window.
 *
 * <p>The normalised intensity that was measured in the window of element i is r_i = q_i + sum_j s_ij q_j, q the amounts and
 * s_ij the factor of j's lines inside i's window over that of i's own line. Solved as one linear system, so that two
 * elements may overlap each other. With M = 1 + s: q = M^-1 r, dq = M^-1 (dr - ds q).
 *
 * <p>Shape: n amounts in, n out. Units: those of r. Errors: {@link IllegalArgumentException} when the lines cannot be told
 * apart (M is singular). Source: derived; GUM (JCGM 100:2008) 5.1.2.
 */
public final class OverlapSystem {
    private OverlapSystem() {}

    /**
     * @param measured normalised intensities, one an element
     * @param shares {@code shares.get(i).get(j)}: s_ij with its uncertainty; the diagonal is not read
     */
    public static List<Estimate> solve(List<Estimate> measured, List<List<Estimate>> shares) {
        int n = measured.size();
        RealMatrix m = new Array2DRowRealMatrix(n, n);
        double[] r = new double[n];
        for (int i = 0; i < n; i++) {
            r[i] = measured.get(i).value();
            for (int j = 0; j < n; j++) {
                m.setEntry(i, j, i == j ? 1 : shares.get(i).get(j).value());
            }
        }
        LUDecomposition decomposition = new LUDecomposition(m);
        if (!decomposition.getSolver().isNonSingular()) {
            throw new IllegalArgumentException("the overlapping lines cannot be told apart");
        }
        RealMatrix inverse = decomposition.getSolver().getInverse();
        double[] q = inverse.operate(r);
        List<Estimate> clean = new ArrayList<>();
        for (int k = 0; k < n; k++) {
            List<Estimate> inputs = new ArrayList<>(measured);
            double[] slopes = new double[n * n + n];
            for (int i = 0; i < n; i++) slopes[i] = inverse.getEntry(k, i);
            int at = n;
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < n; j++) {
                    Estimate share = shares.get(i).get(j);
                    inputs.add(i == j ? Estimate.exact(0) : share);
                    slopes[at++] = i == j ? 0 : -inverse.getEntry(k, i) * q[j];
                }
            }
            clean.add(Estimate.linear(q[k], inputs, slopes));
        }
        return List.copyOf(clean);
    }
}
