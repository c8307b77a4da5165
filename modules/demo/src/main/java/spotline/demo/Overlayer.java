package spotline.demo;

import java.util.List;

/**
 * Adventitious carbon: a continuous layer of oxidised hydrocarbon.
 *
 * <p>Of its carbon 75 % is bound to carbon and hydrogen, 14 % to one oxygen, 6 % is carbonyl, 5 % carboxyl or ester; the
 * oxygen that these groups demand is in the layer too. Its carbon density is that of polyethylene.
 *
 * <p>Source: shares and shifts of the groups are common practice, no source; attenuation length
 * {@code L = 0.00837 E^0.842 nm} of organic matter from M.P. Seah and S.J. Spencer, Surf. Interface Anal. 43 (2011) 744,
 * from memory.
 *
 * @param thicknessNm 0 for a bare surface
 * @param hydrocarbonEv where its hydrocarbon stands on the referenced scale
 */
public record Overlayer(double thicknessNm, double hydrocarbonEv) {
    /** Carbon atoms of polyethylene per nm3: 0.92 g/cm3, 14.03 g/mol. */
    public static final double CARBON_PER_NM3 = 0.92 * 602.214076 / 14.027;

    private static final double GROUP_BROADENING_EV = 0.95;
    private static final double OXYGEN_BROADENING_EV = 1.25;

    public Overlayer {
        if (!(thicknessNm >= 0)) throw new IllegalArgumentException("thickness must be 0 nm or more");
    }

    public static double attenuationLengthNm(double kineticEv) {
        return 0.00837 * StrictMath.pow(kineticEv, 0.842);
    }

    /** Thickness in attenuation lengths along the path out. */
    double reducedThickness(double kineticEv, double cosEmission) {
        return thicknessNm / (attenuationLengthNm(kineticEv) * cosEmission);
    }

    /** Its states; shares are atoms per carbon atom of the layer. */
    public List<ElementState> states() {
        return List.of(
                carbon("C-C, C-H", 0.75, 0),
                carbon("C-O", 0.14, 1.5),
                carbon("C=O", 0.06, 3.0),
                carbon("O-C=O", 0.05, 4.1),
                oxygen("C-O", 0.14, 533.0),
                oxygen("C=O", 0.06, 532.0),
                oxygen("O-C=O, double bond", 0.05, 532.1),
                oxygen("O-C=O, single bond", 0.05, 533.4));
    }

    private ElementState carbon(String group, double share, double shiftEv) {
        return new ElementState("C", group, share, "1s", hydrocarbonEv + shiftEv, GROUP_BROADENING_EV);
    }

    private ElementState oxygen(String group, double share, double atUsualReferenceEv) {
        return new ElementState(
                "O", group, share, "1s", atUsualReferenceEv + hydrocarbonEv - 284.8, OXYGEN_BROADENING_EV);
    }
}
