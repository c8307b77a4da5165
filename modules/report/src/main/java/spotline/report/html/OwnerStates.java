package spotline.report.html;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import spotline.analysis.charge.ChargeVerdict;
import spotline.analysis.quantify.StateShare;
import spotline.report.facts.OpeningLine;
import spotline.report.plain.PlainState;
import spotline.report.text.DisplayNumber;
import spotline.run.SpotResult;

/** How the atoms of an element are bound, for the owner's page. */
final class OwnerStates {
    private OwnerStates() {}

    static boolean any(List<SpotResult> spots) {
        return spots.stream().anyMatch(s -> !s.states().isEmpty());
    }

    static void write(Markup page, List<SpotResult> spots) {
        List<SpotResult> told =
                spots.stream().filter(s -> !s.states().isEmpty()).toList();
        page.open("section").element("h2", "How the atoms are bound");
        table(page, told);
        page.element(
                "p",
                "An element looks a little different by what it is bound to (its chemical state). Where that could be told"
                        + " apart, this is how it divides up; of forms that look alike only the sum is known."
                        + (told.stream().anyMatch(OwnerStates::unsure)
                                ? " For this sample the names of the forms are less sure than usual: see \u201cWhat is"
                                        + " uncertain\u201d."
                                : ""),
                "class",
                "note");
        page.end();
    }

    private static boolean unsure(SpotResult spot) {
        ChargeVerdict verdict = spot.charge().verdict();
        return verdict == ChargeVerdict.DOUBTFUL || verdict == ChargeVerdict.FAILED;
    }

    /** A row an element and form, a column of shares a place. */
    private static void table(Markup page, List<SpotResult> told) {
        List<String> headings = new ArrayList<>(List.of("Element", "Form"));
        for (SpotResult spot : told) {
            headings.add("#" + (told.size() > 1 ? "Place " + spot.spot() + ", %" : "Share, %"));
        }
        Tables.begin(page, "owner-states", headings);
        Map<List<String>, List<String>> rows = new LinkedHashMap<>();
        for (int i = 0; i < told.size(); i++) {
            for (StateShare state : told.get(i).states()) {
                rows.computeIfAbsent(
                                List.of(state.element(), state.state()),
                                k -> new ArrayList<>(Collections.nCopies(told.size(), "\u2013")))
                        .set(i, share(state));
            }
        }
        rows.forEach((row, shares) -> {
            String meaning = PlainState.meaning(row.get(1));
            page.open("tr").element("th", OpeningLine.name(row.get(0)), "scope", "row");
            Tables.cell(page, row.get(1) + (meaning.isEmpty() ? "" : ": " + meaning));
            shares.forEach(share -> Tables.number(page, share));
            page.end();
        });
        Tables.end(page);
    }

    /** A single form is all there is: its share is 100 by its making and has no uncertainty of its own. */
    private static String share(StateShare state) {
        DisplayNumber shown = DisplayNumber.of(
                100 * state.fractionOfElement().value(),
                state.fractionOfElement().times(100).standardUncertainty(),
                0);
        boolean all = shown.value().equals("100") && shown.uncertainty().equals("0");
        return all ? "all" : shown.text();
    }
}
