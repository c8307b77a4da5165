package spotline.report.html;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import spotline.analysis.quantify.Quantified;
import spotline.analysis.quantify.UncertaintyBudget;
import spotline.analysis.quantify.UncertaintySource;
import spotline.core.Estimate;
import spotline.report.text.DisplayNumber;
import spotline.run.SpotResult;

/** Where the uncertainty of each atomic percentage comes from. */
final class BudgetBlock {
    private BudgetBlock() {}

    static void write(Markup page, SpotResult spot) {
        List<Quantified> rows = spot.composition().stream()
                .filter(row -> row.atomicPercent().isPresent())
                .toList();
        TreeSet<UncertaintySource> sources = new TreeSet<>();
        for (Quantified row : rows) sources.addAll(budget(row).parts().keySet());
        if (sources.isEmpty()) return;
        page.element("h4", "Uncertainty budget, at.%");
        List<String> headings = new ArrayList<>(List.of("Element"));
        for (UncertaintySource source : sources) headings.add("#" + source.word());
        headings.add("#all together");
        Tables.begin(page, "budget", headings);
        for (Quantified row : rows) {
            UncertaintyBudget budget = budget(row);
            int decimals = decimals(budget);
            page.open("tr").element("th", row.element(), "scope", "row");
            for (UncertaintySource source : sources) {
                Double part = budget.parts().get(source);
                Tables.number(page, part == null ? "\u2013" : DisplayNumber.fixed(part, decimals));
            }
            Estimate percent = row.atomicPercent().orElseThrow();
            Tables.number(
                            page,
                            budget.known()
                                    ? DisplayNumber.limit(
                                            percent.standardUncertainty().orElse(Double.NaN))
                                    : "not known")
                    .end();
        }
        Tables.end(page);
        page.element(
                "p",
                "Standard uncertainties; the squares of a row\u2019s parts add up to the square of the whole.",
                "class",
                "note");
    }

    /** Three digits of the largest part, for all of them: so the squares can be added up again. */
    private static int decimals(UncertaintyBudget budget) {
        double largest =
                budget.parts().values().stream().mapToDouble(u -> u).max().orElse(1);
        return Math.max(0, Math.min(4, 2 - (int) Math.floor(Math.log10(largest))));
    }

    private static UncertaintyBudget budget(Quantified row) {
        return UncertaintyBudget.of(row.atomicPercent().orElseThrow());
    }
}
