package spotline.reference;

/**
 * Inelastic mean free paths and effective attenuation lengths, nm, of electrons with a kinetic energy in eV.
 *
 * <p>Errors: {@link IllegalArgumentException} for an energy at which a formula gives no positive length.
 */
public final class MeanFreePath {
    private static final double ANGSTROM_PER_NM = 10;

    private MeanFreePath() {}

    /**
     * TPP-2M: lambda = E / {Ep^2 [beta ln(gamma E) - C/E + D/E^2]}.
     *
     * <p>Units: eV in, nm out; energy above the Fermi level (metals) or the bottom of the conduction band (insulators),
     * 50 to 2000 eV. Source: Tanuma, Powell, Penn, Surf. Interface Anal. 21 (1994) 165.
     */
    public static double tpp2m(Material material, double kineticEv) {
        return tpp2m(material, kineticEv, 1);
    }

    /**
     * TPP-2M in its relativistic form, to 30 keV.
     *
     * <p>Units: eV in, nm out. Source: Shinotsuka, Tanuma, Powell, Penn, Surf. Interface Anal. 47 (2015) 871.
     */
    public static double tpp2mRelativistic(Material material, double kineticEv) {
        double restRatio = kineticEv / KnownConstants.ELECTRON_REST_ENERGY_EV;
        double alpha = (1 + restRatio / 2) / ((1 + restRatio) * (1 + restRatio));
        return tpp2m(material, kineticEv, alpha);
    }

    private static double tpp2m(Material material, double e, double alpha) {
        double density = material.densityGPerCm3();
        double u = material.valenceElectrons() * density / material.molarMassGPerMol();
        double plasmonSquared = 28.8 * 28.8 * u;
        double gap = material.bandGapEv();
        double beta = -0.10 + 0.944 / Math.sqrt(plasmonSquared + gap * gap) + 0.069 * Math.pow(density, 0.1);
        double gamma = 0.191 / Math.sqrt(density);
        double c = 1.97 - 0.91 * u;
        double d = 53.4 - 20.8 * u;
        double bracket = beta * Math.log(gamma * alpha * e) - c / e + d / (e * e);
        return positive(alpha * e / (plasmonSquared * bracket) / ANGSTROM_PER_NM, "TPP-2M", e);
    }

    /**
     * Effective attenuation length in an organic overlayer: 0.00837 E^0.842.
     *
     * <p>Units: eV in, nm out. Source: Seah, Spencer, Surf. Interface Anal. 43 (2011) 744, volume and page from memory.
     */
    public static double organicEal(double kineticEv) {
        return positive(0.00837 * Math.pow(kineticEv, 0.842), "the organic attenuation length", kineticEv);
    }

    /** Relative to 1000 eV: (E/1000)^0.75. Common practice for factors without a material. */
    public static double powerLaw(double kineticEv) {
        return positive(Math.pow(kineticEv / 1000, 0.75), "the power law", kineticEv);
    }

    /**
     * Mean size of an atom: a^3 = M / (rho N_A atoms).
     *
     * <p>Units: nm. Source: Seah, Dench, Surf. Interface Anal. 1 (1979) 2.
     *
     * @param atoms number of atoms in the formula unit
     */
    public static double atomSizeNm(Material material, double atoms) {
        double cubicCm =
                material.molarMassGPerMol() / (material.densityGPerCm3() * KnownConstants.AVOGADRO_PER_MOL * atoms);
        return Math.cbrt(cubicCm * 1e21);
    }

    /**
     * Seah's S1 for the inelastic mean free path, above 100 eV.
     *
     * <p>Units: nm. Source: Seah, Surf. Interface Anal. 44 (2012) 497, coefficients from memory.
     *
     * @param z mean atomic number
     * @param w 0.06 H (heat of formation an atom, eV) or 0.02 of the band gap; 0 for an element
     */
    public static double s1(double z, double atomSizeNm, double w, double kineticEv) {
        double top = (4 + 0.44 * Math.sqrt(z) + 0.104 * Math.pow(kineticEv, 0.872)) * Math.pow(atomSizeNm, 1.7);
        return positive(top / (Math.pow(z, 0.3) * (1 - w)), "S1", kineticEv);
    }

    /** Seah's S2, an average over materials, for the inelastic mean free path, nm. Source: as {@link #s1}. */
    public static double s2(double z, double atomSizeNm, double kineticEv) {
        double layers = (1.52 + 0.167 * Math.sqrt(z) + 0.0394 * Math.pow(kineticEv, 0.872)) / Math.pow(z, 0.3);
        return positive(layers * atomSizeNm, "S2", kineticEv);
    }

    /**
     * Seah's S3 for the effective attenuation length, 100 eV to 30 keV.
     *
     * <p>Units: nm. Source: Seah, Surf. Interface Anal. 44 (2012) 1353, coefficients from memory.
     */
    public static double s3(double z, double atomSizeNm, double w, double kineticEv) {
        double top = (5.8 + 0.0041 * Math.pow(z, 1.7) + 0.088 * Math.pow(kineticEv, 0.93)) * Math.pow(atomSizeNm, 1.82);
        return positive(top / (Math.pow(z, 0.38) * (1 - w)), "S3", kineticEv);
    }

    /** Seah's S4, an average over materials, for the effective attenuation length, nm. Source: as {@link #s3}. */
    public static double s4(double z, double atomSizeNm, double kineticEv) {
        double layers = (0.65 + 0.007 * Math.pow(kineticEv, 0.93)) / Math.pow(z, 0.38);
        return positive(layers * atomSizeNm, "S4", kineticEv);
    }

    /**
     * The universal curve for elements: 143/E^2 + 0.054 sqrt(E).
     *
     * <p>Units: eV in, nm out. Source: Seah, Dench, Surf. Interface Anal. 1 (1979) 2; superseded, for old data.
     */
    public static double universalCurve(double kineticEv) {
        return positive(143 / (kineticEv * kineticEv) + 0.054 * Math.sqrt(kineticEv), "the universal curve", kineticEv);
    }

    private static double positive(double length, String formula, double kineticEv) {
        if (!(length > 0) || Double.isInfinite(length)) {
            throw new IllegalArgumentException(formula + " gives no length at " + kineticEv + " eV");
        }
        return length;
    }
}
