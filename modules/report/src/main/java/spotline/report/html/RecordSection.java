package spotline.report.html;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import spotline.core.Decimal;
import spotline.holder.Sample;
import spotline.holder.Spot;
import spotline.run.LinkedSpectrum;
import spotline.run.RunResult;
import spotline.run.SpotResult;

/**
 * What a reader needs to judge and repeat the measurement; what nobody wrote down says so.
 *
 * <p>Source of the fields: ISO 16243, ISO 19318, ISO 20903, ISO 18118 and ISO 20579 by their scopes.
 */
final class RecordSection {
    private RecordSection() {}

    static void write(Markup page, RunResult result, Form form) {
        page.open("section", "id", "record").element("h2", "Record");
        page.element(
                "p",
                "From the holder run and the headers of the files. \u201cNot recorded\u201d is what neither says.",
                "class",
                "note");
        page.element("h3", "Instrument");
        Tables.facts(page, InstrumentRecord.of(result));
        page.element("h3", "Scans");
        Tables.facts(page, scans(result, form));
        CalibrationRecordBlock.write(page, result);
        if (form == Form.FULL) {
            page.element("h3", "Interpretation");
            Tables.facts(page, interpretation(result));
            page.element("h3", "Samples and mounts");
            samples(page, result);
        }
        page.end();
    }

    private static List<Tables.Fact> scans(RunResult result, Form form) {
        List<Tables.Fact> facts = new ArrayList<>();
        facts.add(new Tables.Fact(
                "Step",
                distinct(
                        result,
                        s -> Decimal.significant(s.scan().stepEv(), 3)
                                + (s.survey() ? " eV (survey)" : " eV (narrow)"))));
        facts.add(new Tables.Fact(
                "Time on each channel",
                distinct(
                        result,
                        s -> s.scan().secondsPerChannel().isPresent()
                                ? Decimal.significant(
                                                s.scan().secondsPerChannel().getAsDouble(), 3) + " s"
                                : "")));
        facts.add(new Tables.Fact("First spectrum", time(result, true)));
        facts.add(new Tables.Fact("Last spectrum", time(result, false)));
        facts.add(new Tables.Fact("Counting time in all", countingTime(result)));
        facts.add(new Tables.Fact(
                "Range, dwell, scans, time of each",
                form == Form.FULL ? "under Provenance, a row a spectrum" : ranges(result)));
        return facts;
    }

    private static String ranges(RunResult result) {
        return distinct(
                result,
                s -> s.region() + " " + Decimal.fixed(s.scan().range().highEv(), 0) + " to "
                        + Decimal.fixed(s.scan().range().lowEv(), 0) + " eV");
    }

    /** Channels times the time on each; empty unless it is known of every spectrum. */
    private static String countingTime(RunResult result) {
        double seconds = 0;
        for (SpotResult spot : result.spots()) {
            for (LinkedSpectrum spectrum : spot.spectra()) {
                OptionalDouble each = ProvenanceSection.countingSeconds(spectrum);
                if (each.isEmpty()) return "";
                seconds += each.getAsDouble();
            }
        }
        return Decimal.fixed(seconds / 60, 0) + " min, without moving, settling and waiting";
    }

    /** What was read into the numbers beyond the plain sum of atoms. */
    private static List<Tables.Fact> interpretation(RunResult result) {
        Set<String> variants = new LinkedHashSet<>();
        result.spots().forEach(s -> s.variants().forEach(v -> variants.add(v.name())));
        boolean layers = variants.stream().anyMatch(v -> v.contains("layer"));
        return List.of(
                new Tables.Fact(
                        "Layer model",
                        layers ? "see the other bases of each spot" : "none: the surface is taken as homogeneous"),
                new Tables.Fact("Literature behind chemical states", literature(result)));
    }

    private static String literature(RunResult result) {
        boolean states = result.spots().stream().anyMatch(s -> !s.states().isEmpty());
        return states
                ? "names and energies of the states are those of the models, with each peak fit"
                : "no state was assigned";
    }

    private static String time(RunResult result, boolean first) {
        return result.spots().stream()
                .flatMap(s -> s.spectra().stream())
                .flatMap(s -> s.time().stream())
                .reduce((a, b) -> a.isBefore(b) == first ? a : b)
                .map(t -> t.toString().replace('T', ' '))
                .orElse("");
    }

    private static String distinct(RunResult result, Function<LinkedSpectrum, String> what) {
        Set<String> words = new LinkedHashSet<>();
        for (SpotResult spot : result.spots()) {
            for (LinkedSpectrum spectrum : spot.spectra()) {
                String word = what.apply(spectrum);
                if (!word.isEmpty()) words.add(word);
            }
        }
        return String.join(", ", words);
    }

    /** What is recorded of no sample at all is named beneath, and takes no column. */
    private static void samples(Markup page, RunResult result) {
        Map<String, Function<Spot, String>> columns = columns();
        List<Spot> spots = result.plan().spots();
        List<String> missing = columns.entrySet().stream()
                .filter(c -> spots.stream().allMatch(s -> c.getValue().apply(s).isEmpty()))
                .map(Map.Entry::getKey)
                .toList();
        columns.keySet().removeAll(missing);
        List<String> headings = new ArrayList<>(List.of("Spot"));
        headings.addAll(columns.keySet());
        Tables.begin(page, "record", headings);
        for (Spot spot : spots) {
            page.open("tr").element("th", spot.id(), "scope", "row");
            columns.values().forEach(column -> cell(page, column.apply(spot)));
            page.end();
        }
        Tables.end(page);
        if (missing.isEmpty()) return;
        page.element("p", "Not recorded of any sample: " + String.join(", ", missing) + ".", "class", "note");
    }

    private static Map<String, Function<Spot, String>> columns() {
        Map<String, Function<Spot, String>> columns = new LinkedHashMap<>();
        columns.put("Sample", spot -> spot.sample().map(Sample::name).orElse(""));
        columns.put("Id", spot -> spot.sample().flatMap(Sample::id).orElse(""));
        columns.put(
                "Form",
                spot -> spot.sample().map(s -> RunHeader.known(s.form().word())).orElse(""));
        columns.put("Mount", spot -> RunHeader.known(spot.mount().method().word()));
        columns.put(
                "Electrical state",
                spot -> RunHeader.known(spot.mount().electricalState().word()));
        columns.put(
                "Position, mm",
                spot -> spot.position()
                        .map(p -> Decimal.text(p.x()) + ", " + Decimal.text(p.y()))
                        .orElse(""));
        columns.put(
                "Treatment and history",
                spot -> spot.sample().flatMap(Sample::history).orElse(""));
        columns.put("Storage", spot -> spot.sample().flatMap(Sample::storage).orElse(""));
        columns.put("Atmosphere on the way", RecordSection::atmosphere);
        columns.put("Temperature limit of the mount", RecordSection::temperature);
        columns.put("Photograph", spot -> "");
        return columns;
    }

    private static String temperature(Spot spot) {
        return spot.mount().maxTemperatureC().isPresent()
                ? Decimal.text(spot.mount().maxTemperatureC()) + " \u00b0C"
                : "";
    }

    private static String atmosphere(Spot spot) {
        return spot.specimen()
                .transfer()
                .map(t -> Stream.of(
                                t.vessel().orElse(""),
                                t.atmosphere().orElse(""),
                                t.secondsInAir().isPresent() ? Decimal.text(t.secondsInAir()) + " s in air" : "")
                        .filter(s -> !s.isEmpty())
                        .collect(Collectors.joining(", ")))
                .orElse("");
    }

    private static void cell(Markup page, String text) {
        if (text.isEmpty()) page.element("td", "not recorded", "class", "missing");
        else Tables.cell(page, text);
    }
}
