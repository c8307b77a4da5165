package spotline.analysis.charge;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.analysis.charge.ChargeEvidence.Rigidity;
import spotline.analysis.charge.ChargeInput.MeasuredLine;
import spotline.core.Estimate;
import spotline.core.Work;

/**
 * Whether lines measured twice, at two times or two settings of the charge neutraliser, moved together: a potential common
 * to the surface moves all lines alike, differential charging does not.
 */
final class Rigid {
    /** Lines that moved apart by less than this are taken to move together, eV. */
    private static final double TOLERANCE = 0.08;

    private static final double SIGNIFICANT = 3;

    private Rigid() {}

    /** Errors: empty with fewer than two lines measured twice. */
    static Optional<Rigidity> of(ChargeInput input, Work work) {
        List<Rigidity.Moved> moved = new ArrayList<>();
        for (MeasuredLine first : input.firstOfEachLine()) {
            List<MeasuredLine> scans = input.scansOf(first.line());
            if (scans.size() < 2) continue;
            Optional<ReferenceLineFit> a = TopFit.place(first.line(), first.scan(), Optional.empty(), work);
            Optional<ReferenceLineFit> b =
                    TopFit.place(first.line(), scans.get(scans.size() - 1).scan(), Optional.empty(), work);
            if (a.isEmpty() || b.isEmpty()) continue;
            Estimate change =
                    b.get().reference().position().minus(a.get().reference().position());
            moved.add(new Rigidity.Moved(first.line().toString(), change));
        }
        return moved.size() < 2 ? Optional.empty() : Optional.of(of(moved));
    }

    static Rigidity of(List<Rigidity.Moved> moved) {
        double sum = 0;
        double total = 0;
        for (Rigidity.Moved m : moved) {
            double w = weight(m);
            sum += w * m.changeEv().value();
            total += w;
        }
        double mean = sum / total;
        double largest = 0;
        boolean together = true;
        for (Rigidity.Moved m : moved) {
            double off = Math.abs(m.changeEv().value() - mean);
            double u = m.changeEv().standardUncertainty().orElse(TOLERANCE);
            largest = Math.max(largest, off);
            together &= off <= Math.max(TOLERANCE, SIGNIFICANT * Math.hypot(u, 1 / Math.sqrt(total)));
        }
        return new Rigidity(moved, mean, largest, together);
    }

    private static double weight(Rigidity.Moved m) {
        OptionalDouble u = m.changeEv().standardUncertainty();
        double known = Math.max(1e-3, u.orElse(TOLERANCE));
        return 1 / (known * known);
    }
}
