package spotline.run.findings;

import static spotline.run.findings.Limit.PRACTICE;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import spotline.analysis.peakfit.FittedComponent;
import spotline.analysis.quantify.StateShare;
import spotline.core.Estimate;
import spotline.core.Finding;
import spotline.core.Severity;
import spotline.holder.Conductivity;
import spotline.holder.Sample;
import spotline.reference.Doublet;
import spotline.run.LineFit;
import spotline.run.RunView;
import spotline.run.SpotView;

/** Fits: checks 38 to 45. Those of a fit's own numbers are made where it is fitted. */
final class FitRules {
    private static final Limit NARROWEST =
            Limit.own("instrumentFwhmEv", Double.NaN, "eV", "the laboratory's own, of the pass energy in use");
    private static final Limit PARTNER = Limit.own("partnerFoundEv", 0.5, "eV", PRACTICE);
    private static final Limit BALANCE = Limit.own("carbonOxygenSigmas", 2, "u", Limit.DERIVED);
    /** Metals whose 2p lines tail strongly. Source: general knowledge of the field. */
    private static final Set<String> TAILING = Set.of("Fe", "Co", "Ni", "Pd", "Pt", "Rh", "Ir", "Ru", "Cr", "Mn");

    private static final Set<String> ASYMMETRIC = Set.of("doniach-sunjic", "voigt-exponential-tail");

    private FitRules() {}

    static List<Rule> rules() {
        return List.of(
                fitted(
                        38,
                        "fit-residual-structure",
                        "Residuals of a fit that have structure",
                        List.of(
                                Limit.fixed(
                                        "chi-square over degrees of freedom", 3, "sqrt(2/nu) about 1", Limit.DERIVED),
                                Limit.fixed("structured residual", 0.02, "of the area", PRACTICE)),
                        Set.of("reference-line-misfit", "fit-not-converged")),
                fitted(
                        39,
                        "fit-component-weak",
                        "A component below detection, at a bound, or too close to another",
                        List.of(
                                Limit.fixed("area", 3, "u", Limit.DERIVED),
                                Limit.fixed("separation", 0.5, "FWHM", PRACTICE)),
                        Set.of("fit-at-bound", "fit-components-close", "fit-undetermined")),
                new Rule(
                        40,
                        "fit-component-broad",
                        "A component narrower than the instrument or much wider than the others",
                        Severity.CAUTION,
                        List.of(Limit.fixed("width", 2, "times the others", PRACTICE), NARROWEST),
                        Set.of(),
                        Rule.everySpot(FitRules::narrow)),
                fitted(
                        41,
                        "fit-only-sum",
                        "Components of which only the sum is measured",
                        List.of(Limit.fixed("correlation", 0.95, "", Limit.DERIVED)),
                        Set.of()),
                Rule.ofSpot(
                        42,
                        "doublet-partner-missing",
                        "A line fitted without the partner of its doublet",
                        Severity.CAUTION,
                        List.of(PARTNER),
                        FitRules::partner),
                Rule.ofSpot(
                        43,
                        "line-shape-unlikely",
                        "A symmetric shape on a metal that tails, or an asymmetric one on an insulator",
                        Severity.CAUTION,
                        List.of(),
                        FitRules::shape),
                new Rule(
                        44,
                        "fit-background-above-data",
                        "A background that runs above the data",
                        Severity.STOP,
                        List.of(Limit.fixed("run of channels", 3, "channels", Limit.DERIVED), BackgroundAbove.SHARE),
                        Set.of("shirley-capped", "fit-negative-counts"),
                        Rule.everySpot(BackgroundAbove::check)),
                Rule.ofSpot(
                        45,
                        "carbon-oxygen-imbalance",
                        "Carbon groups that ask for more oxygen than there is",
                        Severity.CAUTION,
                        List.of(BALANCE),
                        FitRules::balance));
    }

    private static Rule fitted(int number, String id, String title, List<Limit> limits, Set<String> adopted) {
        return Rule.elsewhere(
                number,
                id,
                title,
                Severity.CAUTION,
                limits,
                adopted,
                Rule.needs(s -> !s.result().fits().isEmpty(), "nothing was fitted"));
    }

    /** Fits whose model the analyst chose. */
    private static List<LineFit> chosen(SpotView spot) {
        return spot.result().fits().stream().filter(f -> !f.byDefault()).toList();
    }

    private static RuleState narrow(RunView run, SpotView spot, Limits limits) {
        if (spot.result().fits().isEmpty()) return RuleState.notChecked("nothing was fitted");
        OptionalDouble narrowest = limits.stated(NARROWEST);
        if (narrowest.isEmpty()) return RuleState.PASSED;
        List<Finding> findings = new ArrayList<>();
        for (LineFit fit : chosen(spot)) {
            for (FittedComponent c : fit.result().components()) {
                double u = c.fwhm().standardUncertainty().orElse(0);
                if (c.fwhm().value() + 2 * u >= narrowest.getAsDouble()) continue;
                findings.add(Finding.caution(
                                "fit-component-broad",
                                Rule.words(
                                        "Component %s is %.2f eV wide, below the resolution of %.2f eV.",
                                        c.name(), c.fwhm().value(), narrowest.getAsDouble()))
                        .in(fit.spectrum()));
            }
        }
        return RuleState.of(findings);
    }

    private static RuleState partner(RunView run, SpotView spot, Limits limits) {
        List<Finding> findings = new ArrayList<>();
        boolean looked = false;
        for (LineFit fit : chosen(spot)) {
            Optional<Doublet> doublet = Doublets.doublet(run, spot, fit);
            if (doublet.isEmpty()) continue;
            looked = true;
            List<FittedComponent> components = fit.result().components();
            FittedComponent first = components.get(0);
            for (FittedComponent c : components) {
                if (c.area().value() > first.area().value()) first = c;
            }
            double at = first.position().value() + doublet.get().splittingEv();
            double[] energies = fit.result().energies();
            boolean inside = at < energies[energies.length - 1] && doublet.get().splittingEv() > limits.of(PARTNER);
            boolean found =
                    components.stream().anyMatch(c -> Math.abs(c.position().value() - at) < limits.of(PARTNER));
            if (!inside || found) continue;
            findings.add(Finding.caution(
                            "doublet-partner-missing",
                            Rule.words(
                                    "%s was fitted without the partner of %s, which belongs at %.1f eV as measured"
                                            + " (limit %.1f eV).",
                                    fit.line(), first.name(), at, limits.of(PARTNER)))
                    .in(fit.spectrum()));
        }
        return looked ? RuleState.of(findings) : RuleState.notChecked("no doublet was fitted by a stated model");
    }

    private static RuleState shape(RunView run, SpotView spot, Limits limits) {
        List<LineFit> fits = chosen(spot);
        if (fits.isEmpty()) return RuleState.notChecked("nothing was fitted by a stated model");
        Conductivity conductivity =
                spot.spot().sample().map(Sample::conductivity).orElse(Conductivity.UNKNOWN);
        List<Finding> findings = new ArrayList<>();
        for (LineFit fit : fits) {
            for (FittedComponent c : fit.result().components()) {
                boolean asymmetric = ASYMMETRIC.contains(c.shape());
                boolean metal = c.name().toLowerCase(Locale.ROOT).contains("metal");
                if (metal && !asymmetric && TAILING.contains(fit.line().element())) {
                    findings.add(Finding.caution(
                                    "line-shape-unlikely",
                                    "Metallic " + fit.line().element()
                                            + " is fitted with a symmetric shape (" + c.name()
                                            + "): its tail goes to another component.")
                            .in(fit.spectrum()));
                } else if (asymmetric && conductivity == Conductivity.INSULATOR) {
                    findings.add(Finding.caution(
                                    "line-shape-unlikely",
                                    "Component " + c.name() + " of " + fit.line()
                                            + " is asymmetric, and the sample is declared an insulator.")
                            .in(fit.spectrum()));
                }
            }
        }
        return RuleState.of(findings);
    }

    /** Oxygen atoms that a carbon atom of a state needs at least: two carbons share an ether's oxygen. Derived. */
    private static double needed(String state) {
        String s = state.toLowerCase(Locale.ROOT);
        if (s.startsWith("o-c=o")) return 1.5;
        if (s.startsWith("carbonate") || s.startsWith("organic carbonate")) return 3;
        if (s.startsWith("c=o") || s.startsWith("o-c-o") || s.startsWith("n-c=o")) return 1;
        if (s.startsWith("cooh")) return 2;
        return s.startsWith("c-o") ? 0.5 : 0;
    }

    private static RuleState balance(RunView run, SpotView spot, Limits limits) {
        Optional<Estimate> oxygen = spot.atomicPercent("O");
        List<Estimate> demands = new ArrayList<>();
        for (StateShare s : spot.result().states()) {
            if (!s.element().equals("C") || s.atomicPercent().isEmpty()) continue;
            demands.add(s.atomicPercent().get().times(needed(s.state())));
        }
        if (demands.isEmpty()) return RuleState.notChecked("no states of C 1s were told apart");
        if (oxygen.isEmpty()) return RuleState.notChecked("there is no amount of oxygen");
        Estimate missing = Estimate.sum(demands).minus(oxygen.get());
        double u = missing.standardUncertainty().orElse(Double.POSITIVE_INFINITY);
        if (missing.value() <= limits.of(BALANCE) * u) return RuleState.PASSED;
        return RuleState.fired(Finding.caution(
                "carbon-oxygen-imbalance",
                Rule.words(
                        "The groups of C 1s ask for %.1f at.%% of oxygen, %.1f at.%% were measured (%.1f u apart, limit"
                                + " %.0f): O 1s or the assignment of C 1s is wrong.",
                        oxygen.get().value() + missing.value(),
                        oxygen.get().value(),
                        missing.value() / u,
                        limits.of(BALANCE))));
    }
}
