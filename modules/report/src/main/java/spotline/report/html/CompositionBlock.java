package spotline.report.html;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import spotline.analysis.quantify.Basis;
import spotline.analysis.quantify.Quantified;
import spotline.core.Estimate;
import spotline.report.facts.RowState;
import spotline.report.text.DisplayNumber;
import spotline.run.SpotResult;

/** A spot's composition, and the same on other bases. */
final class CompositionBlock {
    private CompositionBlock() {}

    static void write(Markup page, SpotResult spot) {
        page.element("h4", "Composition");
        if (spot.composition().isEmpty()) {
            page.element("p", "No line could be quantified at this spot; the findings say why.", "class", "note");
            return;
        }
        page.open("div", "class", "side-by-side").open("div");
        Tables.begin(
                page,
                "composition",
                List.of(
                        "Element",
                        "#at.%",
                        "#\u00b1 u",
                        "#statistical part",
                        "#detection limit",
                        "Line",
                        "Basis",
                        "Spectrum"));
        Set<String> reasons = new LinkedHashSet<>();
        for (Quantified row : spot.composition()) {
            RowState state = RowState.of(spot, row);
            if (!state.reason().isEmpty()) reasons.add(state.reason());
            row(page, row, state);
        }
        Tables.end(page);
        for (String reason : reasons) {
            page.open("p", "class", "reason")
                    .element("strong", "Withheld: ")
                    .text(reason)
                    .end();
        }
        if (spot.composition().stream().anyMatch(row -> row.basis() == Basis.LINKED)) {
            page.element(
                    "p",
                    "Linked: seen in the survey only, brought in through a line measured in both.",
                    "class",
                    "note");
        }
        page.end();
        variants(page, spot);
        page.end();
    }

    private static void row(Markup page, Quantified row, RowState state) {
        page.open("tr").element("th", row.element(), "scope", "row");
        Optional<Estimate> percent = row.atomicPercent();
        DisplayNumber shown = shown(row);
        if (percent.isPresent()) {
            Tables.number(page, shown.value());
            Tables.number(page, shown.uncertainty().isEmpty() ? "not known" : shown.uncertainty());
            Tables.number(page, statistical(row));
        } else {
            Tables.number(page, absent(row, state));
            Tables.number(page, "");
            Tables.number(page, "");
        }
        Tables.number(
                page,
                row.detectionLimit().isPresent()
                        ? DisplayNumber.limit(row.detectionLimit().getAsDouble())
                        : "");
        Tables.cell(page, row.line());
        Tables.cell(page, row.basis().word());
        Tables.cell(page, row.spectrum()).end();
    }

    private static DisplayNumber shown(Quantified row) {
        return DisplayNumber.of(
                row.atomicPercent().map(Estimate::value).orElse(Double.NaN),
                row.atomicPercent().map(Estimate::standardUncertainty).orElse(OptionalDouble.empty()),
                1);
    }

    private static String statistical(Quantified row) {
        OptionalDouble part = row.statisticalU();
        return part.isPresent() ? DisplayNumber.of(0, part, 1).uncertainty() : "";
    }

    private static String absent(Quantified row, RowState state) {
        if (state instanceof RowState.Withheld) return "withheld";
        return row.detectionLimit().isPresent()
                ? "< " + DisplayNumber.limit(row.detectionLimit().getAsDouble())
                : "below detection";
    }

    /** One column a variant. */
    private static void variants(Markup page, SpotResult spot) {
        if (spot.variants().isEmpty()) return;
        page.open("div").element("h5", "On other bases, at.%");
        List<String> headings = new ArrayList<>(List.of("Element"));
        Set<String> elements = new LinkedHashSet<>();
        for (SpotResult.Variant variant : spot.variants()) {
            headings.add("#" + variant.name());
            variant.rows().forEach(row -> elements.add(row.element()));
        }
        Tables.begin(page, "variants", headings);
        for (String element : elements) {
            page.open("tr").element("th", element, "scope", "row");
            for (SpotResult.Variant variant : spot.variants()) {
                Optional<Quantified> row = variant.rows().stream()
                        .filter(r -> r.element().equals(element))
                        .findFirst();
                Tables.number(page, row.map(r -> text(spot, r)).orElse("\u2013"));
            }
            page.end();
        }
        Tables.end(page);
        page.end();
    }

    private static String text(SpotResult spot, Quantified row) {
        return row.atomicPercent().isPresent() ? shown(row).text() : absent(row, RowState.of(spot, row));
    }
}
