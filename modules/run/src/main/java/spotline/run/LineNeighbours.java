package spotline.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedSet;
import spotline.analysis.intensity.LineTarget;
import spotline.analysis.intensity.OverlapFit;
import spotline.reference.Doublet;
import spotline.reference.Elements;
import spotline.reference.EnergyRange;
import spotline.reference.LevelEnergy;
import spotline.reference.Line;
import spotline.reference.LineData;
import spotline.reference.NaturalWidth;
import spotline.reference.ReferenceData;
import spotline.spectra.BindingScan;

/** Lines of other elements so close to a line that no window can keep them apart. */
final class LineNeighbours {
    /** Lines further apart than this leave a gap between them, eV. */
    private static final double MERGED_EV = 3;

    /** How far above its usual place a line's states go as a rule, eV. */
    private static final double STATES_EV = 4.5;

    private static final double SHALLOWEST_EV = 15;
    private static final double INSIDE_SCAN_EV = 1;
    private static final double REACH_KNOWN_EV = 1.2;
    private static final double REACH_UNKNOWN_EV = 3;
    private static final double LARGEST_REACH_EV = 5;

    /** A line of a smaller cross section, relative to the one it lies under, is left out. */
    private static final double LEAST_CROSS_SECTION = 0.02;

    private final ReferenceData reference;
    private final double shiftEv;
    private final SortedSet<String> present;
    private final Map<String, Double> moved;

    /** @param moved how far elements were found from where the tables have them, eV, as far as it is known */
    LineNeighbours(ReferenceData reference, double shiftEv, SortedSet<String> present, Map<String, Double> moved) {
        this.reference = reference;
        this.shiftEv = shiftEv;
        this.present = present;
        this.moved = moved;
    }

    List<OverlapFit.Neighbour> of(LineTarget target, BindingScan scan) {
        double hv = scan.photonEnergyEv();
        double own = reference.crossSection(target.line(), hv).orElse(1);
        List<OverlapFit.Neighbour> found = new ArrayList<>();
        for (String symbol : present) {
            if (symbol.equals(target.line().element())) continue;
            for (LineData data : reference.lines(Elements.bySymbol(symbol).orElseThrow(), hv)) {
                if (data.relativeCrossSection() < LEAST_CROSS_SECTION * own) continue;
                neighbour(data, symbol, target, scan).ifPresent(found::add);
            }
        }
        return found;
    }

    private Optional<OverlapFit.Neighbour> neighbour(
            LineData data, String symbol, LineTarget target, BindingScan scan) {
        Line high = data.line().high();
        double usual = reference.bindingEnergy(high).map(LevelEnergy::valueEv).orElse(0.0);
        if (usual < SHALLOWEST_EV) return Optional.empty();
        double first = usual + moved.getOrDefault(symbol, 0.0) - shiftEv;
        double reach = REACH_KNOWN_EV;
        if (!moved.containsKey(symbol)) {
            double highest = reference.stateRange(high).map(EnergyRange::highEv).orElse(usual) - usual;
            double up = Math.max(REACH_UNKNOWN_EV, Math.min(highest, LARGEST_REACH_EV));
            first += 0.5 * (up - REACH_UNKNOWN_EV);
            reach = 0.5 * (up + REACH_UNKNOWN_EV);
        }
        double hv = scan.photonEnergyEv();
        double splitting =
                reference.doublet(data.line(), hv).map(Doublet::splittingEv).orElse(0.0);
        boolean firstIn = inside(first, scan);
        boolean secondIn = splitting > 0 && inside(first + splitting, scan);
        boolean merged =
                (firstIn && near(first, reach, target)) || (secondIn && near(first + splitting, reach, target));
        if (!merged) return Optional.empty();
        double ratio = reference
                .doublet(data.line(), hv)
                .map(Doublet::areaRatioLowToHigh)
                .orElse(0.0);
        if (firstIn && secondIn) {
            return Optional.of(new OverlapFit.Neighbour(
                    data.line(),
                    first,
                    reach,
                    splitting,
                    widths(high, data.line().low(), ratio),
                    OptionalDouble.empty()));
        }
        Line member = firstIn ? high : data.line().low();
        double at = firstIn ? first : first + splitting;
        return Optional.of(new OverlapFit.Neighbour(
                member.orbital().l() == 0 ? data.line() : member,
                at,
                reach,
                0,
                widths(member, member, 0),
                OptionalDouble.empty()));
    }

    private static boolean inside(double energyEv, BindingScan scan) {
        return energyEv > scan.range().lowEv() + INSIDE_SCAN_EV
                && energyEv < scan.range().highEv() - INSIDE_SCAN_EV;
    }

    private static boolean near(double energyEv, double reachEv, LineTarget target) {
        double last = Math.min(target.highEv(), target.expectedEv() + STATES_EV) + target.splittingEv();
        return energyEv > target.lowEv() - MERGED_EV - reachEv && energyEv < last + MERGED_EV + reachEv;
    }

    private LineTarget.Widths widths(Line first, Line second, double ratio) {
        double own = width(first, 0.3);
        return new LineTarget.Widths(own, width(second, own), ratio);
    }

    private double width(Line line, double otherwise) {
        return reference.naturalWidth(line).map(NaturalWidth::fwhmEv).orElse(otherwise);
    }
}
