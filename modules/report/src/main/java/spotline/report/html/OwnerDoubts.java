package spotline.report.html;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import spotline.core.Finding;
import spotline.core.Severity;
import spotline.holder.CarbonOrigin;
import spotline.holder.Mount;
import spotline.holder.Sample;
import spotline.holder.Spot;
import spotline.report.facts.ElementOrder;
import spotline.report.facts.OpeningLine;
import spotline.report.facts.SampleValue;
import spotline.report.plain.PlainFinding;
import spotline.report.text.DisplayNumber;
import spotline.run.RunResult;
import spotline.run.SampleComposition;

/** What may not be the sample itself, and what is uncertain: findings in plain words, each once. */
final class OwnerDoubts {
    private final RunResult result;
    private final SampleComposition sample;
    private final Optional<Sample> declared;
    private final List<Finding> findings;

    OwnerDoubts(RunResult result, SampleComposition sample, Optional<Sample> declared) {
        this.result = result;
        this.sample = sample;
        this.declared = declared;
        Set<String> ids = Set.copyOf(sample.spots());
        this.findings = result.findings().stream()
                .filter(f -> f.severity() != Severity.NOTE && (ids.contains(f.spot()) || ofTheRun(f)))
                .toList();
    }

    /** What concerns all samples of a load and touches the numbers; the plan of the work is not the owner's. */
    private boolean ofTheRun(Finding finding) {
        if (!finding.spot().isEmpty() || PlainFinding.ofRule(finding.rule()).isEmpty()) return false;
        return !finding.rule().equals("transmission-not-known") || flat();
    }

    private boolean flat() {
        return AtAGlance.spots(result, sample).stream()
                .flatMap(s -> s.intensities().stream())
                .anyMatch(i -> i.transmissionApplied().equals("flat"));
    }

    private SampleValue value(String element) {
        return SampleValue.of(result, sample, element);
    }

    void notTheSample(Markup page) {
        List<String> lines = new ArrayList<>();
        boolean carbonOwn = declared.map(Sample::carbon).orElse(CarbonOrigin.UNKNOWN) == CarbonOrigin.OWN;
        if (value("C") instanceof SampleValue.Mean && !carbonOwn) {
            lines.add(
                    "Carbon, and some of the oxygen: every surface that has been in air carries a thin film of it. How much of"
                            + " it is the sample\u2019s own cannot be told from these numbers alone.");
        }
        surprising().ifPresent(lines::add);
        lines.addAll(sentences(true));
        String mounts = mounts();
        if (!mounts.isEmpty()) {
            lines.add("The sample was held by: " + mounts
                    + ". Where the checks see a sign of it in the result, they say so here.");
        }
        if (lines.isEmpty()) return;
        page.open("section").element("h2", "What may not be the sample itself").open("ul");
        lines.forEach(line -> page.element("li", line));
        page.close().end();
    }

    private Optional<String> surprising() {
        Set<String> expected =
                declared.map(s -> Set.copyOf(s.expectedElements())).orElse(Set.of());
        if (expected.isEmpty()) return Optional.empty();
        List<String> names = ElementOrder.ofSamples(result).stream()
                .filter(e -> value(e) instanceof SampleValue.Mean)
                .filter(e -> !expected.contains(e) && !e.equals("C") && !e.equals("O"))
                .map(OpeningLine::name)
                .toList();
        if (names.isEmpty()) return Optional.empty();
        return Optional.of("Found, but not among the elements named when the sample was handed in: "
                + String.join(", ", names)
                + ". It may come from handling, storage or the mount, or belong to the sample after all.");
    }

    private String mounts() {
        return sample.spots().stream()
                .flatMap(id -> result.plan().spot(id).stream())
                .map(Spot::mount)
                .map(Mount::method)
                .map(m -> RunHeader.known(m.word()).replace('-', ' '))
                .filter(m -> !m.isEmpty() && !m.equals("other"))
                .distinct()
                .collect(Collectors.joining(", "));
    }

    void uncertain(Markup page) {
        if (ElementOrder.ofSamples(result).stream().allMatch(e -> value(e) instanceof SampleValue.NotLookedFor)) return;
        Set<String> lines = new LinkedHashSet<>();
        missing().ifPresent(lines::add);
        lines.addAll(sentences(false));
        boolean doubts = !lines.isEmpty();
        page.open("section").element("h2", "What is uncertain");
        if (!doubts) page.element("p", "The checks found nothing that puts these numbers in doubt.");
        if (sample.spots().size() == 1) {
            lines.add("One place was measured: how even the surface is, these numbers do not tell.");
        }
        lines.add(
                "The numbers hold for a surface that is one even mixture. A film, grains or layers change them: ask before"
                        + " you build on small differences.");
        page.open("ul");
        lines.forEach(line -> page.element("li", line));
        page.end();
        if (doubts) {
            page.element("p", "The full report gives each of these with its figures.", "class", "note");
        }
        page.end();
    }

    /** Elements that the owner named and that were looked for in vain. */
    private Optional<String> missing() {
        if (held()) return Optional.empty();
        List<String> names = new ArrayList<>();
        for (String element : declared.map(Sample::expectedElements).orElse(List.of())) {
            if (!(value(element) instanceof SampleValue.Below below)) continue;
            names.add(OpeningLine.name(element)
                    + (below.limit().isPresent()
                            ? " (less than " + DisplayNumber.limit(below.limit().getAsDouble()) + " atoms in a hundred)"
                            : ""));
        }
        if (names.isEmpty()) return Optional.empty();
        return Optional.of("Named when the sample was handed in, but not found: " + String.join(", ", names) + ".");
    }

    /** Whether the composition is withheld. */
    boolean held() {
        return ElementOrder.ofSamples(result).stream().anyMatch(e -> value(e) instanceof SampleValue.Withheld);
    }

    /** Whether something must be settled before the numbers are used. */
    boolean stopped() {
        return findings.stream().anyMatch(f -> f.severity() == Severity.STOP);
    }

    private Set<String> sentences(boolean mount) {
        Set<String> said = new LinkedHashSet<>();
        for (Finding finding : findings) {
            PlainFinding plain = PlainFinding.of(finding);
            if (plain.topic() == PlainFinding.Topic.SAID) continue;
            if ((plain.topic() == PlainFinding.Topic.MOUNT) != mount) continue;
            boolean stop = finding.severity() == Severity.STOP;
            // Amounts that nobody sees need no further doubt.
            if (held() && !stop && plain.topic() == PlainFinding.Topic.AMOUNTS) continue;
            String begin = !stop
                    ? ""
                    : held() ? "The composition is held back. " : "Do not use these numbers before this is settled. ";
            said.add(begin + plain.sentence());
        }
        return said;
    }
}
