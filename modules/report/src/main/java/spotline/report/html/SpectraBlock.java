package spotline.report.html;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import spotline.analysis.identify.Identification;
import spotline.analysis.intensity.Intensity;
import spotline.core.Decimal;
import spotline.holder.SpectrumRole;
import spotline.report.figure.Figure;
import spotline.report.figure.NarrowScanFigure;
import spotline.report.figure.SurveyFigure;
import spotline.run.LinkedSpectrum;
import spotline.run.MeasuredIntensity;
import spotline.run.SpotResult;

/** The spectra of a spot: its surveys with their lines named, its narrow scans with background and window. */
final class SpectraBlock {
    private static final Identification NOTHING = new Identification(List.of(), 0, List.of());

    private SpectraBlock() {}

    static void survey(Markup page, SpotResult spot, String name, Form form) {
        List<LinkedSpectrum> surveys =
                spot.spectra().stream().filter(LinkedSpectrum::survey).toList();
        page.element("h4", "Survey spectrum");
        if (surveys.isEmpty()) {
            page.element("p", "None was measured: elements without a narrow scan are not seen.", "class", "note");
            return;
        }
        for (int i = 0; i < surveys.size(); i++) {
            // What was identified belongs to the first survey that is not a repeat.
            Identification identification = i == 0 ? spot.identification().orElse(NOTHING) : NOTHING;
            Figure figure = form == Form.FULL
                    ? SurveyFigure.of(surveys.get(i), identification, name + i + "-")
                    : SurveyFigure.low(surveys.get(i), identification, name + i + "-");
            Figures.write(page, figure, caption(surveys.get(i)) + ". " + ChargeBlock.axisNote(spot.charge()));
        }
    }

    static void narrow(Markup page, SpotResult spot, String name) {
        List<LinkedSpectrum> scans =
                spot.spectra().stream().filter(s -> !s.survey()).toList();
        if (scans.isEmpty()) return;
        page.element("h4", "Narrow scans");
        List<Figure.Key> keys = new ArrayList<>();
        page.open("div", "class", "grid");
        for (int i = 0; i < scans.size(); i++) {
            List<Intensity> intensities = intensities(spot, scans.get(i).label());
            Figure figure = NarrowScanFigure.of(scans.get(i), intensities, name + i + "-");
            if (keys.isEmpty()) keys.addAll(figure.keys());
            page.open("figure");
            page.open("div", "class", "drawing", "role", "img", "aria-label", figure.description());
            page.raw(figure.svg()).close();
            page.element("figcaption", caption(scans.get(i)) + windows(intensities))
                    .end();
        }
        page.end();
        Figures.keys(page, keys);
        page.element("p", ChargeBlock.axisNote(spot.charge()), "class", "note").raw("\n");
    }

    private static List<Intensity> intensities(SpotResult spot, String label) {
        return spot.intensities().stream()
                .map(MeasuredIntensity::intensity)
                .filter(i -> i.spectrum().equals(label))
                .toList();
    }

    private static String caption(LinkedSpectrum spectrum) {
        String role = spectrum.role() == SpectrumRole.MAIN || spectrum.role() == SpectrumRole.UNKNOWN
                ? ""
                : " (" + spectrum.role().word() + ")";
        String region = spectrum.region().isEmpty() ? "Spectrum" : spectrum.region();
        return region + role + ", " + spectrum.label();
    }

    private static String windows(List<Intensity> intensities) {
        if (intensities.isEmpty()) return ": not quantified";
        return intensities.stream()
                .map(i -> "; " + i.line() + " from " + Decimal.fixed(i.window().highEv(), 1) + " to "
                        + Decimal.fixed(i.window().lowEv(), 1) + " eV, " + i.background()
                        + (i.detected() ? "" : ", below detection"))
                .collect(Collectors.joining());
    }
}
