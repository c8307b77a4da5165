package spotline.numerics.shape;

/**
 * The interval an area is taken over where the integral of a shape diverges, reckoned from its position.
 *
 * @param belowEv distance of the lower limit below the position, eV
 * @param aboveEv distance of the upper limit above the position, eV
 */
public record AreaLimits(double belowEv, double aboveEv) {
    public AreaLimits {
        if (!(belowEv > 0) || !(aboveEv > 0) || !Double.isFinite(belowEv + aboveEv)) {
            throw new IllegalArgumentException("area limits must be finite and above 0 eV, were " + belowEv
                    + " eV below and " + aboveEv + " eV above");
        }
    }
}
