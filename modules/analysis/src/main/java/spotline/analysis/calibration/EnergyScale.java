package spotline.analysis.calibration;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.analysis.calibration.MeasuredReference.Use;
import spotline.core.Estimate;
import spotline.core.Problem;
import spotline.core.Problems;

/**
 * What the reference lines say of the binding-energy scale: the correction {@code corrected = E + a E + b}, its uncertainty,
 * whether the scale is linear, and whether it keeps a tolerance as it was found.
 *
 * <p>With deviations d1 at the low reference energy E1 and d4 at the high one E4:
 * {@code a = (d1 - d4) / (E4 - E1)}, {@code b = (d4 E1 - d1 E4) / (E4 - E1)}; a line at E2 between them departs from the
 * straight line by {@code d2 - (d1 (E4 - E2) + d4 (E2 - E1)) / (E4 - E1)}. Units: eV, a without unit.
 *
 * <p>Source: layout of ISO 15472:2010; a laboratory that claims conformity must hold the standard.
 */
public final class EnergyScale {
    /** Expanded uncertainties cover 95 %. */
    private static final double COVERAGE = 2;
    /** Drift and uncertainty that use this share of the tolerance call for a calibration: common practice, no source. */
    private static final double USED_UP = 0.7;
    /** The standard covers no tolerance of this or less, eV, and no resolution worse than the next. */
    private static final double TIGHTEST = 0.03;

    private static final double COARSEST_FWHM = 1.5;
    private static final double SCALE_END = 1000;

    /** Whether the scale keeps the tolerance. */
    public enum Verdict {
        WITHIN,
        /** Inside, but most of the tolerance is used: calibrate soon. */
        NEARLY_USED,
        OUTSIDE,
        /** Too few reference lines to say. */
        UNDETERMINED
    }

    /** A check line: its departure from the straight line between the ends, eV. */
    public record Linearity(String line, Estimate departureEv, boolean straight) {}

    private final List<MeasuredReference> lines;
    private final double toleranceEv;
    private final Optional<MeasuredReference> low;
    private final Optional<MeasuredReference> high;

    private EnergyScale(List<MeasuredReference> lines, double toleranceEv) {
        this.lines = List.copyOf(lines);
        this.toleranceEv = toleranceEv;
        this.low = ofUse(Use.LOW);
        this.high = ofUse(Use.HIGH);
    }

    /** Errors: {@link IllegalArgumentException} for a tolerance that is not above 0.03 eV. */
    public static EnergyScale of(List<MeasuredReference> lines, double toleranceEv) {
        Problems.throwIfAny(check(toleranceEv));
        return new EnergyScale(lines, toleranceEv);
    }

    public static List<Problem> check(double toleranceEv) {
        return toleranceEv > TIGHTEST
                ? List.of()
                : List.of(new Problem("tolerance", toleranceEv + " eV", "more than " + TIGHTEST + " eV (ISO 15472)"));
    }

    private Optional<MeasuredReference> ofUse(Use use) {
        return lines.stream()
                .filter(l -> l.use() == use)
                .min(Comparator.comparingDouble(l -> l.reference().value()));
    }

    public List<MeasuredReference> lines() {
        return lines;
    }

    public double toleranceEv() {
        return toleranceEv;
    }

    /** Slope of the correction; 0 with one end measured alone. */
    public double a() {
        if (low.isEmpty() || high.isEmpty()) return 0;
        return (deviation(low.get()) - deviation(high.get())) / span();
    }

    /** Offset of the correction, eV. */
    public double b() {
        if (low.isPresent() && high.isPresent()) {
            double e1 = low.get().reference().value();
            double e4 = high.get().reference().value();
            return (deviation(high.get()) * e1 - deviation(low.get()) * e4) / span();
        }
        return low.or(() -> high).map(l -> -deviation(l)).orElse(0.0);
    }

    private double span() {
        return high.orElseThrow().reference().value()
                - low.orElseThrow().reference().value();
    }

    private static double deviation(MeasuredReference line) {
        return line.deviationEv().value();
    }

    /** A measured binding energy, corrected, eV. */
    public double corrected(double energyEv) {
        return energyEv * (1 + a()) + b();
    }

    /** What the scale reads too much at an energy, with its uncertainty, eV; empty without a reference line at an end. */
    public Optional<Estimate> deviationAt(double energyEv) {
        if (low.isPresent() && high.isPresent()) {
            double e1 = low.get().reference().value();
            double share = (energyEv - e1) / span();
            Estimate d1 = low.get().deviationEv();
            Estimate d4 = high.get().deviationEv();
            double value = d1.value() * (1 - share) + d4.value() * share;
            return Optional.of(Estimate.linear(value, List.of(d1, d4), 1 - share, share));
        }
        return low.or(() -> high).map(MeasuredReference::deviationEv);
    }

    /** Check lines against the straight line between the ends; none without both ends. */
    public List<Linearity> linearity() {
        List<Linearity> found = new ArrayList<>();
        if (low.isEmpty() || high.isEmpty()) return found;
        for (MeasuredReference line : lines) {
            if (line.use() != Use.CHECK) continue;
            Estimate departure = line.deviationEv()
                    .minus(deviationAt(line.reference().value()).orElseThrow());
            double u = departure.standardUncertainty().orElse(0);
            // A quarter of the tolerance: ISO 15472, from memory.
            boolean straight = Math.abs(departure.value()) <= Math.max(0.25 * toleranceEv, COVERAGE * u);
            found.add(new Linearity(line.line(), departure, straight));
        }
        return found;
    }

    /** Whether one reference line alone was measured: an offset, and no word on the scale. */
    public boolean offsetOnly() {
        return low.isPresent() != high.isPresent();
    }

    /** The larger of both ends of the scale, 0 and 1000 eV: deviation as found plus expanded uncertainty, eV. */
    public OptionalDouble worstEv() {
        if (low.isEmpty() || high.isEmpty()) return OptionalDouble.empty();
        double worst = 0;
        for (double end : new double[] {0, SCALE_END}) {
            Estimate d = deviationAt(end).orElseThrow();
            worst = Math.max(
                    worst,
                    Math.abs(d.value()) + COVERAGE * d.standardUncertainty().orElse(Double.NaN));
        }
        return Double.isNaN(worst) ? OptionalDouble.empty() : OptionalDouble.of(worst);
    }

    /** Of the scale as it was found, before any correction. */
    public Verdict verdict() {
        OptionalDouble worst = worstEv();
        if (worst.isEmpty()) return Verdict.UNDETERMINED;
        boolean straight = linearity().stream().allMatch(Linearity::straight);
        if (worst.getAsDouble() > toleranceEv || !straight) return Verdict.OUTSIDE;
        return worst.getAsDouble() > USED_UP * toleranceEv ? Verdict.NEARLY_USED : Verdict.WITHIN;
    }

    /** Lines broader than the standard covers. */
    public List<MeasuredReference> tooBroad() {
        return lines.stream().filter(l -> l.fwhmEv().orElse(0) > COARSEST_FWHM).toList();
    }
}
