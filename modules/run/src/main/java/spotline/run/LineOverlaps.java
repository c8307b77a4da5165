package spotline.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.math3.special.Erf;
import spotline.analysis.intensity.Intensity;
import spotline.analysis.quantify.SensitivityFactors;
import spotline.core.Estimate;
import spotline.reference.AugerLine;
import spotline.reference.Element;
import spotline.reference.Elements;
import spotline.reference.LevelEnergy;
import spotline.reference.Line;
import spotline.reference.LineData;
import spotline.reference.Overlap;
import spotline.reference.ReferenceData;
import spotline.reference.XraySource;
import spotline.spectra.Window;

/**
 * Which lines of other elements lie in the window of an intensity, and how strong they are.
 *
 * <p>Photoelectron lines are placed by their tabulated energies, moved like the main line of their element was found moved,
 * and count by their sensitivity factors; Auger lines have no such factors and are told by the table of known overlaps
 * alone.
 *
 * <p>Source: levels/overlaps.csv of the reference data; common practice.
 */
final class LineOverlaps {
    /** Standard deviation of a neighbouring line about its place: its width and the uncertainty of the place, eV. */
    private static final double SPREAD_EV = 0.8;

    /** Shallower levels belong to the valence band. */
    private static final double SHALLOWEST_EV = 15;

    /** An Auger group's strong part spreads about as far from its principal line, eV. */
    private static final double AUGER_REACH_EV = 15;

    private static final double NEGLIGIBLE = 1e-3;

    private final ReferenceData reference;
    private final SensitivityFactors factors;
    private final OptionalDouble angle;
    private final double shiftEv;
    private final double relativeU;

    LineOverlaps(
            ReferenceData reference,
            SensitivityFactors factors,
            OptionalDouble sourceAnalyserAngleDeg,
            double shiftEv,
            double relativeU) {
        this.reference = reference;
        this.factors = factors;
        this.angle = sourceAnalyserAngleDeg;
        this.shiftEv = shiftEv;
        this.relativeU = relativeU;
    }

    /** Factor of the other element's lines inside the window over the factor of the window's own line; 0 for none. */
    Estimate share(SpotComposition.Taken own, Estimate ownFactor, SpotComposition.Taken other) {
        double hv = own.spectrum().scan().photonEnergyEv();
        String symbol = other.intensity().line().element();
        if (own.intensity().separatedFrom().contains(symbol)) return Estimate.exact(0);
        double moved = moved(other.intensity());
        Estimate sum = Estimate.exact(0);
        for (LineData data : reference.lines(element(symbol), hv)) {
            for (Line member : data.members()) {
                double at = energy(member).orElse(0);
                if (at < SHALLOWEST_EV) continue;
                double inside = inside(own.intensity().window(), at + moved - shiftEv);
                if (inside < NEGLIGIBLE) continue;
                Optional<Estimate> factor = factors.factor(member, hv, hv - at, angle);
                if (factor.isPresent()) sum = sum.plus(factor.get().times(inside));
            }
        }
        if (sum.value() == 0) return Estimate.exact(0);
        Estimate share = sum.dividedBy(ownFactor);
        return share.with("overlap/" + own.intensity().line() + " by " + symbol, share.value() * relativeU);
    }

    /**
     * An Auger line or a loss that the table names under a line.
     *
     * @param strong whether the group's principal line is near, or its place is not known; else it is a weaker branch
     */
    record Unquantified(String name, boolean strong) {}

    /** Auger lines and losses of the other elements that the table names under a line. */
    List<Unquantified> unquantified(SpotComposition.Taken own, List<String> others) {
        double hv = own.spectrum().scan().photonEnergyEv();
        List<Unquantified> names = new ArrayList<>();
        for (Overlap overlap : reference.overlaps(own.intensity().line())) {
            boolean photoLine = Line.find(overlap.interfering()).isPresent();
            if (!photoLine && others.contains(overlap.interferingElement()) && sourceFits(overlap, hv)) {
                names.add(new Unquantified(
                        overlap.interfering(), strong(overlap, own.intensity().window(), hv)));
            }
        }
        return names;
    }

    private boolean strong(Overlap overlap, Window window, double hv) {
        List<AugerLine> principal = reference.augerLines(element(overlap.interferingElement()));
        if (overlap.xraySource().isEmpty() || principal.isEmpty()) return true;
        return principal.stream()
                .mapToDouble(line -> line.apparentBindingEv(hv) - shiftEv)
                .anyMatch(at -> at > window.lowEv() - AUGER_REACH_EV && at < window.highEv() + AUGER_REACH_EV);
    }

    private boolean sourceFits(Overlap overlap, double hv) {
        if (overlap.xraySource().isEmpty()) return true;
        return reference
                .sourceNear(hv, false)
                .or(() -> reference.sourceNear(hv, true))
                .map(XraySource::name)
                .filter(overlap.xraySource().get()::equals)
                .isPresent();
    }

    /** How far the line of an element was found from where the tables have it, eV on the referenced scale. */
    private double moved(Intensity intensity) {
        double usual = energy(intensity.line().high()).orElse(intensity.peakEv() + shiftEv);
        return intensity.detected() ? intensity.peakEv() + shiftEv - usual : 0;
    }

    private OptionalDouble energy(Line line) {
        return reference
                .bindingEnergy(line)
                .map(LevelEnergy::valueEv)
                .map(OptionalDouble::of)
                .orElse(OptionalDouble.empty());
    }

    private static Element element(String symbol) {
        return Elements.bySymbol(symbol).orElseThrow();
    }

    private static double inside(Window window, double at) {
        return below(window.highEv() - at) - below(window.lowEv() - at);
    }

    private static double below(double ev) {
        return 0.5 * (1 + Erf.erf(ev / SPREAD_EV / Math.sqrt(2)));
    }
}
