package spotline.holder.check;

/**
 * Potential that a steady current gives a surface whose other side is grounded, V. Source: Ohm's law.
 */
public final class SurfacePotential {
    private static final double CM2_IN_MM2 = 0.01;

    private SurfacePotential() {}

    /** @param currentA from the surface to the holder, A */
    public static double ofPath(double currentA, double resistanceOhm) {
        return currentA * resistanceOhm;
    }

    /**
     * Of a layer through which the current flows at right angles.
     *
     * @param currentA through the area, A
     * @param areaMm2 mm2
     * @param thicknessCm cm
     * @param resistivityOhmCm ohm cm
     */
    public static double ofLayer(double currentA, double areaMm2, double thicknessCm, double resistivityOhmCm) {
        return currentA / (areaMm2 * CM2_IN_MM2) * thicknessCm * resistivityOhmCm;
    }
}
