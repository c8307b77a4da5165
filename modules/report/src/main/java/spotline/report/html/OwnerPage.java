package spotline.report.html;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import spotline.analysis.identify.ElementSeen;
import spotline.analysis.identify.Identification;
import spotline.core.Finding;
import spotline.core.Severity;
import spotline.holder.CarbonOrigin;
import spotline.holder.Sample;
import spotline.holder.Spot;
import spotline.report.facts.ElementOrder;
import spotline.report.facts.OpeningLine;
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

    private OwnerPage(RunResult result, SampleComposition sample) {
        this.result = result;
        this.sample = sample;
        this.spots = AtAGlance.spots(result, sample);
        this.declared = spots.stream()
                .flatMap(s -> result.plan().spot(s.spot()).stream())
                .flatMap(s -> s.sample().stream())
                .findFirst();
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
        composition(page);
        notYours(page);
        survey(page);
        uncertain(page);
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
        page.open("section").element("h2", "Composition");
        boolean remarks = ElementOrder.ofSamples(result).stream()
                .map(element -> SampleValue.of(result, sample, element))
                .anyMatch(v -> v instanceof SampleValue.Below || v instanceof SampleValue.Withheld);
        List<String> headings = new ArrayList<>(List.of("Element", "#Atoms in a hundred", "#\u00b1"));
        if (remarks) headings.add("Remark");
        Tables.begin(page, "owner-composition", headings);
        for (String element : ElementOrder.ofSamples(result)) {
            SampleValue value = SampleValue.of(result, sample, element);
            if (value instanceof SampleValue.NotLookedFor) continue;
            page.open("tr").element("th", OpeningLine.name(element) + " (" + element + ")", "scope", "row");
            if (value instanceof SampleValue.Mean mean) {
                DisplayNumber shown = DisplayNumber.of(mean.atomicPercent(), mean.standardUncertainty(), 1);
                Tables.number(page, shown.value());
                Tables.number(page, shown.uncertainty().isEmpty() ? "not known" : shown.uncertainty());
                if (remarks) Tables.cell(page, "");
            } else if (value instanceof SampleValue.Below below) {
                String limit = below.limit().isPresent()
                        ? "less than " + DisplayNumber.limit(below.limit().getAsDouble())
                        : "not found";
                Tables.number(page, limit);
                Tables.number(page, "");
                Tables.cell(page, "looked for and not found");
            } else {
                Tables.number(page, "held back");
                Tables.number(page, "");
                Tables.cell(page, "see \u201cWhat is uncertain\u201d");
            }
            page.end();
        }
        Tables.end(page);
        page.element(
                "p",
                "Counted are the atoms of the outermost few nanometres, without hydrogen and helium, which this method does"
                        + " not see. The true value lies within the \u00b1 in about two cases of three, and within twice the"
                        + " \u00b1 in about nineteen of twenty, if the surface is as even as it was taken to be.",
                "class",
                "note");
        page.end();
    }

    private void notYours(Markup page) {
        List<String> lines = new ArrayList<>();
        boolean carbonOwn = declared.map(Sample::carbon).orElse(CarbonOrigin.UNKNOWN) == CarbonOrigin.OWN;
        boolean hasCarbon = SampleValue.of(result, sample, "C") instanceof SampleValue.Mean;
        if (hasCarbon && !carbonOwn) {
            lines.add(
                    "Carbon, and some of the oxygen: every surface that has been in air carries a thin film of it. How much of"
                            + " it is the sample\u2019s own cannot be told from these numbers alone.");
        }
        Set<String> expected =
                declared.map(s -> Set.copyOf(s.expectedElements())).orElse(Set.of());
        Set<String> surprising = new TreeSet<>();
        for (String element : ElementOrder.ofSamples(result)) {
            boolean there = SampleValue.of(result, sample, element) instanceof SampleValue.Mean;
            boolean air = element.equals("C") || element.equals("O");
            if (there && !expected.isEmpty() && !expected.contains(element) && !air) surprising.add(element);
        }
        if (!surprising.isEmpty()) {
            lines.add("Not among the elements named when the sample was handed in: "
                    + surprising.stream().map(OpeningLine::name).collect(Collectors.joining(", "))
                    + ". They may come from handling, storage or the mount.");
        }
        for (Finding finding : own()) if (ofMount(finding)) lines.add(finding.message());
        Set<String> mounts = new LinkedHashSet<>();
        for (SpotResult spot : spots) {
            result.plan()
                    .spot(spot.spot())
                    .map(Spot::mount)
                    .map(m -> RunHeader.known(m.method().word()).replace('-', ' '))
                    .filter(m -> !m.isEmpty())
                    .ifPresent(mounts::add);
        }
        if (!mounts.isEmpty()) {
            lines.add("The sample was held by: " + String.join(", ", mounts)
                    + ". What the mount may add to the result is said above where there is a sign of it.");
        }
        if (lines.isEmpty()) return;
        page.open("section").element("h2", "What may not be the sample itself").open("ul");
        lines.forEach(line -> page.element("li", line));
        page.close().end();
    }

    private static boolean ofMount(Finding finding) {
        String rule = finding.rule();
        return finding.severity() != Severity.NOTE
                && (rule.contains("mount")
                        || rule.contains("contamin")
                        || rule.contains("unmoved")
                        || rule.contains("undeclared")
                        || rule.contains("fingerprint"));
    }

    private List<Finding> own() {
        Set<String> ids = Set.copyOf(sample.spots());
        return result.findings().stream().filter(f -> ids.contains(f.spot())).toList();
    }

    private void survey(Markup page) {
        for (int i = 0; i < spots.size(); i++) {
            SpotResult spot = spots.get(i);
            Optional<LinkedSpectrum> survey =
                    spot.spectra().stream().filter(LinkedSpectrum::survey).findFirst();
            if (survey.isEmpty()) continue;
            page.open("section").element("h2", "The overview measurement");
            Figure figure = SurveyFigure.of(survey.get(), spot.identification().orElse(NOTHING), "o" + i);
            Figures.write(
                    page,
                    figure,
                    "Each element shows itself at energies of its own; the names stand at the lines they explain"
                            + (spots.size() > 1 ? ". Place " + spot.spot() : "") + ".");
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

    private void uncertain(Markup page) {
        List<Finding> doubts = own().stream()
                .filter(f -> f.severity() != Severity.NOTE && !ofMount(f))
                .toList();
        page.open("section").element("h2", "What is uncertain");
        if (doubts.isEmpty() && spots.size() > 1) {
            page.element("p", "The checks found nothing that puts these numbers in doubt.");
        }
        page.open("ul");
        Set<String> said = new LinkedHashSet<>();
        for (Finding finding : doubts) {
            String begin = finding.severity() == Severity.STOP ? "Held back: " : "";
            if (said.add(finding.message())) page.element("li", begin + finding.message());
        }
        if (spots.size() == 1) {
            page.element("li", "One place was measured: how even the surface is, these numbers do not tell.");
        }
        page.element(
                "li",
                "The numbers hold for a surface of one even mixture. A film, grains or layers change them; ask before you build"
                        + " on small differences.");
        page.close().end();
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
