package spotline.reference;

/**
 * Modified Auger parameter of a state: binding energy of a photoelectron line plus kinetic energy of an Auger line, eV,
 * independent of charging. Good to 0.3 eV for metals, 0.5 eV for compounds.
 */
public record AugerParameter(
        Line line,
        String state,
        String augerTransition,
        double bindingEv,
        double augerKineticEv,
        double modifiedAugerParameterEv,
        String source) {}
