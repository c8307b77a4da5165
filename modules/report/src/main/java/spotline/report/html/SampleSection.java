package spotline.report.html;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import spotline.core.Decimal;
import spotline.holder.Mount;
import spotline.holder.Sample;
import spotline.holder.Spot;
import spotline.report.facts.OpeningLine;
import spotline.run.RunResult;
import spotline.run.SampleComposition;
import spotline.run.SpotResult;

/** One sample: what is recorded of it, then its spots. */
final class SampleSection {
    private SampleSection() {}

    static String name(SampleComposition sample) {
        return sample.sample().isEmpty() ? "Sample of spot " + String.join(", ", sample.spots()) : sample.sample();
    }

    static void write(Markup page, RunResult result, int index, Form form) {
        SampleComposition sample = result.samples().get(index);
        List<SpotResult> spots = AtAGlance.spots(result, sample);
        page.open("section", "id", "sample-" + (index + 1), "class", "sample");
        page.element("h2", name(sample)).raw("\n");
        Optional<Spot> first = spots.stream()
                .flatMap(s -> result.plan().spot(s.spot()).stream())
                .findFirst();
        first.ifPresent(spot -> Tables.facts(page, facts(spot, sample)));
        opening(page, result, sample);
        for (SpotResult spot : spots) {
            SpotSection.write(page, result, spot, "f" + result.spots().indexOf(spot), form);
        }
        page.end();
    }

    /** Offered here in any case; on the owner's page only when it was accepted. */
    private static void opening(Markup page, RunResult result, SampleComposition sample) {
        Optional<String> sentence = OpeningLine.of(result, sample);
        if (sentence.isEmpty()) return;
        String judged = OpeningLine.judgement(result, sample)
                .map(j -> (j.accepted() ? "accepted" : "declined")
                        + j.by().map(by -> " by " + by).orElse(""))
                .orElse("offered, not judged by the analyst: it is not printed there");
        page.open("p", "class", "note").element("strong", "Opening sentence for the owner\u2019s page");
        page.text(" (" + judged + "): ").element("q", sentence.get()).end();
    }

    private static List<Tables.Fact> facts(Spot spot, SampleComposition composition) {
        Optional<Sample> sample = spot.sample();
        Mount mount = spot.mount();
        List<Tables.Fact> facts = new ArrayList<>();
        facts.add(new Tables.Fact("Identifier", sample.flatMap(Sample::id).orElse("")));
        facts.add(new Tables.Fact("Owner", sample.flatMap(Sample::owner).orElse("")));
        facts.add(new Tables.Fact(
                "Form", sample.map(s -> RunHeader.known(s.form().word())).orElse("")));
        facts.add(new Tables.Fact(
                "Conductivity",
                sample.map(s -> RunHeader.known(s.conductivity().word())).orElse("")));
        facts.add(new Tables.Fact("Mount", RunHeader.known(mount.method().word())));
        facts.add(new Tables.Fact(
                "Electrical state", RunHeader.known(mount.electricalState().word())));
        facts.add(new Tables.Fact(
                "Carbon", sample.map(s -> RunHeader.known(s.carbon().word())).orElse("")));
        facts.add(new Tables.Fact(
                "Expected elements",
                sample.map(s -> String.join(", ", s.expectedElements())).orElse("")));
        optional(facts, "History", sample.flatMap(Sample::history));
        optional(facts, "Storage", sample.flatMap(Sample::storage));
        optional(facts, "Hazards", sample.flatMap(Sample::hazards));
        optional(facts, "Notes", sample.flatMap(Sample::notes));
        if (!mount.materials().isEmpty()) {
            facts.add(
                    new Tables.Fact("Near the spot", mount.materials().stream().collect(Collectors.joining(", "))));
        }
        facts.add(new Tables.Fact("Spots", String.join(", ", composition.spots())));
        return facts;
    }

    private static void optional(List<Tables.Fact> facts, String name, Optional<String> value) {
        value.ifPresent(text -> facts.add(new Tables.Fact(name, text)));
    }

    /** "x 11, y 7.5 mm", empty where not recorded. */
    static String position(Optional<Spot> spot) {
        return spot.flatMap(Spot::position)
                .map(p -> "x " + Decimal.text(p.x()) + " mm, y " + Decimal.text(p.y()) + " mm")
                .orElse("");
    }
}
