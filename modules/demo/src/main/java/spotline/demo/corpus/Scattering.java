package spotline.demo.corpus;

import java.util.List;
import spotline.reference.InelasticCrossSection;
import spotline.reference.ReferenceData;

/**
 * Inelastic scattering in one medium: three-parameter cross sections of material classes, or a two-parameter one of
 * other strength.
 *
 * <p>With k the loss function on a grid of {@value #STEP_EV} eV, a half-space of emitters answers a peak of unit area by
 * {@code h = 1 / (1 - k)}, a layer of thickness a (in attenuation lengths) above it by {@code exp(a k)}.
 *
 * <p>Source: S. Tougaard, Surf. Interface Anal. 25 (1997) 137 for the three-parameter form; the exponential's recursion
 * {@code n g_n = a sum of j k_j g_(n-j)} is that of power series.
 */
final class Scattering {
    static final double STEP_EV = 0.5;
    private static final int REACH = 2900;
    private static final int LOSS = 500;

    private final double[] loss;
    private final double[] halfSpace;

    private Scattering(double[] loss) {
        this.loss = loss;
        halfSpace = new double[REACH];
        halfSpace[0] = 1;
        for (int n = 1; n < REACH; n++) {
            double sum = 0;
            for (int j = 1; j <= Math.min(n, LOSS - 1); j++) sum += loss[j] * halfSpace[n - j];
            halfSpace[n] = sum;
        }
    }

    static Scattering draw(Draw draw) {
        List<InelasticCrossSection> classes = ReferenceData.shipped().inelasticCrossSections().stream()
                .filter(c -> c.d().isPresent())
                .toList();
        double[] loss = new double[LOSS];
        double strength = draw.between(0.85, 1.05);
        if (draw.chance(0.4)) {
            double b = 2866 * strength;
            double c = draw.between(1200, 2100);
            for (int j = 1; j < LOSS; j++) {
                double t = j * STEP_EV;
                loss[j] = STEP_EV * b * t / ((c + t * t) * (c + t * t));
            }
        } else {
            InelasticCrossSection c = draw.one(classes);
            double d = c.d().orElseThrow();
            // A grid of half an eV cannot carry sharper resonances.
            double width = Math.max(d, 9);
            for (int j = 1; j < LOSS; j++) {
                double t = j * STEP_EV;
                double gap = c.c() - t * t;
                loss[j] = STEP_EV * strength * c.b() * t / (gap * gap + width * t * t);
            }
        }
        double sum = 0;
        for (double value : loss) sum += value;
        // Nobody is scattered with a probability above one.
        if (sum > 0.98) for (int j = 0; j < LOSS; j++) loss[j] *= 0.98 / sum;
        return new Scattering(loss);
    }

    /** Answer of emitters below a layer, the zero-loss peak at index 0 left out. */
    double[] below(double thickness) {
        double[] layer = layer(thickness);
        double[] out = new double[REACH];
        for (int n = 1; n < REACH; n++) {
            double sum = 0;
            for (int j = 0; j <= n; j++) sum += layer[j] * halfSpace[n - j];
            out[n] = sum;
        }
        return out;
    }

    /** Answer of emitters spread through a layer, from half its thickness on average. */
    double[] within(double thickness) {
        double[] out = layer(0.5 * thickness);
        out[0] = 0;
        return out;
    }

    private double[] layer(double a) {
        double[] g = new double[REACH];
        g[0] = 1;
        for (int n = 1; n < REACH; n++) {
            double sum = 0;
            for (int j = 1; j <= Math.min(n, LOSS - 1); j++) sum += j * loss[j] * g[n - j];
            g[n] = a * sum / n;
        }
        return g;
    }
}
