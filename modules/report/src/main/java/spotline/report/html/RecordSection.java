package spotline.report.html;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import spotline.core.Decimal;
import spotline.holder.Instrument;
import spotline.holder.Mount;
import spotline.holder.Sample;
import spotline.holder.Spot;
import spotline.report.facts.MethodFacts;
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
        Tables.facts(page, instrument(result));
        page.element("h3", "Scans");
        Tables.facts(page, scans(result));
        page.element("h3", "Calibration");
        Tables.facts(page, calibration(result));
        if (form == Form.FULL) {
            page.element("h3", "Samples and mounts");
            samples(page, result);
        }
        page.end();
    }

    private static List<Tables.Fact> instrument(RunResult result) {
        Instrument instrument = result.plan().file().instrument();
        List<Tables.Fact> facts = new ArrayList<>();
        facts.add(new Tables.Fact("Model", instrument.name().orElse("")));
        facts.add(new Tables.Fact("X-ray source and photon energy", RunHeader.source(result)));
        facts.add(new Tables.Fact("X-ray power", ""));
        facts.add(new Tables.Fact(
                "Analysis area",
                instrument
                        .analysisArea()
                        .map(a -> a.x() + " \u00d7 " + a.y() + " mm")
                        .orElse("")));
        facts.add(new Tables.Fact("Source to analyser", RunHeader.degrees(instrument.sourceAnalyserAngleDeg())));
        facts.add(new Tables.Fact("Emission angle", RunHeader.degrees(instrument.emissionAngleDeg())));
        facts.add(new Tables.Fact("Analyser mode", ""));
        facts.add(new Tables.Fact("Pass energy", passEnergies(result)));
        facts.add(new Tables.Fact("Lens", ""));
        facts.add(new Tables.Fact("Pressure", ""));
        facts.add(new Tables.Fact("Ion gun", ionGun(result)));
        facts.add(new Tables.Fact(
                "Charge neutraliser",
                RunHeader.known(instrument.chargeNeutraliser().word())));
        return facts;
    }

    private static String ionGun(RunResult result) {
        List<String> spots = result.plan().spots().stream()
                .filter(Spot::sputtered)
                .map(Spot::id)
                .toList();
        return spots.isEmpty() ? "not used by the record" : "used at spot " + String.join(", ", spots);
    }

    private static String passEnergies(RunResult result) {
        return distinct(
                result,
                s -> s.scan().passEnergyEv().isPresent()
                        ? Decimal.significant(s.scan().passEnergyEv().getAsDouble(), 4)
                                + (s.survey() ? " eV (survey)" : " eV (narrow)")
                        : "");
    }

    private static List<Tables.Fact> scans(RunResult result) {
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
        facts.add(new Tables.Fact("Order and details", "under Provenance, a row a spectrum"));
        return facts;
    }

    private static String time(RunResult result, boolean first) {
        return result.spots().stream()
                .flatMap(s -> s.spectra().stream())
                .flatMap(s -> s.time().stream())
                .reduce((a, b) -> a.isBefore(b) == first ? a : b)
                .map(t -> t.toString().replace('T', ' '))
                .orElse("");
    }

    private static List<Tables.Fact> calibration(RunResult result) {
        Instrument instrument = result.plan().file().instrument();
        List<Tables.Fact> facts = new ArrayList<>();
        facts.add(new Tables.Fact("Energy scale", instrument.energyCalibration().orElse("")));
        facts.add(new Tables.Fact(
                "Energy-scale checks",
                result.findings().stream()
                        .filter(f -> f.rule().startsWith("energy-"))
                        .map(f -> f.message())
                        .distinct()
                        .collect(Collectors.joining(" "))));
        facts.add(new Tables.Fact("Intensity scale", String.join("; ", MethodFacts.transmissions(result))));
        facts.add(new Tables.Fact("Limits of linear counting", ""));
        return facts;
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

    private static void samples(Markup page, RunResult result) {
        Tables.begin(
                page,
                "record",
                List.of(
                        "Spot",
                        "Sample",
                        "Id",
                        "Form",
                        "Mount",
                        "Electrical state",
                        "Position, mm",
                        "Treatment and history",
                        "Storage, transfer",
                        "Temperature limits"));
        for (Spot spot : result.plan().spots()) {
            Mount mount = spot.mount();
            page.open("tr").element("th", spot.id(), "scope", "row");
            cell(page, spot.sample().map(Sample::name).orElse(""));
            cell(page, spot.sample().flatMap(Sample::id).orElse(""));
            cell(page, spot.sample().map(s -> RunHeader.known(s.form().word())).orElse(""));
            cell(page, RunHeader.known(mount.method().word()));
            cell(page, RunHeader.known(mount.electricalState().word()));
            cell(
                    page,
                    spot.position()
                            .map(p -> Decimal.text(p.x()) + ", " + Decimal.text(p.y()))
                            .orElse(""));
            cell(page, spot.sample().flatMap(Sample::history).orElse(""));
            cell(page, spot.sample().flatMap(Sample::storage).orElse(""));
            cell(
                    page,
                    mount.maxTemperatureC().isPresent()
                            ? "mount to " + Decimal.text(mount.maxTemperatureC()) + " \u00b0C"
                            : "");
            page.end();
        }
        Tables.end(page);
    }

    private static void cell(Markup page, String text) {
        if (text.isEmpty()) page.element("td", "not recorded", "class", "missing");
        else Tables.cell(page, text);
    }
}
