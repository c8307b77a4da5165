package spotline.reference;

/** Angular distribution of photoelectrons. */
public final class Angular {
    private Angular() {}

    /**
     * Factor on the emission into one direction, 1 at the magic angle of 54.74 degrees.
     *
     * <p>Shape: one factor. Units: angle in degrees. Errors: none. Source: dipole approximation for unpolarised X-rays,
     * L = 1 + (beta/2)(1.5 sin^2 gamma - 1); Reilman, Msezane, Manson, J. Electron Spectrosc. Relat. Phenom. 8 (1976)
     * 389.
     *
     * @param beta asymmetry parameter, -1 to 2
     * @param gammaDeg angle between X-ray beam and direction of emission
     */
    public static double factor(double beta, double gammaDeg) {
        double sine = Math.sin(Math.toRadians(gammaDeg));
        return 1 + 0.5 * beta * (1.5 * sine * sine - 1);
    }
}
