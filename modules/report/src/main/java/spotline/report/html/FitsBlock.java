package spotline.report.html;

import java.util.List;
import spotline.analysis.peakfit.FitStatistics;
import spotline.analysis.peakfit.FittedComponent;
import spotline.analysis.peakfit.PeakFit;
import spotline.analysis.peakfit.PeakFitResult;
import spotline.core.Decimal;
import spotline.report.figure.Figure;
import spotline.report.figure.PeakFitFigure;
import spotline.run.LineFit;
import spotline.run.SpotResult;

/** Every peak fit: the drawing with its residual, what was free and what was tied, how well it fits. */
final class FitsBlock {
    private FitsBlock() {}

    static void write(Markup page, SpotResult spot, String name) {
        if (spot.fits().isEmpty()) return;
        page.element("h4", "Peak fits");
        for (int i = 0; i < spot.fits().size(); i++) {
            LineFit fit = spot.fits().get(i);
            page.open("div", "class", "beside");
            Figure figure = PeakFitFigure.of(fit.result(), name + i);
            String model = fit.byDefault() ? "default model of the line" : "model of the treatment";
            Figures.write(
                    page,
                    figure,
                    fit.line() + ", " + fit.spectrum() + ": " + model + "; beneath, measured minus fitted sum"
                            + (fit.result().counted() ? " in standard deviations of the counts" : ""));
            page.open("div");
            ties(page, fit.result());
            page.element("p", statistics(fit.result()), "class", "note").raw("\n");
            page.end();
            page.end();
        }
    }

    /** The same without drawings. */
    static void brief(Markup page, SpotResult spot) {
        if (spot.fits().isEmpty()) return;
        page.element("h4", "Peak fits");
        for (LineFit fit : spot.fits()) {
            page.element("h5", fit.line() + ", " + fit.spectrum());
            ties(page, fit.result());
            page.element("p", statistics(fit.result()), "class", "note").raw("\n");
        }
    }

    private static void ties(Markup page, PeakFitResult result) {
        Tables.begin(page, "ties", List.of("Component", "Shape", "Parameters, eV (area: counts eV)"));
        for (FittedComponent c : result.components()) {
            page.open("tr").element("th", c.name(), "scope", "row");
            Tables.cell(
                    page,
                    c.shape()
                            + c.partnerOf()
                                    .map(p -> ", doublet partner of " + p)
                                    .orElse(""));
            Tables.cell(page, String.join("; ", ModelWords.of(result, c))).end();
        }
        Tables.end(page);
    }

    private static String statistics(PeakFitResult result) {
        FitStatistics s = result.statistics();
        StringBuilder text = new StringBuilder("Background: ")
                .append(result.model().background().describe())
                .append(result.model().background().fitted() ? ", fitted along" : ", subtracted first")
                .append(String.format(
                        java.util.Locale.ROOT,
                        "; window %.1f to %.1f eV, as measured. ",
                        result.model().window().highEv(),
                        result.model().window().lowEv()));
        if (s.reducedChiSquare().isPresent()) {
            text.append("Reduced chi-square ")
                    .append(Decimal.fixed(s.reducedChiSquare().getAsDouble(), 2))
                    .append(", ");
        }
        text.append(result.counted() ? "deviance " : "sum of squares ").append(Decimal.significant(s.deviance(), 4));
        if (s.vonNeumannRatio().isPresent()) {
            text.append(", von Neumann ratio ")
                    .append(Decimal.fixed(s.vonNeumannRatio().getAsDouble(), 2));
        }
        text.append(", ")
                .append(s.freeParameters())
                .append(" free parameters, ")
                .append(s.channels())
                .append(" channels, ")
                .append(s.iterations())
                .append(" iterations, ")
                .append(s.stopWord())
                .append("; ")
                .append(result.counted() ? "weighted as Poisson counts" : "unweighted")
                .append("; step ")
                .append(PeakFit.STEP);
        return text.append('.').toString();
    }
}
