package spotline.analysis.charge;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import spotline.numerics.fit.FitResult;
import spotline.numerics.fit.PeakModel;
import spotline.numerics.shape.Voigt;
import spotline.spectra.BindingScan;

/** Turns a fit of Voigt components into the record of where a line lies. The counts are the fit's first data set. */
final class FittedLine {
    private FittedLine() {}

    static ReferenceLineFit of(
            String line, BindingScan scan, PeakModel peaks, UnaryOperator<double[]> background, FitResult fit) {
        double[] values = fit.values();
        double[] under = background.apply(values);
        double[] sum = fit.fitted(0);
        String prefix = "fit " + scan.label() + " " + line;
        List<ReferenceLineFit.Component> components = new ArrayList<>();
        for (int c = 0; c < peaks.components().size(); c++) {
            String name = peaks.components().get(c).name();
            components.add(new ReferenceLineFit.Component(
                    name,
                    "Voigt",
                    fit.estimate(name + ".position", prefix),
                    fit.estimate(p -> width(fit, p, name), prefix),
                    fit.estimate(name + ".area", prefix),
                    new ReferenceLineFit.Curve(peaks.component(c, values))));
        }
        return new ReferenceLineFit(
                line,
                scan.label(),
                new ReferenceLineFit.Curve(peaks.abscissae()),
                new ReferenceLineFit.Curve(under),
                new ReferenceLineFit.Curve(sum),
                components,
                scan.countsKnown() ? fit.reducedChiSquare().orElse(Double.NaN) : Double.NaN,
                scan.countsKnown() ? misfit(fit, sum, under) : 0);
    }

    private static double width(FitResult fit, double[] p, String name) {
        return new Voigt().fwhm(0, 1, p[fit.index(name + ".gaussianFwhm")], p[fit.index(name + ".lorentzianFwhm")]);
    }

    private static double misfit(FitResult fit, double[] sum, double[] under) {
        double[] residuals = fit.residuals(0);
        double beyond = 0;
        double height = 0;
        for (int i = 0; i < sum.length; i++) {
            beyond += (residuals[i] * residuals[i] - 1) * sum[i];
            height = Math.max(height, sum[i] - under[i]);
        }
        return height > 0 ? Math.sqrt(Math.max(0, beyond / sum.length)) / height : 0;
    }
}
