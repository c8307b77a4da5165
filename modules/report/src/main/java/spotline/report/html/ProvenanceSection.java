package spotline.report.html;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import spotline.core.Decimal;
import spotline.holder.SpectrumEntry;
import spotline.report.facts.HeaderFacts;
import spotline.report.facts.MethodFacts;
import spotline.report.text.DisplayNumber;
import spotline.run.LinkedSpectrum;
import spotline.run.RunResult;
import spotline.run.SpotResult;
import spotline.spectra.BindingScan;

/** What went in: files by their sums, spectra by file, block and line. */
final class ProvenanceSection {
    private ProvenanceSection() {}

    static void write(Markup page, RunResult result, Form form) {
        page.open("section", "id", "provenance").element("h2", "Provenance");
        page.open("p").text("Spotline " + result.programVersion() + ", seed " + result.seed());
        List<String> steps = MethodFacts.steps(result);
        if (!steps.isEmpty()) page.text("; steps " + String.join(", ", steps));
        page.text(". The same treatment of the same files gives the same numbers.")
                .end();
        Tables.begin(page, "files", List.of("File", "SHA-256"));
        for (Map.Entry<String, String> file : result.files().entrySet()) {
            page.open("tr").element("th", file.getKey(), "scope", "row");
            page.element("td", file.getValue(), "class", "sum").end();
        }
        Tables.end(page);
        if (form == Form.FULL) spectra(page, result);
        page.end();
    }

    private static void spectra(Markup page, RunResult result) {
        page.element("h3", "Spectra");
        Tables.begin(
                page,
                "spectra",
                List.of(
                        "Spot",
                        "Region",
                        "Role",
                        "File",
                        "#Block",
                        "#Line",
                        "#Range, eV",
                        "#Step, eV",
                        "#Dwell, s",
                        "#Scans",
                        "#In all, min",
                        "#Pass energy, eV",
                        "#Photon energy, eV",
                        "Statistics",
                        "Measured"));
        for (SpotResult spot : result.spots()) {
            for (LinkedSpectrum spectrum : spot.spectra()) row(page, result, spot, spectrum);
        }
        Tables.end(page);
    }

    private static void row(Markup page, RunResult result, SpotResult spot, LinkedSpectrum spectrum) {
        BindingScan scan = spectrum.scan();
        page.open("tr").element("th", spot.spot(), "scope", "row");
        Tables.cell(page, spectrum.region());
        Tables.cell(page, RunHeader.known(spectrum.role().word()));
        Tables.cell(page, spectrum.source().file());
        Tables.number(page, Integer.toString(spectrum.source().block()));
        Tables.number(page, Integer.toString(spectrum.source().line()));
        Tables.number(
                page,
                DisplayNumber.fixed(scan.range().highEv(), 1) + " to "
                        + DisplayNumber.fixed(scan.range().lowEv(), 1));
        Tables.number(page, Decimal.significant(scan.stepEv(), 4));
        Optional<SpectrumEntry.TextColumns> columns = columns(result, spot, spectrum);
        OptionalDouble dwell = columns.map(SpectrumEntry.TextColumns::dwellSeconds)
                .orElseGet(() -> HeaderFacts.dwellSeconds(spectrum));
        OptionalDouble scans = columns.map(c -> number(c.scans())).orElseGet(() -> HeaderFacts.scans(spectrum));
        Tables.number(page, recorded(Decimal.text(dwell)));
        Tables.number(page, recorded(Decimal.text(scans)));
        OptionalDouble seconds = countingSeconds(spectrum);
        Tables.number(page, recorded(seconds.isPresent() ? Decimal.fixed(seconds.getAsDouble() / 60, 1) : ""));
        Tables.number(
                page,
                recorded(
                        scan.passEnergyEv().isPresent()
                                ? Decimal.significant(scan.passEnergyEv().getAsDouble(), 4)
                                : ""));
        Tables.number(page, Decimal.fixed(scan.photonEnergyEv(), 1));
        Tables.cell(page, scan.countsKnown() ? "counts" : "not known");
        Tables.cell(
                        page,
                        recorded(spectrum.time()
                                .map(time -> time.toString().replace('T', ' '))
                                .orElse("")))
                .end();
    }

    /** As the holder run declares them for a file without a header. */
    private static Optional<SpectrumEntry.TextColumns> columns(
            RunResult result, SpotResult spot, LinkedSpectrum spectrum) {
        return result.plan().spot(spot.spot()).stream()
                .flatMap(s -> s.spectra().stream())
                .filter(e -> e.file().equals(spectrum.source().file()))
                .flatMap(e -> e.columns().stream())
                .findFirst();
    }

    private static OptionalDouble number(OptionalInt value) {
        return value.isPresent() ? OptionalDouble.of(value.getAsInt()) : OptionalDouble.empty();
    }

    /** Channels times the time on each. */
    static OptionalDouble countingSeconds(LinkedSpectrum spectrum) {
        OptionalDouble channel = spectrum.scan().secondsPerChannel();
        return channel.isPresent()
                ? OptionalDouble.of(channel.getAsDouble() * spectrum.scan().channels())
                : channel;
    }

    private static String recorded(String text) {
        return text.isEmpty() ? "not recorded" : text;
    }
}
