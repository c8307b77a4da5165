package spotline.analysis.charge;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import spotline.reference.Line;
import spotline.reference.Overlap;
import spotline.reference.ReferenceData;

/**
 * What the record and the elements say against adventitious carbon as a reference.
 *
 * @param refusals reasons why the method does not apply until the analyst says why it does
 * @param doubts reasons to look at the result twice
 */
record CarbonObjections(List<String> refusals, List<String> doubts) {
    /** An interfering line nearer to C 1s than this cannot be told from it by a peak fit, eV. */
    private static final double BENEATH = 4;

    static CarbonObjections of(ChargeInput input, ReferenceData reference) {
        List<String> refusals = new ArrayList<>();
        List<String> doubts = new ArrayList<>();
        SpotCondition c = input.condition();
        if (c.carbon() == SpotCondition.CarbonOrigin.OWN) {
            refusals.add("the carbon is the sample's own, so adventitious carbon does not apply");
        }
        if (input.sputtered()) {
            refusals.add("the surface was sputtered, so no adventitious layer of known state is left");
        }
        double carbonEv =
                reference.bindingEnergy(ChargeInput.CARBON).orElseThrow().valueEv();
        for (Overlap overlap : reference.overlaps(ChargeInput.CARBON)) {
            if (!input.elements().contains(overlap.interferingElement())) continue;
            boolean beneath = Line.find(overlap.interfering()).stream()
                    .flatMap(line -> line.members().stream())
                    .flatMap(member -> reference.bindingEnergy(member).stream())
                    .anyMatch(level -> Math.abs(level.valueEv() - carbonEv) < BENEATH);
            String what = String.format(
                    Locale.ROOT, beneath ? "%s lies under C 1s" : "%s lies beside C 1s", overlap.interfering());
            (beneath ? refusals : doubts).add(what);
        }
        boolean grounded = c.contact() == SpotCondition.Contact.GROUNDED;
        boolean conducts = c.conduction() == SpotCondition.Conduction.CONDUCTOR
                || c.conduction() == SpotCondition.Conduction.SEMICONDUCTOR;
        if (c.contact() == SpotCondition.Contact.UNKNOWN) doubts.add("the electrical state is not declared");
        if (grounded) {
            doubts.add(
                    conducts
                            ? String.format(
                                    Locale.ROOT,
                                    "a grounded conductor is referenced by the spectrometer, and its carbon lies anywhere"
                                            + " from %.1f to %.1f eV",
                                    CarbonScans.LOWEST_ON_CONDUCTORS,
                                    CarbonScans.HIGHEST_ON_CONDUCTORS)
                            : "the spot is declared grounded though the sample does not conduct");
        }
        return new CarbonObjections(refusals, doubts);
    }

    CarbonObjections {
        refusals = List.copyOf(refusals);
        doubts = List.copyOf(doubts);
    }
}
