package spotline.analysis.quantify;

import java.util.Locale;
import spotline.reference.Material;
import spotline.reference.MeanFreePath;

/**
 * How the inelastic mean free path goes with kinetic energy.
 *
 * <p>Shape: one ratio, 1 at 1000 eV. Units: kinetic energy in eV above the Fermi level. Errors:
 * {@link IllegalArgumentException} at an energy where a formula gives no length. Source: {@link MeanFreePath}.
 */
public sealed interface MeanFreePathModel {
    double REFERENCE_EV = 1000;

    double relative(double kineticEv);

    String describe();

    /** A power of the kinetic energy, for a material of which nothing is known. Source: common practice. */
    record Power(double exponent) implements MeanFreePathModel {
        public Power {
            if (!(exponent >= 0 && exponent <= 1.5)) {
                throw new IllegalArgumentException("meanFreePathExponent: " + exponent + ", expected 0 to 1.5");
            }
        }

        @Override
        public double relative(double kineticEv) {
            return Math.pow(kineticEv / REFERENCE_EV, exponent);
        }

        @Override
        public String describe() {
            return "kinetic energy to the power " + exponent;
        }
    }

    /** TPP-2M of a material. Source: Tanuma, Powell, Penn, Surf. Interface Anal. 21 (1994) 165. */
    record Tpp2m(Material material) implements MeanFreePathModel {
        @Override
        public double relative(double kineticEv) {
            return MeanFreePath.tpp2mRelativistic(material, kineticEv)
                    / MeanFreePath.tpp2mRelativistic(material, REFERENCE_EV);
        }

        @Override
        public String describe() {
            return String.format(Locale.ROOT, "TPP-2M of %s", material.name());
        }
    }

    /** The effective attenuation length of organic matter. Source: Seah, Spencer, Surf. Interface Anal. 43 (2011) 744. */
    record Organic() implements MeanFreePathModel {
        @Override
        public double relative(double kineticEv) {
            return MeanFreePath.organicEal(kineticEv) / MeanFreePath.organicEal(REFERENCE_EV);
        }

        @Override
        public String describe() {
            return "attenuation length of organic matter";
        }
    }
}
