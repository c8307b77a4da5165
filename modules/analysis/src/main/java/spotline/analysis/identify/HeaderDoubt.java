package spotline.analysis.identify;

import java.util.List;
import java.util.OptionalDouble;

/**
 * A sign that a survey's header is wrong. It is told and never acted upon: only the analyst's override cures it.
 *
 * @param photonEnergyEv that fits, eV; empty where it is not in doubt
 * @param asGiven how much of the survey's lines the header's reading explains, 0 to 1
 * @param asSuggested how much the other reading does
 * @param elements strongest elements of the other reading
 * @param sentence for a person
 */
public record HeaderDoubt(
        Kind kind,
        OptionalDouble photonEnergyEv,
        double asGiven,
        double asSuggested,
        List<String> elements,
        String sentence) {
    public enum Kind {
        PHOTON_ENERGY,
        AXIS_REVERSED,
        KINETIC_AND_BINDING_MIXED_UP
    }

    public HeaderDoubt {
        elements = List.copyOf(elements);
    }
}
