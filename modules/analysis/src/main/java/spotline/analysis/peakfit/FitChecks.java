package spotline.analysis.peakfit;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import spotline.core.Decimal;
import spotline.core.Finding;

/** What an analyst should know of a fit before trusting it. */
final class FitChecks {
    private static final double WEAK = 3; // standard uncertainties; common practice, no source
    private static final double CLOSE = 0.5; // of the full width at half maximum; common practice, no source
    private static final double WIDE = 2; // times the median width; common practice, no source
    private static final double STRUCTURE = 0.02; // of the area; common practice, no source
    private static final int RUN = 4; // channels

    private FitChecks() {}

    static List<Finding> of(PeakFitResult result, String spectrum) {
        List<Finding> findings = new ArrayList<>();
        if (!result.statistics().stopReason().converged()) {
            findings.add(Finding.caution(
                    "fit-not-converged",
                    "The fit was stopped after " + result.statistics().iterations()
                            + " iterations without having converged."));
        }
        for (FittedComponent c : result.components()) component(c, findings);
        for (Inseparable pair : result.inseparable()) findings.add(onlySum(pair));
        close(result, findings);
        broad(result, findings);
        residuals(result, findings);
        backgroundAboveData(result, findings);
        return findings.stream().map(f -> f.in(spectrum)).toList();
    }

    private static Finding onlySum(Inseparable pair) {
        OptionalDouble u = pair.sum().standardUncertainty();
        boolean traded = pair.correlation().isPresent() && pair.correlation().getAsDouble() <= Separation.TRADED;
        String why = traded
                ? " are correlated " + Decimal.fixed(pair.correlation().getAsDouble(), 3)
                        + " and at least one is known to worse than "
                        + Decimal.fixed(100 * Separation.POORLY_KNOWN, 0) + " %"
                : " can be equal as well as what was fitted";
        return Finding.caution(
                "fit-only-sum",
                "The areas of " + pair.one() + " and " + pair.other() + why + ": only their sum is measured, "
                        + Decimal.significant(pair.sum().value(), 4)
                        + (u.isPresent()
                                ? " with a standard uncertainty of " + Decimal.significant(u.getAsDouble(), 2)
                                : "")
                        + " counts eV.");
    }

    private static void component(FittedComponent c, List<Finding> findings) {
        if (c.partnerOf().isPresent()) return;
        double area = c.area().value();
        OptionalDouble u = c.area().standardUncertainty();
        if (u.isPresent() && u.getAsDouble() > 0 && area < WEAK * u.getAsDouble()) {
            findings.add(Finding.caution(
                    "fit-component-weak",
                    "Component " + c.name() + " is " + Decimal.fixed(area / u.getAsDouble(), 1)
                            + " standard uncertainties (limit " + Decimal.significant(WEAK, 2) + ")."));
        }
        for (Map.Entry<String, FittedParameter> p : c.parameters().entrySet()) {
            if (p.getKey().equals("area")) continue;
            if (p.getValue().atBound()) {
                findings.add(Finding.caution(
                        "fit-at-bound",
                        "The " + p.getKey() + " of component " + c.name() + " ended at its bound, "
                                + Decimal.significant(p.getValue().value().value(), 6) + "."));
            } else if (p.getValue().hold() == FittedParameter.Hold.FREE
                    && p.getValue().value().standardUncertainty().isEmpty()) {
                findings.add(Finding.caution(
                        "fit-undetermined",
                        "The data do not determine the " + p.getKey() + " of component " + c.name() + "."));
            }
        }
    }

    private static void close(PeakFitResult result, List<Finding> findings) {
        List<FittedComponent> own = result.components().stream()
                .filter(c -> c.partnerOf().isEmpty())
                .toList();
        for (int i = 0; i < own.size(); i++) {
            for (int j = i + 1; j < own.size(); j++) {
                FittedComponent a = own.get(i);
                FittedComponent b = own.get(j);
                double apart = Math.abs(a.position().value() - b.position().value());
                double width = Math.min(a.fwhm().value(), b.fwhm().value());
                boolean chosen = a.parameter("position").hold() == FittedParameter.Hold.FIXED
                        && b.parameter("position").hold() == FittedParameter.Hold.FIXED;
                if (chosen || !(apart < CLOSE * width)) continue;
                findings.add(Finding.caution(
                        "fit-components-close",
                        "Components " + a.name() + " and " + b.name() + " lie " + Decimal.fixed(apart, 2)
                                + " eV apart, " + Decimal.fixed(apart / width, 2) + " of their width (limit "
                                + Decimal.fixed(CLOSE, 1) + ")."));
            }
        }
    }

    private static void broad(PeakFitResult result, List<Finding> findings) {
        double[] widths = result.components().stream()
                .filter(c -> c.partnerOf().isEmpty())
                .mapToDouble(c -> c.fwhm().value())
                .sorted()
                .toArray();
        if (widths.length < 2) return;
        double usual = widths[(widths.length - 1) / 2];
        for (FittedComponent c : result.components()) {
            if (c.partnerOf().isPresent() || !(c.fwhm().value() > WIDE * usual)) continue;
            findings.add(Finding.caution(
                    "fit-component-broad",
                    "Component " + c.name() + " is " + Decimal.fixed(c.fwhm().value(), 2) + " eV wide, more than "
                            + Decimal.significant(WIDE, 2) + " times the others' " + Decimal.fixed(usual, 2)
                            + " eV."));
        }
    }

    /** Chi-square alone says little: a perfect value is not to be expected of simple shapes. */
    private static void residuals(PeakFitResult result, List<Finding> findings) {
        FitStatistics s = result.statistics();
        if (!structured(s)) return;
        Structure structure = Structure.of(result);
        if (structure.share() <= STRUCTURE) return;
        findings.add(Finding.caution(
                "fit-residual-structure",
                "Residuals have structure near " + Decimal.fixed(structure.nearEv(), 1) + " eV, "
                        + Decimal.fixed(100 * structure.share(), 1) + " % of the area (limit "
                        + Decimal.fixed(100 * STRUCTURE, 0) + " %); reduced chi-square "
                        + Decimal.fixed(s.reducedChiSquare().orElseThrow(), 2) + ", von Neumann ratio "
                        + Decimal.fixed(s.vonNeumannRatio().orElseThrow(), 2) + "."));
    }

    /** Chi-square outside what chance explains, and neighbouring residuals alike. */
    static boolean structured(FitStatistics s) {
        if (s.reducedChiSquare().isEmpty() || s.vonNeumannRatio().isEmpty()) return false;
        double limit = 3 * Math.sqrt(2.0 / s.degreesOfFreedom());
        return Math.abs(s.reducedChiSquare().getAsDouble() - 1) > limit
                && s.vonNeumannRatio().getAsDouble() < 2 - 6 / Math.sqrt(s.channels());
    }

    /** What is left of the residuals after smoothing over half a width, noise taken off, as a share of the peaks' area. */
    private record Structure(double share, double nearEv) {
        static Structure of(PeakFitResult result) {
            double[] x = result.energies();
            double[] y = result.counts();
            double[] sum = result.sum();
            double[] background = result.background();
            double step = (x[x.length - 1] - x[0]) / (x.length - 1);
            double width = result.components().get(0).fwhm().value();
            int reach = Math.max(1, (int) Math.round(0.25 * width / step));
            double rest = 0;
            double peaks = 0;
            double most = 0;
            double near = x[0];
            for (int i = 0; i < x.length; i++) {
                int from = Math.max(0, i - reach);
                int to = Math.min(x.length, i + reach + 1);
                double mean = 0;
                double variance = 0;
                for (int j = from; j < to; j++) {
                    mean += y[j] - sum[j];
                    variance += Math.max(0, sum[j]);
                }
                mean /= to - from;
                variance /= (double) (to - from) * (to - from);
                rest += Math.sqrt(Math.max(0, mean * mean - variance));
                peaks += sum[i] - background[i];
                if (Math.abs(mean) > most) {
                    most = Math.abs(mean);
                    near = x[i];
                }
            }
            return new Structure(peaks > 0 ? rest / peaks : 0, near);
        }
    }

    private static void backgroundAboveData(PeakFitResult result, List<Finding> findings) {
        if (!result.counted()) return;
        double[] background = result.background();
        double[] counts = result.counts();
        double[] x = result.energies();
        int start = -1;
        for (int i = 0; i <= counts.length; i++) {
            boolean above =
                    i < counts.length && background[i] - counts[i] > 1.5 * Math.sqrt(Math.max(1, background[i]));
            if (above && start < 0) start = i;
            if (above || start < 0) continue;
            if (i - start >= RUN) {
                findings.add(Finding.caution(
                        "fit-background-above-data",
                        "The background runs above the data from " + Decimal.fixed(x[start], 1) + " to "
                                + Decimal.fixed(x[i - 1], 1) + " eV."));
            }
            start = -1;
        }
    }
}
