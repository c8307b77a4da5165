package spotline.analysis.charge;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import spotline.analysis.charge.ChargeEvidence.Width;
import spotline.analysis.charge.HolderEvidence.SpotCharge;
import spotline.core.Estimate;
import spotline.core.Finding;

/**
 * Widths of one spot's lines against the narrowest same lines on the holder.
 *
 * <p>Within one sample, and against a width the analyst states, a line that is wider than its uncertainty allows means
 * differential charging. Between samples only a much wider line does: chemistry broadens lines too.
 */
final class Widths {
    /** One in a hundred clean lines is wider than its reference by more than this many standard uncertainties. */
    private static final double SIGNIFICANT = 2.35;
    /** Several lines together have to agree better than this, in standard uncertainties. */
    private static final double TOGETHER = 3;
    /** Between samples a line may be this much wider, eV: common practice, no source. */
    private static final double BETWEEN_SAMPLES = 0.3;

    private final SpotCharge spot;
    private final List<SpotCharge> holder;

    Widths(SpotCharge spot, List<SpotCharge> holder) {
        this.spot = spot;
        this.holder = holder;
    }

    /** A width of another spot. */
    private record Other(String spot, Width width) {}

    /** A line with what it is held against. */
    private record Excess(Width own, Estimate reference, Estimate excess) {
        /** Difference of the squares and its standard uncertainty, eV^2. */
        double squares() {
            return own.fwhm().value() * own.fwhm().value() - reference.value() * reference.value();
        }

        double squaresU() {
            double a = 2 * own.fwhm().value() * own.fwhm().standardUncertainty().orElse(0);
            double b = 2 * reference.value() * reference.standardUncertainty().orElse(0);
            return Math.max(1e-6, Math.hypot(a, b));
        }
    }

    List<Width> compared() {
        List<Width> compared = new ArrayList<>();
        for (Width own : spot.charge().evidence().widths()) {
            Optional<Other> narrowest = others(own, false)
                    .min(Comparator.comparingDouble(
                                    (Other o) -> o.width().fwhm().value())
                            .thenComparing(Other::spot));
            compared.add(new Width(
                    own.line(),
                    own.component(),
                    own.spectrum(),
                    own.passEnergyEv(),
                    own.fwhm(),
                    narrowest.map(o -> o.width().fwhm()),
                    narrowest.map(Other::spot).orElse(""),
                    narrowest
                            .map(o -> extra(own.fwhm().value(), o.width().fwhm().value()))
                            .orElse(OptionalDouble.empty())));
        }
        return compared;
    }

    private static OptionalDouble extra(double own, double reference) {
        return OptionalDouble.of(own > reference ? Math.sqrt(own * own - reference * reference) : 0);
    }

    private Stream<Other> others(Width own, boolean sameSample) {
        return holder.stream()
                .filter(s -> !s.spot().equals(spot.spot()))
                .filter(s -> !sameSample || s.sample().equals(spot.sample()))
                .flatMap(s -> s.charge().evidence().widths().stream().map(w -> new Other(s.spot(), w)))
                .filter(o -> o.width().line().equals(own.line())
                        && o.width().component().equals(own.component())
                        && o.width().passEnergyEv().equals(own.passEnergyEv()));
    }

    List<String> doubts(List<Finding> findings) {
        Optional<ReferenceLineFit> fit = spot.charge().fit();
        List<Excess> strict = new ArrayList<>();
        for (Width own : spot.charge().evidence().widths()) {
            boolean reference = fit.isPresent() && fit.get().spectrum().equals(own.spectrum());
            Optional<Estimate> stated = reference ? stated() : Optional.empty();
            stated.or(() -> narrowGroup(own))
                    .ifPresent(r -> strict.add(new Excess(own, r, own.fwhm().minus(r))));
        }
        double tolerance = spot.settings().limits().widthExcessEv();
        for (Excess e : strict) {
            boolean reference =
                    fit.isPresent() && fit.get().spectrum().equals(e.own().spectrum());
            double u = e.excess().standardUncertainty().orElse(Double.POSITIVE_INFINITY);
            if (!reference || e.excess().value() <= Math.max(tolerance, SIGNIFICANT * u)) continue;
            return List.of(differential(
                    findings,
                    e.own().spectrum(),
                    e.own().line(),
                    Decision.ev(
                            "%s is %.2f eV wide, %.2f eV where the surface does not charge differentially (limit %.2f eV"
                                    + " more)",
                            e.own().line(),
                            e.own().fwhm().value(),
                            e.reference().value(),
                            Math.max(tolerance, SIGNIFICANT * u)),
                    extra(e.own().fwhm().value(), e.reference().value()).getAsDouble()));
        }
        Optional<String> together = together(strict, findings);
        if (together.isPresent()) return List.of(together.get());
        return betweenSamples(findings).stream().toList();
    }

    private Optional<Estimate> stated() {
        return spot.settings()
                .uncharged()
                .map(w -> Estimate.exact(w.fwhmEv()).with("stated width", w.standardUncertaintyEv()));
    }

    /** Mean of the same sample's other widths, less those that are themselves too wide for the rest. */
    private Optional<Estimate> narrowGroup(Width own) {
        List<Estimate> group = new ArrayList<>(others(own, true)
                .map(o -> o.width().fwhm())
                .filter(e -> e.standardUncertainty().isPresent())
                .sorted(Comparator.comparingDouble(Estimate::value))
                .toList());
        if (group.isEmpty()) return Optional.empty();
        while (group.size() > 1) {
            Estimate widest = group.get(group.size() - 1);
            Estimate off = widest.minus(mean(group.subList(0, group.size() - 1)));
            if (off.value() <= TOGETHER * off.standardUncertainty().orElse(0)) break;
            group.remove(group.size() - 1);
        }
        return Optional.of(mean(group));
    }

    private static Estimate mean(List<Estimate> group) {
        double total = 0;
        double[] weights = new double[group.size()];
        for (int i = 0; i < weights.length; i++) {
            double u = Math.max(1e-6, group.get(i).standardUncertainty().orElse(1));
            weights[i] = 1 / (u * u);
            total += weights[i];
        }
        double mean = 0;
        for (int i = 0; i < weights.length; i++) {
            weights[i] /= total;
            mean += weights[i] * group.get(i).value();
        }
        return Estimate.linear(mean, group, weights);
    }

    /** Lines of one sample, each a little wider by the same amount in squares; a second line alone speaks for its phase. */
    private Optional<String> together(List<Excess> strict, List<Finding> findings) {
        if (strict.isEmpty()) return Optional.empty();
        double sum = 0;
        double total = 0;
        for (Excess e : strict) {
            double w = 1 / (e.squaresU() * e.squaresU());
            sum += w * e.squares();
            total += w;
        }
        double mean = sum / total;
        double u = 1 / Math.sqrt(total);
        double scatter = 0;
        for (Excess e : strict) scatter += Math.pow((e.squares() - mean) / e.squaresU(), 2);
        boolean alike =
                strict.size() == 1 || scatter <= strict.size() - 1 + TOGETHER * Math.sqrt(2.0 * (strict.size() - 1));
        double tolerance = spot.settings().limits().widthExcessEv();
        double narrow =
                strict.stream().mapToDouble(e -> e.reference().value()).min().orElseThrow();
        boolean wide = mean > (strict.size() == 1 ? SIGNIFICANT : TOGETHER) * u
                && Math.sqrt(narrow * narrow + mean) - narrow > tolerance;
        if (!alike || !wide) return Optional.empty();
        return Optional.of(differential(
                findings,
                "",
                strict.size() == 1 ? strict.get(0).own().line() : "All lines",
                Decision.ev(
                        "%s broadened%s against other spots of the sample (%.1f standard uncertainties)",
                        strict.size() == 1 ? strict.get(0).own().line() + " is" : strict.size() + " lines are",
                        strict.size() == 1 ? "" : " alike",
                        mean / u),
                Math.sqrt(mean)));
    }

    private Optional<String> betweenSamples(List<Finding> findings) {
        Optional<ReferenceLineFit> fit = spot.charge().fit();
        for (Width w : compared()) {
            boolean reference = fit.isPresent() && fit.get().spectrum().equals(w.spectrum());
            if (!reference || w.narrowest().isEmpty()) continue;
            double narrowest = w.narrowest().get().value();
            if (w.fwhm().value() <= narrowest + BETWEEN_SAMPLES) continue;
            findings.add(Finding.caution(
                            "reference-line-broad",
                            Decision.ev(
                                    "%s is %.2f eV wide against %.2f eV at spot %s (limit %.1f eV more): two potentials?",
                                    w.line(), w.fwhm().value(), narrowest, w.narrowestSpot(), BETWEEN_SAMPLES))
                    .in(w.spectrum()));
            return Optional.of(Decision.ev(
                    "%s is %.2f eV wide against %.2f eV at spot %s",
                    w.line(), w.fwhm().value(), narrowest, w.narrowestSpot()));
        }
        return Optional.empty();
    }

    /** @param extraEv in squares; two equal patches d apart add 8 ln 2 (d/2)^2: derived, variance of two points */
    private static String differential(
            List<Finding> findings, String spectrum, String line, String what, double extraEv) {
        double apart = extraEv / Math.sqrt(2 * Math.log(2));
        findings.add(Finding.caution(
                        "differential-charging",
                        Decision.ev(
                                "%s: differential charging likely; two equal surfaces would be %.1f eV apart.",
                                what, apart))
                .in(spectrum));
        return Decision.ev("%s broadened by %.2f eV in squares, as differential charging would", line, extraEv);
    }
}
