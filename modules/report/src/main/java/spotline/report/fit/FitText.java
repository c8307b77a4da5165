package spotline.report.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import spotline.analysis.peakfit.FitMonteCarlo;
import spotline.analysis.peakfit.FitStatistics;
import spotline.analysis.peakfit.FittedComponent;
import spotline.analysis.peakfit.PeakFitResult;
import spotline.core.Decimal;
import spotline.core.Estimate;
import spotline.core.Finding;
import spotline.report.text.DisplayNumber;
import spotline.report.text.Shown;

/** A fit as lines of text for a terminal. */
public final class FitText {
    private FitText() {}

    public static List<String> of(FitReport report) {
        PeakFitResult result = report.result();
        List<String> lines = new ArrayList<>();
        lines.add(Shown.text(report.source().file()) + ", block "
                + report.source().block() + ", " + Shown.label(report.region()) + ": "
                + result.model().background().describe());
        lines.add("");
        List<String[]> rows = new ArrayList<>();
        rows.add(new String[] {"component", "position eV", "FWHM eV", "area counts eV", "share"});
        for (FittedComponent c : result.components()) {
            rows.add(new String[] {
                Shown.label(c.name()),
                number(c.position(), 3),
                number(c.fwhm(), 3),
                number(c.area(), 1),
                c.partnerOf().isPresent() ? "" : number(result.fraction(c.name()), 3)
            });
        }
        lines.addAll(table(rows));
        lines.add("");
        lines.add(statistics(result));
        report.monteCarlo().ifPresent(m -> lines.addAll(monteCarlo(m)));
        for (Finding f : report.findings()) lines.add(f.severity().word() + ": " + Shown.text(f.message()));
        return lines;
    }

    private static String number(Estimate e, int decimals) {
        OptionalDouble u = e.standardUncertainty();
        boolean exact = e.sources().isEmpty() && u.isPresent();
        return exact
                ? Decimal.fixed(e.value(), decimals) + " (fixed)"
                : DisplayNumber.of(e.value(), u, decimals).text() + (u.isEmpty() ? " (u not known)" : "");
    }

    private static String statistics(PeakFitResult result) {
        FitStatistics s = result.statistics();
        StringBuilder line = new StringBuilder();
        if (s.reducedChiSquare().isPresent()) {
            line.append("reduced chi-square ")
                    .append(Decimal.fixed(s.reducedChiSquare().getAsDouble(), 3))
                    .append(", ");
        }
        line.append(result.counted() ? "deviance " : "sum of squares ").append(Decimal.significant(s.deviance(), 5));
        if (s.vonNeumannRatio().isPresent()) {
            line.append(", von Neumann ratio ")
                    .append(Decimal.fixed(s.vonNeumannRatio().getAsDouble(), 2));
        }
        line.append(", ")
                .append(s.degreesOfFreedom())
                .append(" degrees of freedom, ")
                .append(s.iterations());
        return line.append(" iterations, ").append(s.stopWord()).toString();
    }

    private static List<String> monteCarlo(FitMonteCarlo.Result m) {
        List<String> lines = new ArrayList<>();
        lines.add("");
        lines.add(m.draws() + " Monte-Carlo draws: median and 95 % interval"
                + (m.untreated() > 0 ? "; " + m.untreated() + " more could not be treated" : ""));
        List<String[]> rows = new ArrayList<>();
        rows.add(new String[] {"component", "position eV", "FWHM eV", "area counts eV"});
        for (FitMonteCarlo.ComponentSpread c : m.components()) {
            rows.add(new String[] {
                Shown.label(c.name()), spread(c.position(), 3), spread(c.fwhm(), 3), spread(c.area(), 1)
            });
        }
        lines.addAll(table(rows));
        return lines;
    }

    private static String spread(FitMonteCarlo.Spread s, int decimals) {
        return Decimal.fixed(s.median(), decimals) + " (" + Decimal.fixed(s.low95(), decimals) + " to "
                + Decimal.fixed(s.high95(), decimals) + ")";
    }

    private static List<String> table(List<String[]> rows) {
        int columns = rows.get(0).length;
        int[] widths = new int[columns];
        for (String[] row : rows) {
            for (int c = 0; c < columns; c++) {
                widths[c] = Math.max(widths[c], row[c].codePointCount(0, row[c].length()));
            }
        }
        List<String> lines = new ArrayList<>();
        for (String[] row : rows) {
            StringBuilder line = new StringBuilder();
            for (int c = 0; c < columns; c++) {
                if (c > 0) line.append("  ");
                line.append(row[c]).append(" ".repeat(widths[c] - row[c].codePointCount(0, row[c].length())));
            }
            lines.add(line.toString().stripTrailing());
        }
        return lines;
    }
}
