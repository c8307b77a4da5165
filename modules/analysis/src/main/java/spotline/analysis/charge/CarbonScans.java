package spotline.analysis.charge;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import spotline.analysis.charge.ChargeInput.MeasuredLine;
import spotline.core.Work;

/** The C 1s scans of a spot: where hydrocarbon lies in the first, and how the line moved until the last. */
final class CarbonScans {
    /** Where hydrocarbon usually lies, eV; only to look for it. */
    /** Adventitious carbon on conductors. Source: G. Greczynski, L. Hultman, ChemPhysChem 2017: 284.08 to 286.74 eV. */
    static final double LOWEST_ON_CONDUCTORS = 284.1;

    static final double HIGHEST_ON_CONDUCTORS = 286.7;
    private static final double BEYOND = 0.5;

    private static final double USUAL_EV = 284.8;

    private final ChargeInput input;
    private final Work work;

    CarbonScans(ChargeInput input, Work work) {
        this.input = input;
        this.work = work;
    }

    /** Empty where there is no scan, no line, or the carbon is the sample's own. */
    Optional<HydrocarbonFit.Placed> hydrocarbon() {
        if (input.condition().carbon() == SpotCondition.CarbonOrigin.OWN) return Optional.empty();
        return input.carbon().stream().findFirst().flatMap(c -> hydrocarbon(c, USUAL_EV - input.workingShiftEv()));
    }

    /** Carbon further up or down than it is met on conductors, in words: such a spot is charged, whatever was declared. */
    Optional<String> offConductors() {
        return hydrocarbon()
                .map(placed -> placed.fit().reference().position().value())
                .filter(at -> at < LOWEST_ON_CONDUCTORS - BEYOND || at > HIGHEST_ON_CONDUCTORS + BEYOND)
                .map(at -> String.format(
                        Locale.ROOT,
                        "C 1s lies at %.2f eV as measured, and on conductors it is met from %.1f to %.1f eV",
                        at,
                        LOWEST_ON_CONDUCTORS,
                        HIGHEST_ON_CONDUCTORS));
    }

    /** Name of the scan that {@link #hydrocarbon()} speaks of. */
    String first() {
        return input.carbon().get(0).scan().label();
    }

    private Optional<HydrocarbonFit.Placed> hydrocarbon(MeasuredLine carbon, double expectedEv) {
        return HydrocarbonFit.place(carbon.scan(), expectedEv, work);
    }

    /** @param hydrocarbon by that component, or else by the strongest */
    Optional<Drift> drift(boolean hydrocarbon) {
        List<Drift.Scan> scans = new ArrayList<>();
        if (input.carbon().size() < 2) return Optional.empty();
        for (MeasuredLine carbon : input.carbon()) {
            double expected = scans.isEmpty()
                    ? USUAL_EV - input.workingShiftEv()
                    : scans.get(scans.size() - 1).position().value();
            Optional<ReferenceLineFit> fit = hydrocarbon
                    ? hydrocarbon(carbon, expected).map(HydrocarbonFit.Placed::fit)
                    : TopFit.place(ChargeInput.CARBON, carbon.scan(), Optional.empty(), work);
            fit.ifPresent(f -> scans.add(
                    new Drift.Scan(f.spectrum(), carbon.middle(), f.reference().position())));
        }
        return scans.size() < 2 ? Optional.empty() : Optional.of(Drift.of("C 1s", scans));
    }
}
