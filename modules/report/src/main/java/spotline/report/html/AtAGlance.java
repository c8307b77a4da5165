package spotline.report.html;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.SortedSet;
import java.util.stream.Collectors;
import spotline.report.facts.ElementOrder;
import spotline.report.facts.OwnSettings;
import spotline.report.facts.SampleValue;
import spotline.report.text.DisplayNumber;
import spotline.run.RunResult;
import spotline.run.SampleComposition;
import spotline.run.SpotResult;

/** One row a sample: its mean composition and what its energy reference is worth. */
final class AtAGlance {
    private AtAGlance() {}

    static void write(Markup page, RunResult result) {
        page.open("section", "id", "glance").element("h2", "At a glance");
        SortedSet<String> elements = ElementOrder.ofSamples(result);
        List<String> headings = new ArrayList<>(List.of("Sample", "Spots"));
        elements.forEach(element -> headings.add("#" + element));
        headings.add("Energy reference");
        Tables.begin(page, "glance", headings);
        OwnSettings own = OwnSettings.of(result);
        for (int i = 0; i < result.samples().size(); i++) row(page, result, i, elements, own);
        Tables.end(page);
        page.open("p", "class", "note");
        page.text("Atomic percent of the elements listed, hydrogen and helium not seen; replicate spots averaged; "
                + "\u00b1 one standard uncertainty. \u201c<\u201d: below detection, less than this. \u201c\u2013\u201d: "
                + "not looked for. Every number is without correction for an overlayer.");
        page.close();
        for (SampleComposition sample : result.samples()) notes(page, own, sample.spots());
        page.end();
    }

    /** What a mark beside a spot means. */
    static void notes(Markup page, OwnSettings own, List<String> spots) {
        for (String note : own.notes(spots)) page.element("p", note, "class", "note");
    }

    private static void row(Markup page, RunResult result, int index, Set<String> elements, OwnSettings own) {
        SampleComposition sample = result.samples().get(index);
        page.open("tr").open("th", "scope", "row");
        page.element("a", SampleSection.name(sample), "href", "#sample-" + (index + 1))
                .close();
        Tables.cell(page, own.marked(sample.spots()));
        for (String element : elements) value(page, SampleValue.of(result, sample, element));
        Set<String> verdicts = spots(result, sample).stream()
                .map(s -> s.charge().verdict().word())
                .collect(Collectors.toCollection(LinkedHashSet::new));
        Tables.cell(page, String.join(", ", verdicts)).end();
    }

    static List<SpotResult> spots(RunResult result, SampleComposition sample) {
        return result.spots().stream()
                .filter(spot -> sample.spots().contains(spot.spot()))
                .toList();
    }

    private static void value(Markup page, SampleValue value) {
        page.open("td", "class", "n");
        if (value instanceof SampleValue.Mean mean) {
            DisplayNumber shown = DisplayNumber.of(mean.atomicPercent(), mean.standardUncertainty(), 1);
            page.text(shown.value());
            if (!shown.uncertainty().isEmpty()) page.element("span", " \u00b1 " + shown.uncertainty(), "class", "u");
        } else if (value instanceof SampleValue.Below below) {
            page.element(
                    "span",
                    below.limit().isPresent()
                            ? "< " + DisplayNumber.limit(below.limit().getAsDouble())
                            : "below detection",
                    "class",
                    "below");
        } else if (value instanceof SampleValue.Withheld) {
            page.element("span", "withheld", "class", "withheld");
        } else {
            page.text("\u2013");
        }
        page.close();
    }
}
