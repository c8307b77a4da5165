package spotline.demo;

import static java.util.Objects.requireNonNull;

import java.util.List;
import java.util.OptionalDouble;

/**
 * What an analysis area looks at.
 *
 * @param name for a person
 * @param states of the medium; their shares are taken relative to the sum
 * @param potentialEv surface potential, V: every apparent binding energy is higher by it
 * @param driftEv change of the potential from the first spectrum of the spot to the end of the last, V
 * @param conductionBand where the medium is a metal: electrons per atom that reach up to the Fermi level
 */
public record Surface(
        String name,
        Medium medium,
        List<ElementState> states,
        Overlayer overlayer,
        double potentialEv,
        double driftEv,
        OptionalDouble conductionBand) {
    public Surface {
        requireNonNull(name, "name");
        requireNonNull(medium, "medium");
        requireNonNull(overlayer, "overlayer");
        requireNonNull(conductionBand, "conductionBand");
        states = List.copyOf(states);
        if (!(shareSum(states) > 0)) throw new IllegalArgumentException("a surface needs an atom");
    }

    private static double shareSum(List<ElementState> states) {
        return states.stream().mapToDouble(ElementState::share).sum();
    }

    /** Atoms of a state per nm3 of the medium. */
    double density(ElementState state) {
        return medium.atomsPerNm3() * state.share() / shareSum(states);
    }
}
