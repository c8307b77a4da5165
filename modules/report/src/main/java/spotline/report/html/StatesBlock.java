package spotline.report.html;

import java.util.List;
import java.util.OptionalDouble;
import spotline.analysis.quantify.StateShare;
import spotline.core.Estimate;
import spotline.report.text.DisplayNumber;
import spotline.run.SpotResult;

/** Chemical states that peak fits tell apart, and the ratios that were asked for. */
final class StatesBlock {
    private StatesBlock() {}

    static void write(Markup page, SpotResult spot) {
        if (!spot.states().isEmpty()) states(page, spot.states());
        if (spot.derived().isEmpty()) return;
        page.element("h4", "Ratios and sums");
        Tables.begin(page, "derived", List.of("Quantity", "#Value"));
        for (SpotResult.Derived derived : spot.derived()) {
            page.open("tr").element("th", derived.quantity().name(), "scope", "row");
            Tables.number(page, derived.value().map(v -> shown(v, 3)).orElse("not known"))
                    .end();
        }
        Tables.end(page);
    }

    private static void states(Markup page, List<StateShare> states) {
        page.element("h4", "Chemical states");
        Tables.begin(page, "states", List.of("Element", "Line", "State", "#at.%", "#Share of the element, %"));
        for (StateShare state : states) {
            page.open("tr").element("th", state.element(), "scope", "row");
            Tables.cell(page, state.line());
            Tables.cell(page, state.state());
            Tables.number(page, state.atomicPercent().map(x -> shown(x, 1)).orElse("not known"));
            String share = shown(state.fractionOfElement().times(100), 0);
            Tables.number(page, share.equals("100 \u00b1 0") ? "all" : share).end();
        }
        Tables.end(page);
    }

    private static String shown(Estimate value, int decimals) {
        OptionalDouble u = value.standardUncertainty();
        return DisplayNumber.of(value.value(), u, decimals).text();
    }
}
