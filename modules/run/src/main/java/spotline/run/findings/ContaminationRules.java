package spotline.run.findings;

import static spotline.run.findings.Limit.PRACTICE;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedSet;
import java.util.TreeSet;
import spotline.analysis.charge.ChargeEvidence.UnmovedLine;
import spotline.analysis.quantify.StateShare;
import spotline.core.Estimate;
import spotline.core.Finding;
import spotline.core.Severity;
import spotline.holder.Conductivity;
import spotline.holder.Sample;
import spotline.holder.SampleForm;
import spotline.holder.SpotPurpose;
import spotline.reference.Line;
import spotline.run.RunView;
import spotline.run.SpotView;

/**
 * Signals of mounts and handling, by evidence: checks 55 to 61 and 65. Energies and partners: the published table of mount
 * materials. An element counts where the survey surely shows it or counting tells it from nothing by three standard
 * uncertainties.
 */
final class ContaminationRules {
    private static final Limit POSITION = Limit.own("markerToleranceEv", 0.4, "eV", PRACTICE);
    private static final Limit SILICONE = Limit.own("siliconeShareOfRatio", 0.6, "of Si:O:C 1:1:2", PRACTICE);
    private static final Limit GLASS = Limit.own("siliconInGlassAtPercent", 25, "at.%", PRACTICE);
    private static final Limit ESTER = Limit.own("esterShareOfCarbon", 0.12, "of C 1s", PRACTICE);
    private static final Limit TAPE_CARBON = Limit.own("tapeLeastCarbonAtPercent", 30, "at.%", PRACTICE);
    private static final Limit METAL_CARBON = Limit.own("carbonOnMetalAtPercent", 45, "at.%", PRACTICE);
    private static final Limit CLEAR = Limit.fixed("amount", 3, "u", Limit.DERIVED);
    private static final List<String> CLIPS = List.of("Cu", "Zn", "Fe", "Cr", "Ni", "Au");
    private static final List<String> SALTS = List.of("Na", "Cl", "K", "Ca");

    private ContaminationRules() {}

    static List<Rule> rules() {
        return List.of(
                undeclared(
                        55,
                        "undeclared-silicon",
                        "Silicon that is not declared: glass, silicone or sample",
                        List.of(CLEAR, POSITION, GLASS),
                        ContaminationRules::silicon),
                undeclared(
                        56,
                        "silicone-film",
                        "The pattern of silicone",
                        List.of(CLEAR, POSITION, SILICONE),
                        ContaminationRules::silicone),
                undeclared(
                        57,
                        "undeclared-fluorine",
                        "Fluorine that is not declared",
                        List.of(CLEAR, POSITION),
                        ContaminationRules::fluorine),
                undeclared(
                        58,
                        "salt-signals",
                        "Sodium, chlorine, potassium or calcium together",
                        List.of(CLEAR),
                        ContaminationRules::salt),
                Rule.ofSpot(
                        59,
                        "tape-signals",
                        "Carbon of the tape under a powder",
                        Severity.CAUTION,
                        List.of(ESTER, TAPE_CARBON),
                        ContaminationRules::tape),
                undeclared(
                        60,
                        "clip-metal",
                        "Metal of a clip, a screw or the holder",
                        List.of(CLEAR),
                        ContaminationRules::clip),
                undeclared(
                        61,
                        "foil-metal",
                        "Indium, silver or aluminium of a foil or a paint",
                        List.of(CLEAR),
                        ContaminationRules::foil));
    }

    /** Rule 65, which stands behind those about neighbours. */
    static Rule carbonOnMetal() {
        return Rule.ofSpot(
                65,
                "carbon-on-metal",
                "More carbon than air leaves on a metal",
                Severity.NOTE,
                List.of(METAL_CARBON),
                (run, spot, limits) -> {
                    boolean metal = spot.spot()
                            .sample()
                            .map(Sample::conductivity)
                            .filter(c -> c == Conductivity.CONDUCTOR)
                            .isPresent();
                    if (!metal || spot.atomicPercent("C").isEmpty()) {
                        return RuleState.notChecked("it is no metal with an amount of carbon");
                    }
                    if (spot.percent("C") <= limits.of(METAL_CARBON)) return RuleState.PASSED;
                    return RuleState.fired(Finding.note(
                            "carbon-on-metal",
                            Rule.words(
                                    "Carbon is %.0f at.%% on a conductor (limit %.0f): more than fresh exposure to air"
                                            + " gives; bag, oil or handling?",
                                    spot.percent("C"), limits.of(METAL_CARBON))));
                });
    }

    private interface Evidence {
        Optional<String> at(RunView run, SpotView spot, Limits limits);
    }

    private static Rule undeclared(int number, String id, String title, List<Limit> limits, Evidence evidence) {
        return Rule.ofSpot(number, id, title, Severity.CAUTION, limits, (run, spot, in) -> {
            if (spot.spot().purpose() != SpotPurpose.SAMPLE) return RuleState.notChecked("the spot is no sample");
            if (spot.declared().isEmpty()) return RuleState.notChecked("the sample declares no elements");
            if (spot.elements().isEmpty()) return RuleState.notChecked("no element was found at all");
            return evidence.at(run, spot, in)
                    .map(message -> RuleState.fired(Finding.caution(id, message)))
                    .orElse(RuleState.PASSED);
        });
    }

    private static Optional<String> silicon(RunView run, SpotView spot, Limits limits) {
        if (!spot.showsUndeclared("Si")) return Optional.empty();
        Optional<Signature> glass = Signature.of(run.reference(), "glass", spot, limits.of(POSITION));
        boolean placed = glass.flatMap(Signature::inPlace).orElse(true);
        SortedSet<String> partners = glass.map(Signature::partners).orElse(new TreeSet<>());
        String at = Signature.at(spot, "Si 2p");
        if (placed && (spot.mountedWith("glass") || partners.size() >= 2)) {
            double share = 100 * spot.percent("Si") / limits.of(GLASS);
            String with = partners.isEmpty() ? "" : " with " + String.join(" and ", partners);
            return Optional.of(Rule.words(
                    "Si 2p%s%s%s: glass showing, about %.0f %% of the area if glass holds %.0f at.%% of Si.",
                    at, with, spot.mountedWith("glass") ? " on a cover slip" : "", share, limits.of(GLASS)));
        }
        return Optional.of("Si 2p" + at + " is not declared: silicone, glass, dust, or of the sample?");
    }

    private static Optional<String> silicone(RunView run, SpotView spot, Limits limits) {
        if (!spot.showsUndeclared("Si")) return Optional.empty();
        Optional<Signature> silicone = Signature.of(run.reference(), "silicone", spot, limits.of(POSITION));
        Optional<Signature> glass = Signature.of(run.reference(), "glass", spot, 0);
        boolean placed = silicone.flatMap(Signature::inPlace).orElse(false);
        boolean minerals = glass.map(g -> !g.partners().isEmpty()).orElse(false);
        double si = spot.percent("Si");
        boolean enough =
                spot.percent("O") > limits.of(SILICONE) * si && spot.percent("C") > limits.of(SILICONE) * 2 * si;
        if (!placed || minerals || spot.mountedWith("glass") || !(si > 0) || !enough) return Optional.empty();
        return Optional.of(Rule.words(
                "Si 2p%s without Na, K or Al, and Si:O:C is 1:%.1f:%.1f where silicone has 1:1:2 and the sample adds"
                        + " its own: silicone film, of glove, tape or grease?",
                Signature.at(spot, "Si 2p"), spot.percent("O") / si, spot.percent("C") / si));
    }

    private static Optional<String> fluorine(RunView run, SpotView spot, Limits limits) {
        if (!spot.showsUndeclared("F")) return Optional.empty();
        OptionalDouble at = spot.referencedEv(Line.parse("F 1s"));
        String where = "F 1s" + Signature.at(spot, "F 1s");
        if (at.isEmpty()) return Optional.of(where + " is not declared: fluoride or fluorinated tools?");
        double middle = 687;
        return Optional.of(
                at.getAsDouble() > middle
                        ? where + " is not declared: like PTFE or a fluorinated oil; tools or grease?"
                        : where + " is not declared: a fluoride, of etching, sputtering or cleaning?");
    }

    private static Optional<String> salt(RunView run, SpotView spot, Limits limits) {
        List<String> seen = SALTS.stream().filter(spot::showsUndeclared).toList();
        if (seen.size() < 2) return Optional.empty();
        double na = spot.percent("Na");
        double cl = spot.percent("Cl");
        String ratio = na > 0 && cl > 0 ? Rule.words(" Na:Cl is %.1f.", na / cl) : "";
        return Optional.of(String.join(" and ", seen) + " are not declared: fingerprint or salt." + ratio);
    }

    private static RuleState tape(RunView run, SpotView spot, Limits limits) {
        boolean taped = spot.mountedWith("carbon-tape") || spot.mountedWith("silicone");
        boolean powder = spot.spot()
                .sample()
                .map(Sample::form)
                .filter(f -> f == SampleForm.POWDER || f == SampleForm.FIBRE)
                .isPresent();
        if (!taped || !powder) return RuleState.notChecked("it is no powder on a tape");
        double carbon = spot.percent("C");
        double ester = 0;
        boolean states = false;
        for (StateShare s : spot.result().states()) {
            if (!s.element().equals("C")) continue;
            states = true;
            if (s.state().startsWith("O-C=O") || s.state().startsWith("COOH")) {
                ester += s.fractionOfElement().value();
            }
        }
        if (!states || spot.atomicPercent("C").isEmpty()) {
            return RuleState.notChecked("no states of C 1s were told apart");
        }
        if (ester < limits.of(ESTER) || carbon < limits.of(TAPE_CARBON)) return RuleState.PASSED;
        String blank = run.others(spot).stream()
                .filter(s -> s.spot().purpose() == SpotPurpose.BLANK && s.percent("C") > 0)
                .findFirst()
                .map(s -> Rule.words(" The blank at spot %s has O:C %.2f.", s.id(), s.percent("O") / s.percent("C")))
                .orElse("");
        return RuleState.fired(Finding.caution(
                "tape-signals",
                Rule.words(
                        "C is %.0f at.%% with %.0f %% of it as ester (limits %.0f at.%%, %.0f %%) on a powder on tape:"
                                + " the tape shows between the grains.%s",
                        carbon, 100 * ester, limits.of(TAPE_CARBON), 100 * limits.of(ESTER), blank)));
    }

    private static Optional<String> clip(RunView run, SpotView spot, Limits limits) {
        List<UnmovedLine> unmoved = spot.result().charge().evidence().unmoved().stream()
                .filter(u -> !spot.declared().contains(u.line().element()))
                .toList();
        List<String> metals = CLIPS.stream()
                .filter(m -> spot.showsUndeclared(m)
                        || unmoved.stream().anyMatch(u -> u.line().element().equals(m)))
                .toList();
        if (unmoved.isEmpty()) return Optional.empty();
        List<String> places = new ArrayList<>();
        for (UnmovedLine u : unmoved) places.add(Rule.words("%s at %.1f eV", u.line(), u.measuredEv()));
        List<String> also = metals.stream()
                .filter(m -> unmoved.stream().noneMatch(u -> u.line().element().equals(m)))
                .toList();
        String with = also.isEmpty() ? "" : ", with " + String.join(", ", also) + " 2p undeclared beside it";
        boolean brass = metals.contains("Cu");
        boolean steel = metals.contains("Fe");
        return Optional.of(Rule.words(
                "%s as measured, the energy of the metal, in a spot that needed a shift of %+.1f eV%s: %s inside the"
                        + " analysis area.",
                String.join(" and ", places),
                spot.result().charge().shiftEv().orElse(0),
                with,
                brass ? "a copper or brass clip" : steel ? "a steel clip or screw" : "grounded metal"));
    }

    private static Optional<String> foil(RunView run, SpotView spot, Limits limits) {
        for (String metal : List.of("In", "Ag", "Al")) {
            if (!spot.showsUndeclared(metal)) continue;
            boolean glass = metal.equals("Al") && spot.showsUndeclared("Si") && spot.mountedWith("glass");
            if (glass) continue;
            String material = switch (metal) {
                case "In" -> "indium-foil";
                case "Ag" -> "silver-paint";
                default -> "aluminium-foil";
            };
            String amount = spot.atomicPercent(metal)
                    .map(Estimate::value)
                    .map(x -> Rule.words(" (%.1f at.%%)", x))
                    .orElse("");
            return Optional.of(
                    spot.mountedWith(material)
                            ? metal + " is found" + amount + " and the mount holds it: the sample does not cover it."
                            : metal + " is found" + amount
                                    + " and not declared: foil, paint or wrapping the sample lay in?");
        }
        return Optional.empty();
    }
}
