package spotline.analysis.quantify;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import spotline.core.Estimate;
import spotline.reference.Angular;

/**
 * The angular factor L = 1 + (a beta / 2)(1.5 sin^2 gamma - 1).
 *
 * <p>In a free atom a = 1. In a solid elastic scattering on the way out smears the distribution; averaged over materials
 * a = 0.781 - 0.00514 Z + 0.000031 Z^2 for emission near the normal, Z the mean atomic number.
 *
 * <p>Source: dipole approximation, Reilman, Msezane, Manson, J. Electron Spectrosc. Relat. Phenom. 8 (1976) 389; reduction
 * M.P. Seah, I.S. Gilmore, Surf. Interface Anal. 31 (2001) 835, coefficients, volume and page from memory. Its standard
 * uncertainty, 0.08 by default, covers the range of Z from 6 to 50 (derived from the equation).
 *
 * @param meanAtomicNumber of the solid, where the reduction asks for it
 * @param reductionU standard uncertainty of a, shared by all lines
 */
public record Anisotropy(Kind kind, double meanAtomicNumber, double reductionU) {
    /** How the angular distribution is treated. */
    public enum Kind {
        /** Not at all: right at the magic angle alone. */
        NONE,
        /** As of a free atom. */
        DIPOLE,
        /** Smeared by elastic scattering. */
        REDUCED;

        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }

        public static Optional<Kind> of(String word) {
            return Arrays.stream(values()).filter(k -> k.word().equals(word)).findFirst();
        }
    }

    public Anisotropy {
        if (!(meanAtomicNumber >= 1 && meanAtomicNumber <= 98)) {
            throw new IllegalArgumentException("meanAtomicNumber: " + meanAtomicNumber + ", expected 1 to 98");
        }
        if (!(reductionU >= 0 && reductionU < 1)) {
            throw new IllegalArgumentException("reductionU: " + reductionU + ", expected 0 to below 1");
        }
    }

    public double reduction() {
        double z = meanAtomicNumber;
        return switch (kind) {
            case NONE -> 0;
            case DIPOLE -> 1;
            case REDUCED -> 0.781 - 0.00514 * z + 0.000031 * z * z;
        };
    }

    /** @param beta asymmetry parameter of the free atom */
    Estimate factor(double beta, double gammaDeg) {
        double a = reduction();
        double slope = Angular.factor(beta, gammaDeg) - 1;
        Estimate factor = Estimate.exact(1 + a * slope);
        return kind == Kind.REDUCED ? factor.with("factor/reduced asymmetry", slope * reductionU) : factor;
    }
}
