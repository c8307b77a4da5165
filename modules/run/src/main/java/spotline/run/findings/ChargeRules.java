package spotline.run.findings;

import static spotline.run.findings.Limit.PRACTICE;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import spotline.analysis.charge.ChargeEvidence;
import spotline.analysis.charge.ChargeEvidence.AugerParameterSeen;
import spotline.analysis.charge.ChargeMethod;
import spotline.analysis.charge.ChargeReference;
import spotline.analysis.charge.FermiEdge;
import spotline.core.Finding;
import spotline.core.Severity;
import spotline.holder.Conductivity;
import spotline.holder.ElectricalState;
import spotline.holder.Sample;
import spotline.run.RunView;
import spotline.run.SpotView;

/** Charge: checks 25 to 37. Most are made while the energy reference is decided. */
final class ChargeRules {
    private static final Limit PARAMETER = Limit.own("augerParameterEv", 0.2, "eV", "general knowledge of the field");
    private static final Limit EDGE = Limit.own("edgeWidthRelative", 0.20, "relative", Limit.DERIVED);
    private static final Limit INSTRUMENT =
            Limit.own("instrumentFwhmEv", Double.NaN, "eV", "the laboratory's own, of the pass energy in use");
    private static final String NOT_CARBON = "the energy reference is not carbon";
    private static final String NO_SHIFT = "no shift was needed or found";

    private ChargeRules() {}

    static List<Rule> rules() {
        return List.of(
                charge(
                        25,
                        "grounded-conductor-off",
                        "A grounded conductor that needed a shift",
                        List.of(Limit.of("charge.conductorToleranceEv", 0.2, "eV", PRACTICE)),
                        Set.of(),
                        s -> grounded(s) ? Optional.empty() : Optional.of("it is no grounded conductor")),
                charge(
                        26,
                        "carbon-reference-weak",
                        "A reference line that is weak or badly placed",
                        List.of(
                                Limit.of("charge.leastCarbonAtPercent", 1, "at.%", PRACTICE),
                                Limit.of("charge.largestMeasurementUEv", 0.1, "eV", Limit.DERIVED)),
                        Set.of("reference-line-weak"),
                        s -> fitted(s) ? Optional.empty() : Optional.of("no reference line was fitted")),
                charge(
                        27,
                        "reference-line-broad",
                        "A carbon reference that is broadened",
                        List.of(Limit.of("charge.widestReferenceFwhmEv", 1.45, "eV", PRACTICE)),
                        Set.of(),
                        s -> carbon(s) ? Optional.empty() : Optional.of(NOT_CARBON)),
                charge(
                        28,
                        "differential-charging",
                        "Two potentials in the analysis area",
                        List.of(Limit.of("charge.largestWidthExcessEv", 0.05, "eV", PRACTICE)),
                        Set.of(),
                        s -> fitted(s) ? Optional.empty() : Optional.of("no reference line was fitted")),
                charge(
                        29,
                        "surface-potential-drifted",
                        "First and last scan of the reference line at two potentials",
                        List.of(Limit.of("charge.largestDriftEv", 0.10, "eV", PRACTICE)),
                        Set.of(),
                        s -> evidence(s).drift().isPresent()
                                ? Optional.empty()
                                : Optional.of("the reference line was measured once")),
                new Rule(
                        30,
                        "siblings-differ",
                        "Spots of one sample that differ after referencing",
                        Severity.CAUTION,
                        List.of(Limit.of("limits.spotAgreementEv", 0.2, "eV", PRACTICE)),
                        Set.of(),
                        Rule.everySpot((run, s, in) -> run.siblings(s).isEmpty()
                                ? RuleState.notChecked("one spot of the sample was measured")
                                : shifted(s) ? RuleState.PASSED : RuleState.notChecked(NO_SHIFT))),
                new Rule(
                        31,
                        "two-carbon-reference-values",
                        "Two adventitious-carbon reference values in one report",
                        Severity.CAUTION,
                        List.of(),
                        Set.of(),
                        run -> Map.of(
                                "",
                                run.spots().stream().anyMatch(ChargeRules::carbon)
                                        ? RuleState.PASSED
                                        : RuleState.notChecked("no spot is referenced to adventitious carbon"))),
                charge(
                        32,
                        "charge-reference-failed",
                        "Carbon that cannot serve: the sample's own, sputtered, overlapped",
                        List.of(),
                        Set.of("carbon-below-hydrocarbon"),
                        s -> Optional.empty()),
                charge(
                        33,
                        "metal-line-unmoved",
                        "Lines at their metal's energy though the spot was shifted",
                        List.of(Limit.fixed("distance from the metal's energy", 0.1, "eV", Limit.DERIVED)),
                        Set.of(),
                        s -> shifted(s) ? Optional.empty() : Optional.of(NO_SHIFT)),
                Rule.ofSpot(
                        34,
                        "auger-parameter-changed",
                        "An Auger parameter that differs between spots though the binding energy does not",
                        Severity.NOTE,
                        List.of(PARAMETER),
                        ChargeRules::parameter),
                charge(
                        35,
                        "fermi-edge-off",
                        "A Fermi edge away from zero",
                        List.of(Limit.of("charge.fermiEdgeToleranceEv", 0.05, "eV", Limit.DERIVED)),
                        Set.of(),
                        s -> evidence(s).fermiEdge().isPresent()
                                ? Optional.empty()
                                : Optional.of("no Fermi edge was measured")),
                Rule.ofSpot(
                        36,
                        "fermi-edge-width",
                        "A Fermi edge whose width does not go with the temperature",
                        Severity.NOTE,
                        List.of(EDGE, INSTRUMENT),
                        ChargeRules::edgeWidth),
                charge(
                        37,
                        "references-disagree",
                        "Two references that disagree",
                        List.of(Limit.fixed("difference", 2, "u combined", PRACTICE)),
                        Set.of(),
                        s -> evidence(s).check().isPresent()
                                        || !evidence(s).candidates().isEmpty()
                                ? Optional.empty()
                                : Optional.of("there is no second reference")));
    }

    private interface Missing {
        Optional<String> at(SpotView spot);
    }

    private static Rule charge(
            int number, String id, String title, List<Limit> limits, Set<String> adopted, Missing missing) {
        return Rule.elsewhere(
                number,
                id,
                title,
                Severity.CAUTION,
                limits,
                adopted,
                (run, spot, in) -> missing.at(spot).map(RuleState::notChecked).orElse(RuleState.PASSED));
    }

    private static ChargeEvidence evidence(SpotView spot) {
        return spot.result().charge().evidence();
    }

    private static boolean fitted(SpotView spot) {
        return spot.result().charge().fit().isPresent();
    }

    private static boolean carbon(SpotView spot) {
        return spot.result().charge().method() == ChargeMethod.ADVENTITIOUS_CARBON;
    }

    private static boolean shifted(SpotView spot) {
        ChargeReference charge = spot.result().charge();
        return charge.method() != ChargeMethod.NONE && charge.shiftEv().isPresent();
    }

    private static boolean grounded(SpotView spot) {
        boolean conducts = spot.spot()
                .sample()
                .map(Sample::conductivity)
                .filter(c -> c == Conductivity.CONDUCTOR)
                .isPresent();
        return conducts && spot.spot().mount().electricalState() == ElectricalState.GROUNDED;
    }

    private static RuleState parameter(RunView run, SpotView spot, Limits limits) {
        List<Finding> findings = new ArrayList<>();
        boolean looked = false;
        for (AugerParameterSeen own : evidence(spot).augerParameters()) {
            for (SpotView other : run.siblings(spot)) {
                Optional<AugerParameterSeen> same = evidence(other).augerParameters().stream()
                        .filter(a ->
                                a.line().equals(own.line()) && a.transition().equals(own.transition()))
                        .findFirst();
                if (same.isEmpty()) continue;
                looked = true;
                double change = own.parameter().value() - same.get().parameter().value();
                double u = Math.hypot(
                        own.parameter().standardUncertainty().orElse(0),
                        same.get().parameter().standardUncertainty().orElse(0));
                boolean sameEnergy = own.referencedBindingEv().isPresent()
                        && same.get().referencedBindingEv().isPresent()
                        && Math.abs(own.referencedBindingEv().getAsDouble()
                                        - same.get().referencedBindingEv().getAsDouble())
                                <= limits.of(PARAMETER);
                boolean first = spot.id().compareTo(other.id()) < 0;
                if (!first || !sameEnergy || Math.abs(change) <= limits.of(PARAMETER) + 2 * u) continue;
                findings.add(Finding.note(
                        "auger-parameter-changed",
                        Rule.words(
                                "The Auger parameter of %s and %s differs by %+.2f eV from spot %s at the same binding"
                                        + " energy (limit %.2f eV): the state changed, not the charge.",
                                own.line(), own.transition(), change, other.id(), limits.of(PARAMETER))));
            }
        }
        return looked
                ? RuleState.of(findings)
                : RuleState.notChecked("no Auger parameter was measured at two spots of the sample");
    }

    /** Source: 10 to 90 % widths, thermal 2 ln 9 kT and Gaussian 1.088 FWHM, in squares; closed forms. */
    private static RuleState edgeWidth(RunView run, SpotView spot, Limits limits) {
        Optional<FermiEdge> edge = evidence(spot).fermiEdge();
        if (edge.isEmpty()) return RuleState.notChecked("no Fermi edge was measured");
        OptionalDouble instrument = limits.stated(INSTRUMENT);
        if (instrument.isEmpty()) return RuleState.notChecked("no width of the instrument is stated");
        double thermal = FermiEdge.thermalWidthEv(edge.get().temperatureK());
        double expected = Math.hypot(thermal, 1.088 * instrument.getAsDouble());
        double width = edge.get().width1090Ev();
        if (Math.abs(width / expected - 1) <= limits.of(EDGE)) return RuleState.PASSED;
        return RuleState.fired(Finding.note(
                        "fermi-edge-width",
                        Rule.words(
                                "The Fermi edge is %.2f eV wide from 10 to 90 %%; %.0f K and an instrument of %.2f eV"
                                        + " make %.2f eV (limit %.0f %%).",
                                width,
                                edge.get().temperatureK(),
                                instrument.getAsDouble(),
                                expected,
                                100 * limits.of(EDGE)))
                .in(edge.get().spectrum()));
    }
}
