package spotline.demo;

import static java.util.Objects.requireNonNull;

/**
 * An element in one chemical state.
 *
 * @param element chemical symbol
 * @param state for a person: {@code "TiO2"}
 * @param share atoms, relative to the other states of the same region
 * @param level whose energy is given: {@code "2p3/2"}; every other level moves by the same amount
 * @param bindingEv of that level on the referenced scale
 * @param broadeningEv Gaussian full width beside the analyser's: chemical, vibrational, disorder
 */
public record ElementState(
        String element, String state, double share, String level, double bindingEv, double broadeningEv) {
    public ElementState {
        requireNonNull(element, "element");
        requireNonNull(state, "state");
        requireNonNull(level, "level");
        if (!(share >= 0)) throw new IllegalArgumentException("share must be 0 or more, was " + share);
        if (!(broadeningEv >= 0)) throw new IllegalArgumentException("broadening must be 0 eV or more");
    }
}
