package spotline.analysis.charge;

import java.util.List;
import java.util.OptionalDouble;
import spotline.core.Estimate;
import spotline.core.Finding;

/** What a reference line's own fit and its scans speak against it. */
final class LineDoubts {
    /** Width that an unmonochromated source adds in squares, eV: natural width of the K-alpha line. */
    private static final double SOURCE_FWHM = 0.9;

    /** A reference line needs an area of this many of its standard uncertainties; common practice, no source. */
    private static final double LEAST_CLEAR = 8;

    private final ChargeLimits limits;
    private final boolean monochromated;
    private final List<Finding> findings;
    private final List<String> doubts;

    LineDoubts(ChargeLimits limits, boolean monochromated, List<Finding> findings, List<String> doubts) {
        this.limits = limits;
        this.monochromated = monochromated;
        this.findings = findings;
        this.doubts = doubts;
    }

    void weak(String what, String spectrum, OptionalDouble u) {
        if (u.isPresent() && u.getAsDouble() <= limits.measurementUEv()) return;
        String known = u.isPresent() ? Decision.ev("%.2f eV", u.getAsDouble()) : "no known bound";
        doubts.add(what + " is placed to " + known + " only");
        caution(
                "reference-line-weak",
                spectrum,
                Decision.ev(
                        "The position of %s is known to %s only (limit %.2f eV).",
                        what, known, limits.measurementUEv()));
    }

    /**
     * A line that is only just found is one that noise made taller: the position's uncertainty, which goes with its
     * height, is then too small.
     */
    private void faint(ReferenceLineFit fit) {
        OptionalDouble u = fit.reference().area().standardUncertainty();
        double clear = u.isPresent() ? fit.reference().area().value() / u.getAsDouble() : 0;
        if (clear >= LEAST_CLEAR) return;
        doubts.add(Decision.ev("%s stands only %.1f standard uncertainties above its background", fit.line(), clear));
        caution(
                "reference-line-weak",
                fit.spectrum(),
                Decision.ev(
                        "The area of the reference component of %s is %.1f times its standard uncertainty (limit %.0f).",
                        fit.line(), clear, LEAST_CLEAR));
    }

    /** The widest that a C 1s reference component may be, eV. */
    static double widest(ChargeLimits limits, boolean monochromated) {
        return monochromated ? limits.referenceFwhmEv() : Math.hypot(limits.referenceFwhmEv(), SOURCE_FWHM);
    }

    void shape(ReferenceLineFit fit) {
        faint(fit);
        double width = fit.reference().fwhm().value();
        double widest = widest(limits, monochromated);
        boolean carbon = fit.line().equals(ChargeInput.CARBON.toString());
        if (carbon && width > widest) {
            doubts.add(Decision.ev("%s is %.2f eV wide", fit.line(), width));
            caution(
                    "reference-line-broad",
                    fit.spectrum(),
                    Decision.ev(
                            "The reference component of %s is %.2f eV wide (limit %.2f eV): two potentials?",
                            fit.line(), width, widest));
        }
        if (fit.reducedChiSquare() > limits.reducedChiSquare() && fit.misfit() > limits.misfit()) {
            doubts.add(fit.line() + " is not described by the fitted sum");
            caution(
                    "reference-line-misfit",
                    fit.spectrum(),
                    Decision.ev(
                            "The fitted sum misses the counts of %s by %.1f %% of its height beyond their noise (limit"
                                    + " %.1f %%); reduced chi-square %.1f (limit %.1f).",
                            fit.line(),
                            100 * fit.misfit(),
                            100 * limits.misfit(),
                            fit.reducedChiSquare(),
                            limits.reducedChiSquare()));
        }
    }

    void drift(Drift drift) {
        Estimate change = drift.changeEv();
        double u = change.standardUncertainty().orElse(0);
        if (Math.abs(change.value()) <= limits.driftEv() || Math.abs(change.value()) <= 3 * u) return;
        String rate = drift.slopeEvPerHour()
                .map(s -> Decision.ev(", %+.2f eV/h", s.value()))
                .orElse("");
        doubts.add(Decision.ev("%s moved by %+.2f eV during the run%s", drift.line(), change.value(), rate));
        caution(
                "surface-potential-drifted",
                drift.scans().get(drift.scans().size() - 1).spectrum(),
                Decision.ev(
                        "%s moved by %+.2f eV between its first and last scan%s (limit %.2f eV).",
                        drift.line(), change.value(), rate, limits.driftEv()));
    }

    private void caution(String rule, String spectrum, String message) {
        findings.add(Finding.caution(rule, message).in(spectrum));
    }
}
