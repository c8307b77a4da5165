package spotline.demo.corpus;

import java.util.List;

/**
 * An element of a surface, with what it does to its lines.
 *
 * @param amount atoms, relative
 * @param states shift against the table, eV, share and broadening of each
 * @param overlayer it sits in the layer on top, not in the medium
 * @param metallic its lines lean to higher binding energy
 * @param shakeUp offset, share and width of a satellite behind the lines of the levels named
 * @param shakenLevels letters that the names of those levels begin with, {@code "2p"}
 * @param augerMove apparent shift of its Auger group beside that of the states, eV
 */
record Ingredient(
        String symbol,
        double amount,
        List<State> states,
        boolean overlayer,
        boolean metallic,
        List<Feature> shakeUp,
        String shakenLevels,
        double augerMove) {
    record State(double shiftEv, double share, double broadeningEv) {}

    record Feature(double offsetEv, double share, double widthEv) {}

    Ingredient {
        states = List.copyOf(states);
        shakeUp = List.copyOf(shakeUp);
    }

    double meanShift() {
        return states.stream().mapToDouble(s -> s.shiftEv() * s.share()).sum();
    }
}
