package spotline.analysis.charge;

import java.util.ArrayList;
import java.util.List;
import spotline.core.Finding;
import spotline.core.Outcome;
import spotline.core.Work;
import spotline.reference.ReferenceData;

/**
 * Decides the energy reference of a spot.
 *
 * <p>A grounded conductor is checked by its Fermi edge or a metal line and never shifted: carbon on a conductor lies
 * anywhere between 284.1 and 286.7 eV (Greczynski and Hultman, 2017). Isolated spots are referenced to adventitious carbon,
 * unless the carbon is the sample's own, something lies under C 1s or the surface was sputtered: then only a reference the
 * analyst states is used, and what could be stated is listed.
 *
 * <p>Shape: one spot in, one decision out. Units: eV, the shift to be added to measured binding energies. Errors: none; a
 * reference that cannot be found is a decision with the verdict failed. No finding of this step is a stop: a composition
 * does not depend on the shift.
 *
 * <p>Source: ISO 19318 (what to report), ASTM E1523 (methods).
 */
public final class ChargeReferencing {
    /** Version of the step: rises when its numbers change. */
    public static final String STEP = "charge/4";

    private final ReferenceData reference;
    private final ChargeSettings settings;

    public ChargeReferencing(ReferenceData reference, ChargeSettings settings) {
        this.reference = reference;
        this.settings = settings;
    }

    public Outcome<ChargeReference> decide(ChargeInput input, Work work) {
        List<Finding> findings = new ArrayList<>();
        ChargeReference result = new Decision(reference, settings, input, findings, work).make();
        return Outcome.done(result, findings);
    }
}
