package spotline.report.html;

import java.util.List;
import java.util.stream.Collectors;
import spotline.analysis.identify.ElementSeen;
import spotline.analysis.identify.Identification;
import spotline.analysis.identify.SurveyPeak;
import spotline.analysis.intensity.Intensity;
import spotline.core.Decimal;
import spotline.report.facts.Spectra;
import spotline.report.text.DisplayNumber;
import spotline.run.FittedPeak;
import spotline.run.MeasuredIntensity;
import spotline.run.SpotResult;

/** What a reviewer checks the numbers against: elements and their lines, intensities and their windows, fitted peaks. */
final class EvidenceBlock {
    private EvidenceBlock() {}

    static void write(Markup page, SpotResult spot) {
        spot.identification().ifPresent(found -> elements(page, found));
        intensities(page, spot);
        if (!spot.peaks().isEmpty()) peaks(page, spot);
    }

    private static void elements(Markup page, Identification found) {
        page.element("h4", "Elements in the survey");
        if (found.elements().isEmpty()) {
            page.element("p", "No element was identified.", "class", "note");
        } else {
            Tables.begin(page, "elements", List.of("Element", "Verdict", "Lines, eV as measured", "#Significance"));
            for (ElementSeen seen : found.elements()) {
                page.open("tr").element("th", seen.element(), "scope", "row");
                Tables.cell(page, seen.verdict().word());
                Tables.cell(
                        page,
                        seen.lines().stream()
                                .map(line -> line.line() + " " + Decimal.fixed(line.energyEv(), 1))
                                .collect(Collectors.joining("; ")));
                Tables.number(page, Decimal.fixed(seen.significance(), 0)).end();
            }
            Tables.end(page);
        }
        if (found.unassigned().isEmpty()) return;
        String peaks = found.unassigned().stream()
                .map(SurveyPeak::energyEv)
                .map(energy -> Decimal.fixed(energy, 1))
                .collect(Collectors.joining(", "));
        page.element("p", "Peaks that no element explains, eV as measured: " + peaks + ".", "class", "note");
    }

    /** Background and window behind each number. */
    static void intensities(Markup page, SpotResult spot) {
        if (spot.intensities().isEmpty()) return;
        page.element("h4", "Intensities");
        Tables.begin(
                page,
                "intensities",
                List.of(
                        "Line",
                        "Basis",
                        "#Peak, eV",
                        "#Window, eV",
                        "#Area",
                        "#\u00b1 u",
                        "Unit",
                        "Background",
                        "Transmission",
                        "Spectrum"));
        for (MeasuredIntensity measured : spot.intensities()) {
            Intensity intensity = measured.intensity();
            DisplayNumber area =
                    DisplayNumber.of(intensity.area().value(), intensity.area().standardUncertainty(), 0);
            page.open("tr").element("th", intensity.line().toString(), "scope", "row");
            Tables.cell(page, measured.basis().word());
            Tables.number(page, intensity.detected() ? Decimal.fixed(intensity.peakEv(), 1) : "below detection");
            Tables.number(
                    page,
                    DisplayNumber.fixed(intensity.window().highEv(), 1) + " to "
                            + DisplayNumber.fixed(intensity.window().lowEv(), 1));
            Tables.number(page, area.value());
            Tables.number(page, area.uncertainty().isEmpty() ? "not known" : area.uncertainty());
            Tables.cell(page, Spectra.areaUnit(spot, intensity.spectrum()));
            Tables.cell(page, intensity.background());
            Tables.cell(page, measured.transmissionApplied());
            Tables.cell(page, intensity.spectrum()).end();
        }
        Tables.end(page);
        page.element("p", "Energies as measured; areas before transmission.", "class", "note");
    }

    private static void peaks(Markup page, SpotResult spot) {
        page.element("h4", "Fitted peaks");
        Tables.begin(
                page,
                "peaks",
                List.of(
                        "Line",
                        "Peak",
                        "Shape",
                        "#Position, eV",
                        "#Referenced, eV",
                        "#FWHM, eV",
                        "#Area",
                        "#Reduced \u03c7\u00b2",
                        "Spectrum"));
        for (FittedPeak peak : spot.peaks()) {
            page.open("tr").element("th", peak.line(), "scope", "row");
            Tables.cell(page, peak.peak());
            Tables.cell(page, peak.shape());
            Tables.number(
                    page,
                    DisplayNumber.of(
                                    peak.measuredPosition().value(),
                                    peak.measuredPosition().standardUncertainty(),
                                    2)
                            .text());
            Tables.number(page, ChargeBlock.referenced(peak.referencedEv()));
            Tables.number(
                    page,
                    DisplayNumber.of(peak.fwhm().value(), peak.fwhm().standardUncertainty(), 2)
                            .text());
            Tables.number(
                    page,
                    DisplayNumber.of(peak.area().value(), peak.area().standardUncertainty(), 0)
                            .text());
            Tables.number(page, Decimal.significant(peak.reducedChiSquare(), 3));
            Tables.cell(page, peak.spectrum()).end();
        }
        Tables.end(page);
        page.element(
                "p",
                "Positions as measured; referenced ones (" + spot.charge().scale() + ") to 0.1 eV; areas in "
                        + "the unit of the spectrum's intensities.",
                "class",
                "note");
    }
}
