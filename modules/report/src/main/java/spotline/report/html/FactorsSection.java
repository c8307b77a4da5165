package spotline.report.html;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import spotline.analysis.quantify.FactorSet;
import spotline.core.Decimal;
import spotline.run.RunResult;
import spotline.run.SpotResult;

/** The sets of sensitivity factors that compositions rest on, and what each takes for granted. */
final class FactorsSection {
    private FactorsSection() {}

    static void write(Markup page, RunResult result) {
        page.open("section", "id", "factors").element("h2", "Sensitivity factors");
        Map<FactorSet, List<String>> sets = new LinkedHashMap<>();
        for (SpotResult spot : result.spots()) {
            spot.factors()
                    .ifPresent(set ->
                            sets.computeIfAbsent(set, s -> new ArrayList<>()).add(spot.spot()));
        }
        if (sets.isEmpty()) page.element("p", "None is on record with the results.", "class", "note");
        sets.forEach((set, spots) -> {
            page.element("h3", set.name());
            Tables.facts(page, facts(set, spots));
        });
        page.end();
    }

    private static List<Tables.Fact> facts(FactorSet set, List<String> spots) {
        String backgrounds = set.backgrounds().isEmpty()
                ? "any"
                : String.join(
                        ", ",
                        set.backgrounds().stream()
                                .map(FactorSet.BackgroundFamily::word)
                                .toList());
        return List.of(
                new Tables.Fact("Kind", set.kind().word()),
                new Tables.Fact("Source", set.source()),
                new Tables.Fact(
                        "Photon energy",
                        set.photonEnergyEv().isPresent()
                                ? Decimal.fixed(set.photonEnergyEv().getAsDouble(), 1) + " eV"
                                : "computed for each spectrum"),
                new Tables.Fact(
                        "Source to analyser",
                        set.sourceAnalyserAngleDeg().isPresent()
                                ? Decimal.fixed(set.sourceAnalyserAngleDeg().getAsDouble(), 1) + "\u00b0"
                                : "computed for the angle on record"),
                new Tables.Fact(
                        "Response of the spectrometer",
                        set.transmission().word().replace('-', ' ')),
                new Tables.Fact("Mean free path", set.meanFreePath()),
                new Tables.Fact("Made for backgrounds", backgrounds),
                new Tables.Fact("Shake-up", set.shakeUpInside() ? "inside the intensity" : "not in the intensity"),
                new Tables.Fact("Covers", set.lines()),
                new Tables.Fact("Spots", String.join(", ", spots)));
    }
}
