package spotline.report.html;

import java.util.List;
import java.util.Map;
import spotline.core.Decimal;
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
                        "#Seconds a channel",
                        "#Pass energy, eV",
                        "#Photon energy, eV",
                        "Statistics",
                        "Measured"));
        for (SpotResult spot : result.spots()) {
            for (LinkedSpectrum spectrum : spot.spectra()) row(page, spot, spectrum);
        }
        Tables.end(page);
    }

    private static void row(Markup page, SpotResult spot, LinkedSpectrum spectrum) {
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
        Tables.number(
                page,
                recorded(
                        scan.secondsPerChannel().isPresent()
                                ? Decimal.significant(scan.secondsPerChannel().getAsDouble(), 4)
                                : ""));
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

    private static String recorded(String text) {
        return text.isEmpty() ? "not recorded" : text;
    }
}
