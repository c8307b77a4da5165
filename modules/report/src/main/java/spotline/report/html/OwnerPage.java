package spotline.report.html;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spotline.analysis.identify.ElementSeen;
import spotline.analysis.identify.Identification;
import spotline.holder.Sample;
import spotline.report.facts.ElementOrder;
import spotline.report.facts.OpeningLine;
import spotline.report.facts.OwnSettings;
import spotline.report.facts.SampleValue;
import spotline.report.figure.Figure;
import spotline.report.figure.SurveyFigure;
import spotline.report.text.DisplayNumber;
import spotline.run.LinkedSpectrum;
import spotline.run.RunResult;
import spotline.run.SampleComposition;
import spotline.run.SpotResult;

/** One page for the person whose sample it is, in plain words. */
public final class OwnerPage {
    private static final Identification NOTHING = new Identification(List.of(), 0, List.of());

    private final RunResult result;
    private final SampleComposition sample;
    private final List<SpotResult> spots;
    private final Optional<Sample> declared;
    private final OwnerDoubts doubts;

    private OwnerPage(RunResult result, SampleComposition sample) {
        this.result = result;
        this.sample = sample;
        this.spots = AtAGlance.spots(result, sample);
        this.declared = spots.stream()
                .flatMap(s -> result.plan().spot(s.spot()).stream())
                .flatMap(s -> s.sample().stream())
                .findFirst();
        this.doubts = new OwnerDoubts(result, sample, declared);
    }

    /** @param index of the sample among those of the result */
    public static byte[] of(RunResult result, int index, Letterhead letterhead) {
        return new OwnerPage(result, result.samples().get(index)).write(letterhead);
    }

    private byte[] write(Letterhead letterhead) {
        String name = SampleSection.name(sample);
        Markup page = PageShell.begin(name, letterhead);
        page.open("header");
        page.element("p", "What the surface is made of", "class", "kicker");
        page.element("h1", name).raw("\n");
        opening(page);
        Tables.facts(page, facts());
        page.end();
        page.open("main", "class", "owner");
        boolean states = OwnerStates.any(spots);
        if (states) page.open("div", "class", "beside");
        composition(page);
        if (states) {
            OwnerStates.write(page, spots);
            page.end();
        }
        doubts.notTheSample(page);
        survey(page);
        doubts.uncertain(page);
        cautions(page);
        page.end();
        return PageShell.end(page, letterhead, "Made with Spotline " + result.programVersion());
    }

    private void opening(Markup page) {
        boolean accepted =
                OpeningLine.judgement(result, sample).map(j -> j.accepted()).orElse(false);
        if (accepted) OpeningLine.of(result, sample).ifPresent(text -> page.element("p", text, "class", "opening"));
    }

    private List<Tables.Fact> facts() {
        List<Tables.Fact> facts = new ArrayList<>();
        facts.add(new Tables.Fact("Sample number", declared.flatMap(Sample::id).orElse("")));
        facts.add(new Tables.Fact("Owner", declared.flatMap(Sample::owner).orElse("")));
        facts.add(new Tables.Fact(
                "Measured", result.plan().file().date().map(Object::toString).orElse("")));
        facts.add(new Tables.Fact("Places measured", spots.size() == 1 ? "one" : Integer.toString(spots.size())));
        return facts;
    }

    private void composition(Markup page) {
        List<String> elements = ElementOrder.ofSamples(result).stream()
                .filter(e -> !(value(e) instanceof SampleValue.NotLookedFor))
                .toList();
        page.open("section").element("h2", "Composition");
        if (elements.isEmpty()) {
            page.element("p", "There is no composition: nothing was measured here that could be evaluated.");
            page.end();
            return;
        }
        boolean held = doubts.held();
        if (held) {
            page.element("p", "The composition is held back: “What is uncertain” says why.", "class", "banner");
        } else if (doubts.stopped()) {
            page.element(
                    "p", "Do not use these numbers yet: \u201cWhat is uncertain\u201d says why.", "class", "banner");
        }
        boolean numbers = elements.stream().anyMatch(e -> value(e) instanceof SampleValue.Mean);
        boolean below = !held && elements.stream().anyMatch(e -> value(e) instanceof SampleValue.Below);
        List<String> headings = new ArrayList<>(List.of("Element", "#Atoms in a hundred", "#\u00b1"));
        Tables.begin(page, "owner-composition", headings);
        for (String element : elements) {
            page.open("tr").element("th", OpeningLine.name(element) + " (" + element + ")", "scope", "row");
            row(page, value(element), held);
            page.end();
        }
        Tables.end(page);
        OwnSettings own = OwnSettings.of(result);
        for (String spot : sample.spots()) {
            if (!own.at(spot)) continue;
            page.element(
                    "p",
                    "Place " + spot + " was evaluated with settings of its own; the report says which.",
                    "class",
                    "note");
        }
        if (numbers) {
            page.element(
                    "p",
                    "Counted are the atoms of the outermost few nanometres, without hydrogen and helium, which this method"
                            + " does not see. The true value lies within the \u00b1 in about two cases of three, and within"
                            + " twice the \u00b1 in about nineteen of twenty, if the surface is as even as it was taken to"
                            + " be."
                            + (below ? " \u201cLess than\u201d: looked for and not found." : ""),
                    "class",
                    "note");
        }
        page.end();
    }

    private SampleValue value(String element) {
        return SampleValue.of(result, sample, element);
    }

    /** Of a composition that is held back no row is told: what was found and what not may change with its reason. */
    private static void row(Markup page, SampleValue value, boolean held) {
        if (!held && value instanceof SampleValue.Mean mean) {
            DisplayNumber shown = DisplayNumber.of(mean.atomicPercent(), mean.standardUncertainty(), 1);
            Tables.number(page, shown.value());
            Tables.number(page, shown.uncertainty().isEmpty() ? "not known" : shown.uncertainty());
        } else if (!held && value instanceof SampleValue.Below below) {
            Tables.number(
                    page,
                    below.limit().isPresent()
                            ? "less than " + DisplayNumber.limit(below.limit().getAsDouble())
                            : "not found");
            Tables.number(page, "");
        } else {
            Tables.number(page, "held back");
            Tables.number(page, "");
        }
    }

    private void survey(Markup page) {
        for (int i = 0; i < spots.size(); i++) {
            SpotResult spot = spots.get(i);
            Optional<LinkedSpectrum> survey =
                    spot.spectra().stream().filter(LinkedSpectrum::survey).findFirst();
            if (survey.isEmpty()) continue;
            page.open("section").element("h2", "The overview measurement");
            Figure figure = SurveyFigure.low(survey.get(), spot.identification().orElse(NOTHING), "o" + i);
            Figures.write(
                    page,
                    figure,
                    "X-rays free electrons from the surface; the curve counts them by the energy that had held them in their"
                            + " atoms. Each element makes peaks (lines) at energies of its own: the name at a peak says"
                            + " whose it is, and from which shell of the atom"
                            + (spots.size() > 1 ? ". This is place " + spot.spot() : "") + ".");
            unexplained(page, spot);
            page.end();
            return;
        }
    }

    private static void unexplained(Markup page, SpotResult spot) {
        List<String> doubtful = spot.identification().stream()
                .flatMap(found -> found.elements().stream())
                .filter(e -> e.verdict() != spotline.analysis.identify.Verdict.PRESENT)
                .map(ElementSeen::element)
                .map(OpeningLine::name)
                .toList();
        if (doubtful.isEmpty()) return;
        page.element(
                "p",
                "With a question mark: possible, but not sure: " + String.join(", ", doubtful) + ".",
                "class",
                "note");
    }

    private void cautions(Markup page) {
        page.open("section").element("h2", "Cautions").open("ul");
        declared.flatMap(Sample::hazards).ifPresent(text -> page.element("li", "Declared of this sample: " + text));
        page.element(
                "li",
                "Handle the sample as its safety data and your own rules say; this page replaces neither, and certifies neither"
                        + " safety nor conformity with any rule.");
        page.element(
                "li",
                "X-rays and vacuum may have changed the measured places. Keep the sample apart until you know that this does not"
                        + " matter.");
        page.close().end();
    }
}
