package spotline.analysis.charge;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.analysis.charge.ChargeEvidence.Position;
import spotline.analysis.charge.ChargeEvidence.Width;
import spotline.analysis.charge.ChargeInput.MeasuredLine;
import spotline.core.Estimate;
import spotline.core.Work;
import spotline.reference.ReferenceData;

/** Gathers what a spot itself says for and against a decision that was made. */
final class Evidence {
    private final ReferenceData reference;
    private final ChargeSettings settings;
    private final ChargeInput input;
    private final Work work;

    Evidence(ReferenceData reference, ChargeSettings settings, ChargeInput input, Work work) {
        this.reference = reference;
        this.settings = settings;
        this.input = input;
        this.work = work;
    }

    /** @param hydrocarbon the carbon fit, whether or not it is the reference */
    ChargeEvidence of(
            ChargeReference decided,
            Optional<HydrocarbonFit.Placed> hydrocarbon,
            Optional<Drift> drift,
            Optional<FermiEdge> edge) {
        List<ReferenceLineFit> fits = lines(decided, hydrocarbon);
        return new ChargeEvidence(
                declared(),
                drift,
                positions(decided, fits, drift),
                Candidates.of(input, reference, work),
                AugerParameters.of(input, decided.shiftEv(), reference, work),
                decided.shiftEv().isPresent()
                        ? UnmovedLines.find(input, decided.shiftEv().getAsDouble(), reference, work)
                        : List.of(),
                edge,
                widths(fits),
                hydrocarbon.flatMap(h -> HydrocarbonFit.twoPotentials(h, widest(), work)),
                Rigid.of(input, work),
                settings.check().flatMap(c -> Candidates.stated(c, input, reference, work)),
                List.of());
    }

    /** The widest that hydrocarbon is at one potential, where nobody states what its width should be. */
    private OptionalDouble widest() {
        if (settings.uncharged().isPresent()) return OptionalDouble.empty();
        return OptionalDouble.of(LineDoubts.widest(settings.limits(), input.monochromated()));
    }

    private List<String> declared() {
        SpotCondition c = input.condition();
        List<String> said = new ArrayList<>();
        said.add(
                switch (c.contact()) {
                    case GROUNDED -> "declared grounded";
                    case ISOLATED -> "declared isolated";
                    case UNKNOWN -> "electrical state not declared";
                });
        said.add(
                switch (c.conduction()) {
                    case CONDUCTOR -> "declared a conductor";
                    case SEMICONDUCTOR -> "declared a semiconductor";
                    case INSULATOR -> "declared an insulator";
                    case MIXED -> "declared partly conducting";
                    case UNKNOWN -> "conductivity not declared";
                });
        said.add(
                switch (c.carbon()) {
                    case OWN -> "carbon declared the sample's own";
                    case ADVENTITIOUS -> "carbon declared adventitious";
                    case UNKNOWN -> "origin of carbon not declared";
                });
        if (input.sputtered()) said.add("sputtered before its carbon was measured");
        if (!settings.reason().isBlank()) said.add("reason given: " + settings.reason());
        return said;
    }

    /** One fit a line: the reference's own where it is one. */
    private List<ReferenceLineFit> lines(ChargeReference decided, Optional<HydrocarbonFit.Placed> hydrocarbon) {
        List<ReferenceLineFit> fits = new ArrayList<>();
        boolean ownCarbon = input.condition().carbon() == SpotCondition.CarbonOrigin.OWN;
        for (MeasuredLine measured : input.firstOfEachLine()) {
            Optional<ReferenceLineFit> used = decided.fit()
                    .filter(f -> f.spectrum().equals(measured.scan().label()));
            Optional<ReferenceLineFit> carbon = hydrocarbon
                    .map(HydrocarbonFit.Placed::fit)
                    .filter(f ->
                            !ownCarbon && f.spectrum().equals(measured.scan().label()));
            used.or(() -> carbon)
                    .or(() -> TopFit.place(measured.line(), measured.scan(), Optional.empty(), work))
                    .ifPresent(fits::add);
        }
        return fits;
    }

    private List<Position> positions(ChargeReference decided, List<ReferenceLineFit> fits, Optional<Drift> drift) {
        List<Position> positions = new ArrayList<>();
        Optional<Estimate> referenceLine = decided.fit().map(f -> f.reference().position());
        for (ReferenceLineFit fit : fits) {
            Estimate measured = fit.reference().position();
            Optional<Estimate> shift = interpolated(decided, fit, drift).or(decided::shift);
            positions.add(new Position(
                    fit.line(),
                    fit.spectrum(),
                    measured,
                    shift.map(s -> OptionalDouble.of(s.value())).orElse(OptionalDouble.empty()),
                    shift.map(measured::plus),
                    referenceLine.map(measured::minus)));
        }
        return positions;
    }

    /** The shift at the scan's own time, where the analyst wants it and the times are known. */
    private Optional<Estimate> interpolated(ChargeReference decided, ReferenceLineFit fit, Optional<Drift> drift) {
        if (!settings.interpolateDrift()
                || drift.isEmpty()
                || decided.referenceEv().isEmpty()) return Optional.empty();
        double value = decided.referenceEv().getAsDouble();
        double u = decided.referenceU().orElse(Double.NaN);
        return input.lines().stream()
                .filter(l -> l.scan().label().equals(fit.spectrum()))
                .findFirst()
                .flatMap(MeasuredLine::middle)
                .map(time -> drift.get()
                        .positionAt(time)
                        .times(-1)
                        .plus(value)
                        .with("charge " + decided.method().word() + ":reference", u));
    }

    private List<Width> widths(List<ReferenceLineFit> fits) {
        List<Width> widths = new ArrayList<>();
        for (ReferenceLineFit fit : fits) {
            OptionalDouble pass = input.lines().stream()
                    .filter(l -> l.scan().label().equals(fit.spectrum()))
                    .findFirst()
                    .map(l -> l.scan().passEnergyEv())
                    .orElse(OptionalDouble.empty());
            widths.add(new Width(
                    fit.line(),
                    fit.reference().name(),
                    fit.spectrum(),
                    pass,
                    fit.reference().fwhm(),
                    Optional.empty(),
                    "",
                    OptionalDouble.empty()));
        }
        return widths;
    }
}
