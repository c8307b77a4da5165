package spotline.analysis.charge;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spotline.analysis.charge.ChargeEvidence.Position;
import spotline.analysis.charge.ChargeEvidence.SiblingLine;
import spotline.analysis.charge.HolderEvidence.SpotCharge;
import spotline.core.Estimate;
import spotline.core.Finding;

/** Referenced positions of the same lines at spots of one sample: the shifts may differ, the corrected energies not. */
final class Siblings {
    private static final double SIGNIFICANT = 3;

    private final List<SpotCharge> holder;

    Siblings(List<SpotCharge> holder) {
        this.holder = holder;
    }

    private List<SpotCharge> others(SpotCharge spot) {
        return holder.stream()
                .filter(s -> s.sample().equals(spot.sample()) && !s.spot().equals(spot.spot()))
                .toList();
    }

    List<SiblingLine> lines(SpotCharge spot) {
        List<SiblingLine> lines = new ArrayList<>();
        for (SpotCharge other : others(spot)) {
            for (Position own : spot.charge().evidence().positions()) {
                if (own.line().equals(spot.charge().referenceLine())) continue;
                Optional<Position> theirs = position(other, own.line());
                if (own.referenced().isEmpty() || theirs.isEmpty()) continue;
                Optional<Estimate> referenced = theirs.get().referenced();
                if (referenced.isEmpty()) continue;
                lines.add(new SiblingLine(
                        own.line(), other.spot(), own.referenced().get().minus(referenced.get())));
            }
        }
        return lines;
    }

    private static Optional<Position> position(SpotCharge spot, String line) {
        return spot.charge().evidence().positions().stream()
                .filter(p -> p.line().equals(line))
                .findFirst();
    }

    /** A spot is doubted where it departs from the middle of its sample's spots; of two, both are. */
    List<String> doubts(SpotCharge spot, List<Finding> findings) {
        List<SiblingLine> lines = lines(spot);
        double limit = spot.settings().limits().siblingSpreadEv();
        List<String> names = lines.stream().map(SiblingLine::line).distinct().toList();
        for (String name : names) {
            List<SiblingLine> same =
                    lines.stream().filter(l -> l.line().equals(name)).toList();
            double[] differences = same.stream()
                    .mapToDouble(l -> l.differenceEv().value())
                    .sorted()
                    .toArray();
            double middle = median(differences);
            double u = same.stream()
                    .mapToDouble(l -> l.differenceEv().standardUncertainty().orElse(0))
                    .max()
                    .orElse(0);
            if (Math.abs(middle) <= Math.max(limit, SIGNIFICANT * u)) continue;
            String spots =
                    String.join(", ", same.stream().map(SiblingLine::otherSpot).toList());
            findings.add(Finding.caution(
                    "siblings-differ",
                    Decision.ev(
                            "After correction %s lies %+.2f eV from spot %s of the same sample (limit %.2f eV): remeasure,"
                                    + " or report separately.",
                            name, middle, spots, limit)));
            return List.of(Decision.ev("%s lies %+.2f eV from other spots of the sample", name, middle));
        }
        return List.of();
    }

    private static double median(double[] sorted) {
        int n = sorted.length;
        return n % 2 == 1 ? sorted[n / 2] : 0.5 * (sorted[n / 2 - 1] + sorted[n / 2]);
    }
}
