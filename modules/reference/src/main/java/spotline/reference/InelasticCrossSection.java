package spotline.reference;

import java.util.OptionalDouble;

/**
 * Parameters of a class of inelastic cross sections: lambda K(T) = B T / (C + T^2)^2, or with D: lambda K(T) = B T /
 * [(C - T^2)^2 + D T^2], T the energy loss in eV.
 *
 * <p>Units: eV^2 each. Source: S. Tougaard, Surf. Interface Anal. 11 (1988) 453 and 25 (1997) 137, values from memory.
 *
 * @param integral of lambda K over all losses, computed from the parameters
 * @param peakEv loss at the maximum, eV, computed from the parameters
 */
public record InelasticCrossSection(
        String name, double b, double c, OptionalDouble d, double integral, double peakEv, String source) {}
