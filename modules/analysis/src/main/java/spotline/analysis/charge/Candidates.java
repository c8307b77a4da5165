package spotline.analysis.charge;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.analysis.charge.ChargeEvidence.Candidate;
import spotline.analysis.charge.ChargeInput.MeasuredLine;
import spotline.core.Estimate;
import spotline.core.Work;
import spotline.reference.ChemicalState;
import spotline.reference.Line;
import spotline.reference.ReferenceData;

/**
 * References that a spot could have besides the one in use, each with the shift it would give.
 *
 * <p>A line counts when a listed chemical state lies near where the line stands under the survey's working shift. The
 * listed energies go with hydrocarbon at 285.0 +/- 0.2 eV, and so does what they give.
 */
final class Candidates {
    /** A listed state further off than this is not meant, eV. */
    private static final double NEAR = 1.2;
    /** Spread between laboratories of the scale that the listed energies share, eV. */
    private static final double SCALE_U = 0.2;

    private static final int MOST = 5;

    private Candidates() {}

    static List<Candidate> of(ChargeInput input, ReferenceData reference, Work work) {
        List<Candidate> found = new ArrayList<>();
        boolean ownCarbon = input.condition().carbon() == SpotCondition.CarbonOrigin.OWN;
        for (MeasuredLine measured : input.firstOfEachLine()) {
            if (measured.line().equals(ChargeInput.CARBON) && !ownCarbon) continue;
            of(measured, input.workingShiftEv(), reference, work).ifPresent(found::add);
        }
        found.sort(Comparator.comparing((Candidate c) -> !c.alone())
                .thenComparingDouble(c -> c.standardUncertainty().orElse(Double.POSITIVE_INFINITY))
                .thenComparing(Candidate::line));
        return List.copyOf(found.subList(0, Math.min(MOST, found.size())));
    }

    private static Optional<Candidate> of(
            MeasuredLine measured, double workingShift, ReferenceData reference, Work work) {
        List<ChemicalState> states = reference.chemicalStates(measured.line()).stream()
                .filter(s -> !s.satellite())
                .toList();
        if (states.isEmpty()) return Optional.empty();
        Line line = states.get(0).line();
        Optional<ReferenceLineFit> fit = TopFit.place(
                line,
                measured.scan(),
                TopFit.doubletOf(reference.doublet(line, measured.scan().photonEnergyEv()), line),
                work);
        if (fit.isEmpty()) return Optional.empty();
        Estimate position = fit.get().reference().position();
        double at = position.value() + workingShift;
        ChemicalState nearest = states.stream()
                .min(Comparator.comparingDouble((ChemicalState s) -> Math.abs(s.valueEv() - at))
                        .thenComparing(ChemicalState::state))
                .orElseThrow();
        if (Math.abs(nearest.valueEv() - at) > NEAR) return Optional.empty();
        boolean alone = states.stream()
                .filter(s -> Math.abs(s.valueEv() - at) <= NEAR)
                .allMatch(s -> Math.abs(s.valueEv() - nearest.valueEv()) <= nearest.halfRangeEv());
        boolean carbon = measured.line().equals(ChargeInput.CARBON);
        return Optional.of(candidate(
                carbon ? ChargeMethod.SAMPLE_CARBON : ChargeMethod.INTERNAL_LINE,
                fit.get(),
                nearest.state(),
                nearest.valueEv(),
                Math.hypot(nearest.halfRangeEv(), SCALE_U),
                alone,
                nearest.source()));
    }

    /** The reference that the analyst stated to hold the first against. */
    static Optional<Candidate> stated(
            ChargeSettings.SecondReference second, ChargeInput input, ReferenceData reference, Work work) {
        Optional<Line> wanted = Line.find(second.line());
        if (wanted.isEmpty()) return Optional.empty();
        Optional<MeasuredLine> measured = input.scansOf(wanted.get()).stream().findFirst();
        return measured.flatMap(m -> TopFit.place(
                        wanted.get(),
                        m.scan(),
                        TopFit.doubletOf(
                                reference.doublet(wanted.get(), m.scan().photonEnergyEv()), wanted.get()),
                        work))
                .map(fit -> candidate(
                        ChargeMethod.INTERNAL_LINE,
                        fit,
                        "",
                        second.energyEv(),
                        second.standardUncertaintyEv(),
                        true,
                        "stated by the analyst"));
    }

    private static Candidate candidate(
            ChargeMethod method,
            ReferenceLineFit fit,
            String state,
            double referenceEv,
            double referenceU,
            boolean alone,
            String source) {
        Estimate measured = fit.reference().position();
        OptionalDouble u = measured.standardUncertainty();
        return new Candidate(
                method,
                fit.line(),
                state,
                fit.spectrum(),
                measured,
                referenceEv,
                referenceU,
                referenceEv - measured.value(),
                u.isPresent() ? OptionalDouble.of(Math.hypot(u.getAsDouble(), referenceU)) : OptionalDouble.empty(),
                alone,
                source);
    }
}
