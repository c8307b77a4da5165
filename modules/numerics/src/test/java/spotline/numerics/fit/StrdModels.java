package spotline.numerics.fit;

import java.util.Map;

/** The models of the NIST StRD nonlinear sets with their derivatives, as their headers state them. */
final class StrdModels {
    /** Value and derivatives at one point: {@code d} receives the derivatives. */
    interface Model {
        double at(double[] x, double[] b, double[] d);
    }

    private StrdModels() {}

    static final Map<String, Model> ALL = Map.ofEntries(
            Map.entry("Bennett5", StrdModels::bennett5),
            Map.entry("BoxBOD", StrdModels::saturation),
            Map.entry("Misra1a", StrdModels::saturation),
            Map.entry("Chwirut1", StrdModels::chwirut),
            Map.entry("Chwirut2", StrdModels::chwirut),
            Map.entry("DanWood", StrdModels::danWood),
            Map.entry("ENSO", StrdModels::enso),
            Map.entry("Eckerle4", StrdModels::eckerle4),
            Map.entry("Gauss1", StrdModels::gauss),
            Map.entry("Gauss2", StrdModels::gauss),
            Map.entry("Gauss3", StrdModels::gauss),
            Map.entry("Hahn1", (x, b, d) -> rational(x[0], b, d, 4)),
            Map.entry("Thurber", (x, b, d) -> rational(x[0], b, d, 4)),
            Map.entry("Kirby2", (x, b, d) -> rational(x[0], b, d, 3)),
            Map.entry("Lanczos1", StrdModels::lanczos),
            Map.entry("Lanczos2", StrdModels::lanczos),
            Map.entry("Lanczos3", StrdModels::lanczos),
            Map.entry("MGH09", StrdModels::mgh09),
            Map.entry("MGH10", StrdModels::mgh10),
            Map.entry("MGH17", StrdModels::mgh17),
            Map.entry("Misra1b", StrdModels::misra1b),
            Map.entry("Misra1c", StrdModels::misra1c),
            Map.entry("Misra1d", StrdModels::misra1d),
            Map.entry("Nelson", StrdModels::nelson),
            Map.entry("Rat42", StrdModels::rat42),
            Map.entry("Rat43", StrdModels::rat43),
            Map.entry("Roszman1", StrdModels::roszman1));

    private static double bennett5(double[] x, double[] b, double[] d) {
        double log = Math.log(b[1] + x[0]);
        double power = Math.exp(-log / b[2]);
        d[0] = power;
        d[1] = -b[0] * power / (b[2] * (b[1] + x[0]));
        d[2] = b[0] * power * log / (b[2] * b[2]);
        return b[0] * power;
    }

    private static double saturation(double[] x, double[] b, double[] d) {
        double decay = Math.exp(-b[1] * x[0]);
        d[0] = -Math.expm1(-b[1] * x[0]);
        d[1] = b[0] * x[0] * decay;
        return b[0] * d[0];
    }

    private static double chwirut(double[] x, double[] b, double[] d) {
        double below = b[1] + b[2] * x[0];
        double value = Math.exp(-b[0] * x[0]) / below;
        d[0] = -x[0] * value;
        d[1] = -value / below;
        d[2] = -x[0] * value / below;
        return value;
    }

    private static double danWood(double[] x, double[] b, double[] d) {
        d[0] = Math.pow(x[0], b[1]);
        d[1] = b[0] * d[0] * Math.log(x[0]);
        return b[0] * d[0];
    }

    private static double enso(double[] x, double[] b, double[] d) {
        double t = 2 * Math.PI * x[0];
        d[0] = 1;
        d[1] = Math.cos(t / 12);
        d[2] = Math.sin(t / 12);
        d[4] = Math.cos(t / b[3]);
        d[5] = Math.sin(t / b[3]);
        d[3] = t / (b[3] * b[3]) * (b[4] * d[5] - b[5] * d[4]);
        d[7] = Math.cos(t / b[6]);
        d[8] = Math.sin(t / b[6]);
        d[6] = t / (b[6] * b[6]) * (b[7] * d[8] - b[8] * d[7]);
        return b[0] + b[1] * d[1] + b[2] * d[2] + b[4] * d[4] + b[5] * d[5] + b[7] * d[7] + b[8] * d[8];
    }

    private static double eckerle4(double[] x, double[] b, double[] d) {
        double t = (x[0] - b[2]) / b[1];
        double bell = Math.exp(-0.5 * t * t) / b[1];
        d[0] = bell;
        d[1] = b[0] * bell * (t * t - 1) / b[1];
        d[2] = b[0] * bell * t / b[1];
        return b[0] * bell;
    }

    private static double gauss(double[] x, double[] b, double[] d) {
        d[0] = Math.exp(-b[1] * x[0]);
        d[1] = -b[0] * x[0] * d[0];
        double value = b[0] * d[0];
        for (int k = 2; k < 8; k += 3) {
            double t = (x[0] - b[k + 1]) / b[k + 2];
            d[k] = Math.exp(-t * t);
            d[k + 1] = b[k] * d[k] * 2 * t / b[k + 2];
            d[k + 2] = d[k + 1] * t;
            value += b[k] * d[k];
        }
        return value;
    }

    private static double rational(double x, double[] b, double[] d, int upper) {
        double above = 0;
        double below = 1;
        double power = 1;
        for (int k = 0; k < upper; k++) {
            above += b[k] * power;
            d[k] = power;
            power *= x;
        }
        power = x;
        for (int k = upper; k < b.length; k++) {
            below += b[k] * power;
            d[k] = power;
            power *= x;
        }
        double value = above / below;
        for (int k = 0; k < b.length; k++) d[k] *= k < upper ? 1 / below : -value / below;
        return value;
    }

    private static double lanczos(double[] x, double[] b, double[] d) {
        double value = 0;
        for (int k = 0; k < 6; k += 2) {
            d[k] = Math.exp(-b[k + 1] * x[0]);
            d[k + 1] = -b[k] * x[0] * d[k];
            value += b[k] * d[k];
        }
        return value;
    }

    private static double mgh09(double[] x, double[] b, double[] d) {
        double above = x[0] * x[0] + x[0] * b[1];
        double below = x[0] * x[0] + x[0] * b[2] + b[3];
        double value = b[0] * above / below;
        d[0] = above / below;
        d[1] = b[0] * x[0] / below;
        d[2] = -value * x[0] / below;
        d[3] = -value / below;
        return value;
    }

    private static double mgh10(double[] x, double[] b, double[] d) {
        double t = 1 / (x[0] + b[2]);
        d[0] = Math.exp(b[1] * t);
        d[1] = b[0] * d[0] * t;
        d[2] = -b[0] * d[0] * b[1] * t * t;
        return b[0] * d[0];
    }

    private static double mgh17(double[] x, double[] b, double[] d) {
        d[0] = 1;
        d[1] = Math.exp(-x[0] * b[3]);
        d[2] = Math.exp(-x[0] * b[4]);
        d[3] = -b[1] * x[0] * d[1];
        d[4] = -b[2] * x[0] * d[2];
        return b[0] + b[1] * d[1] + b[2] * d[2];
    }

    private static double misra1b(double[] x, double[] b, double[] d) {
        double t = 1 + 0.5 * b[1] * x[0];
        d[0] = 1 - 1 / (t * t);
        d[1] = b[0] * x[0] / (t * t * t);
        return b[0] * d[0];
    }

    private static double misra1c(double[] x, double[] b, double[] d) {
        double t = 1 + 2 * b[1] * x[0];
        d[0] = 1 - 1 / Math.sqrt(t);
        d[1] = b[0] * x[0] / (t * Math.sqrt(t));
        return b[0] * d[0];
    }

    private static double misra1d(double[] x, double[] b, double[] d) {
        double t = 1 + b[1] * x[0];
        d[0] = b[1] * x[0] / t;
        d[1] = b[0] * x[0] / (t * t);
        return b[0] * d[0];
    }

    private static double nelson(double[] x, double[] b, double[] d) {
        double decay = Math.exp(-b[2] * x[1]);
        d[0] = 1;
        d[1] = -x[0] * decay;
        d[2] = b[1] * x[0] * x[1] * decay;
        return b[0] + b[1] * d[1];
    }

    private static double rat42(double[] x, double[] b, double[] d) {
        double growth = Math.exp(b[1] - b[2] * x[0]);
        d[0] = 1 / (1 + growth);
        d[1] = -b[0] * growth * d[0] * d[0];
        d[2] = -x[0] * d[1];
        return b[0] * d[0];
    }

    private static double rat43(double[] x, double[] b, double[] d) {
        double growth = Math.exp(b[1] - b[2] * x[0]);
        double value = b[0] * Math.pow(1 + growth, -1 / b[3]);
        d[0] = value / b[0];
        d[1] = -value * growth / (b[3] * (1 + growth));
        d[2] = -x[0] * d[1];
        d[3] = value * Math.log1p(growth) / (b[3] * b[3]);
        return value;
    }

    private static double roszman1(double[] x, double[] b, double[] d) {
        double gap = x[0] - b[3];
        double size = Math.PI * (gap * gap + b[2] * b[2]);
        d[0] = 1;
        d[1] = -x[0];
        d[2] = -gap / size;
        d[3] = -b[2] / size;
        return b[0] - b[1] * x[0] - Math.atan(b[2] / gap) / Math.PI;
    }
}
