package spotline.analysis.charge;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.analysis.charge.ChargeEvidence.Candidate;
import spotline.analysis.charge.ChargeInput.MeasuredLine;
import spotline.core.Estimate;
import spotline.core.Finding;
import spotline.core.Work;
import spotline.reference.Line;
import spotline.reference.ReferenceData;
import spotline.spectra.BindingScan;

/** One decision in the making. */
final class Decision {
    // Adventitious carbon on insulators: facility reviews, Biesinger, Appl. Surf. Sci. 597, 153681 (2022).
    private static final double ADVENTITIOUS_EV = 284.8;
    private static final double ADVENTITIOUS_U = 0.25;
    // Vacuum-level alignment: E(C 1s) + work function = 289.50 +/- 0.15 eV, Greczynski and Hultman, 2017.
    private static final double VACUUM_LEVEL_EV = 289.50;
    private static final double VACUUM_LEVEL_U = 0.15;

    private final ReferenceData reference;
    private final ChargeSettings settings;
    private final ChargeInput input;
    private final List<Finding> findings;
    private final Work work;
    private final ChargeLimits limits;
    private final CarbonScans carbon;

    Decision(ReferenceData reference, ChargeSettings settings, ChargeInput input, List<Finding> findings, Work work) {
        this.reference = reference;
        this.settings = settings;
        this.input = input;
        this.findings = findings;
        this.work = work;
        this.limits = settings.limits();
        this.carbon = new CarbonScans(input, work);
    }

    ChargeReference make() {
        return switch (settings.method()) {
            case BY_RECORD -> byRecord();
            case NONE -> none(true);
            case ADVENTITIOUS_CARBON -> adventitious();
            case SAMPLE_CARBON -> sampleCarbon();
            case INTERNAL_LINE -> internalLine();
            case FERMI_EDGE -> fermiEdge();
            case WORK_FUNCTION -> workFunction();
            case FIXED -> fixed();
        };
    }

    private ChargeReference byRecord() {
        SpotCondition c = input.condition();
        boolean grounded = c.contact() == SpotCondition.Contact.GROUNDED;
        boolean conducts = c.conduction() == SpotCondition.Conduction.CONDUCTOR
                || c.conduction() == SpotCondition.Conduction.SEMICONDUCTOR;
        if (grounded && conducts) return none(true);
        if (grounded && c.conduction() == SpotCondition.Conduction.UNKNOWN) return none(false);
        return adventitious();
    }

    private ChargeReference none(boolean certain) {
        List<String> doubts = new ArrayList<>();
        StringBuilder sentence = new StringBuilder("Grounded conductor: no charge correction");
        Optional<FermiEdge> edge = edge(0);
        Optional<MetalLine> metal = MetalLine.find(input, reference, limits.conductorToleranceEv(), work);
        edge.ifPresent(e -> sentence.append(
                ev("; Fermi edge measured at %.2f eV", e.positionEv().value())));
        metal.ifPresent(m -> sentence.append(ev(
                "; %s measured at %.2f eV, %.2f eV expected of the metal", m.line(), m.measuredEv(), m.expectedEv())));
        if (edge.isEmpty() && metal.isEmpty()) sentence.append("; no metal line was measured to check it");
        edge.ifPresent(e -> edgeOff(e, doubts));
        Optional<String> charged = carbon.offConductors();
        if (charged.isPresent()) {
            String off = "Declared grounded, yet " + charged.get();
            caution("grounded-conductor-off", carbon.first(), off + ": is the spot charged, its contact lost?");
            if (!certain) return failed(ChargeMethod.NONE, off + ".");
            doubts.add(charged.get());
        }
        if (metal.isPresent() && !metal.get().agrees()) {
            MetalLine m = metal.get();
            String off = ev(
                    "%s lies %+.2f eV off its metal energy (limit %.2f eV)",
                    m.line(), m.measuredEv() - m.expectedEv(), limits.conductorToleranceEv());
            doubts.add(off);
            caution(
                    "grounded-conductor-off",
                    m.spectrum(),
                    "Declared a grounded conductor, yet " + off + ": contact, calibration or an oxide layer?");
        }
        sentence.append('.');
        if (!certain) doubts.add("whether the sample conducts is not declared");
        boolean byEdge = metal.isEmpty() && edge.isPresent();
        ChargeReference decided = new ChargeReference(
                ChargeMethod.NONE,
                byEdge ? "Fermi edge" : metal.map(m -> m.line().toString()).orElse(""),
                byEdge ? OptionalDouble.of(0) : value(metal.map(MetalLine::expectedEv)),
                byEdge ? OptionalDouble.of(edge.get().positionEv().value()) : value(metal.map(MetalLine::measuredEv)),
                OptionalDouble.of(0),
                byEdge
                        ? edge.get().positionEv().standardUncertainty()
                        : metal.map(MetalLine::measurementU).orElse(OptionalDouble.empty()),
                OptionalDouble.empty(),
                ChargeVerdict.NOT_NEEDED,
                sentence.toString(),
                Optional.empty());
        return finished(decided, carbon.hydrocarbon(), carbon.drift(true), edge, doubts);
    }

    private void edgeOff(FermiEdge e, List<String> doubts) {
        double at = e.positionEv().value();
        double u = e.positionEv().standardUncertainty().orElse(0);
        if (Math.abs(at) <= limits.fermiEdgeToleranceEv() + 2 * u) return;
        String off = ev("the Fermi edge lies at %+.2f eV (limit %.2f eV)", at, limits.fermiEdgeToleranceEv());
        doubts.add(off);
        caution(
                "fermi-edge-off",
                e.spectrum(),
                "Declared a grounded conductor, yet " + off + ": calibration or contact before any carbon shift.");
    }

    private ChargeReference adventitious() {
        CarbonObjections objections = CarbonObjections.of(input, reference);
        List<String> doubts = new ArrayList<>(objections.doubts());
        if (!objections.refusals().isEmpty()) {
            boolean justified = settings.method() == ChargeMethod.ADVENTITIOUS_CARBON
                    && !settings.reason().isBlank();
            String why = sentence(String.join(", and ", objections.refusals()));
            if (!justified) {
                return failed(
                        ChargeMethod.ADVENTITIOUS_CARBON,
                        why + " State a reference in the treatment: sample-carbon or internal-line with its energy and"
                                + " the reason.");
            }
            doubts.addAll(objections.refusals());
        }
        double value = settings.referenceEv().orElse(ADVENTITIOUS_EV);
        double u = settings.referenceUncertaintyEv().orElse(ADVENTITIOUS_U);
        return byCarbon(ChargeMethod.ADVENTITIOUS_CARBON, "adventitious carbon", value, u, doubts);
    }

    private ChargeReference byCarbon(ChargeMethod method, String name, double value, double u, List<String> doubts) {
        if (input.carbon().isEmpty()) return failed(method, "No C 1s narrow scan was measured.");
        Optional<HydrocarbonFit.Placed> placed = carbon.hydrocarbon();
        if (placed.isEmpty()) {
            return failed(method, "Too little carbon: the C 1s scan shows no line that could be fitted.");
        }
        if (placed.get().hasBelow()) {
            doubts.add("C 1s shows carbon below hydrocarbon: a carbide, graphite or a second potential");
            caution(
                    "carbon-below-hydrocarbon",
                    placed.get().fit().spectrum(),
                    "C 1s needs a component below hydrocarbon: a carbide, graphite or a second potential?");
        }
        return referenced(method, name, placed.get().fit(), value, OptionalDouble.of(u), doubts, placed, true);
    }

    private ChargeReference sampleCarbon() {
        Optional<MeasuredLine> first = input.carbon().stream().findFirst();
        if (first.isEmpty()) return failed(ChargeMethod.SAMPLE_CARBON, "No C 1s narrow scan was measured.");
        return strongest(
                ChargeMethod.SAMPLE_CARBON,
                "the sample's own carbon",
                ChargeInput.CARBON,
                first.get().scan());
    }

    private ChargeReference internalLine() {
        Optional<Line> wanted = Line.find(settings.referenceLine());
        Optional<MeasuredLine> measured =
                wanted.flatMap(w -> input.scansOf(w).stream().findFirst());
        if (measured.isEmpty()) {
            return failed(
                    ChargeMethod.INTERNAL_LINE,
                    "No narrow scan of the reference line " + settings.referenceLine() + " was measured.");
        }
        return strongest(
                ChargeMethod.INTERNAL_LINE,
                "an internal line",
                wanted.orElseThrow(),
                measured.get().scan());
    }

    private ChargeReference strongest(ChargeMethod method, String name, Line line, BindingScan scan) {
        double value = settings.referenceEv().orElseThrow();
        return TopFit.place(line, scan, TopFit.doubletOf(reference.doublet(line, scan.photonEnergyEv()), line), work)
                .map(fit -> referenced(
                        method,
                        name,
                        fit,
                        value,
                        settings.referenceUncertaintyEv(),
                        new ArrayList<>(),
                        carbon.hydrocarbon(),
                        method == ChargeMethod.SAMPLE_CARBON))
                .orElseGet(() -> failed(method, "The " + line + " scan shows no line that could be fitted."));
    }

    private ChargeReference fermiEdge() {
        Optional<FermiEdge> found = edge(-input.workingShiftEv());
        if (found.isEmpty()) {
            return failed(ChargeMethod.FERMI_EDGE, "No narrow scan shows a Fermi edge that could be fitted.");
        }
        Estimate at = found.get().positionEv();
        String text = ev(
                "Referenced to the Fermi edge: measured at %.2f eV, a shift of %+.2f eV%s.",
                at.value(), -at.value(), uncertainty(at.standardUncertainty(), OptionalDouble.of(0)));
        List<String> doubts = new ArrayList<>();
        new LineDoubts(limits, input.monochromated(), findings, doubts)
                .weak("the Fermi edge", found.get().spectrum(), at.standardUncertainty());
        if (input.condition().conduction() == SpotCondition.Conduction.INSULATOR) {
            doubts.add("an insulator has no Fermi edge: the onset of its valence band is none");
        }
        ChargeReference decided = new ChargeReference(
                ChargeMethod.FERMI_EDGE,
                "Fermi edge",
                OptionalDouble.of(0),
                OptionalDouble.of(at.value()),
                OptionalDouble.of(-at.value()),
                at.standardUncertainty(),
                OptionalDouble.of(0),
                ChargeVerdict.ACCEPTED,
                text + reason(),
                Optional.empty());
        return finished(decided, carbon.hydrocarbon(), carbon.drift(true), found, doubts);
    }

    private Optional<FermiEdge> edge(double expectedEv) {
        return input.others().stream()
                .map(ChargeInput.OtherScan::scan)
                .filter(s -> s.range().contains(expectedEv - 1) && s.range().contains(expectedEv + 1))
                .flatMap(s -> FermiEdge.fit(s, expectedEv, settings.temperatureK(), work).stream())
                .findFirst();
    }

    private ChargeReference workFunction() {
        Optional<Estimate> measured = input.others().stream()
                .flatMap(o -> LowEnergyCutoff.workFunction(o.scan(), work).stream())
                .findFirst();
        Optional<ChargeSettings.WorkFunction> stated = settings.workFunction();
        if (stated.isEmpty() && measured.isEmpty()) {
            return failed(
                    ChargeMethod.WORK_FUNCTION,
                    "No work function is stated and no narrow scan holds the low-energy cutoff to measure it.");
        }
        double phi = stated.map(ChargeSettings.WorkFunction::valueEv)
                .orElseGet(() -> measured.orElseThrow().value());
        double u = stated.map(ChargeSettings.WorkFunction::standardUncertaintyEv)
                .orElseGet(() -> measured.orElseThrow().standardUncertainty().orElse(0));
        String name = ev(
                "carbon aligned to the vacuum level (289.50 eV less a work function of %.2f eV, %s)",
                phi, stated.isPresent() ? "stated" : "from the low-energy cutoff");
        double value = settings.referenceEv().orElse(VACUUM_LEVEL_EV - phi);
        return byCarbon(ChargeMethod.WORK_FUNCTION, name, value, Math.hypot(VACUUM_LEVEL_U, u), new ArrayList<>());
    }

    private ChargeReference fixed() {
        double shift = settings.shiftEv().orElseThrow();
        ChargeReference decided = new ChargeReference(
                ChargeMethod.FIXED,
                "",
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.of(shift),
                OptionalDouble.empty(),
                settings.referenceUncertaintyEv(),
                ChargeVerdict.ACCEPTED,
                ev("A fixed shift of %+.2f eV is applied: %s.", shift, settings.reason()),
                Optional.empty());
        return finished(decided, carbon.hydrocarbon(), carbon.drift(true), Optional.empty(), new ArrayList<>());
    }

    private ChargeReference referenced(
            ChargeMethod method,
            String name,
            ReferenceLineFit fit,
            double value,
            OptionalDouble referenceU,
            List<String> doubts,
            Optional<HydrocarbonFit.Placed> hydrocarbon,
            boolean byCarbon) {
        double measured = fit.reference().position().value();
        OptionalDouble u = fit.reference().position().standardUncertainty();
        LineDoubts line = new LineDoubts(limits, input.monochromated(), findings, doubts);
        line.weak(fit.line(), fit.spectrum(), u);
        line.shape(fit);
        boolean single = method == ChargeMethod.ADVENTITIOUS_CARBON || method == ChargeMethod.WORK_FUNCTION;
        Optional<Drift> drift = byCarbon ? carbon.drift(single) : Optional.empty();
        drift.ifPresent(line::drift);
        double shift = value - measured;
        String text = ev(
                "Referenced to %s: %s measured at %.2f eV is set to %.2f eV, a shift of %+.2f eV%s%s.%s",
                name, fit.line(), measured, value, shift, uncertainty(u, referenceU), steady(drift), reason());
        ChargeReference decided = new ChargeReference(
                method,
                fit.line(),
                OptionalDouble.of(value),
                OptionalDouble.of(measured),
                OptionalDouble.of(shift),
                u,
                referenceU,
                ChargeVerdict.ACCEPTED,
                text,
                Optional.of(fit));
        return finished(decided, hydrocarbon, drift, Optional.empty(), doubts);
    }

    private static String steady(Optional<Drift> drift) {
        return drift.map(d -> ev(
                        "; its last scan lies %+.2f eV from its first",
                        d.changeEv().value()))
                .orElse("");
    }

    /** The decision with its evidence, and with what that evidence speaks against. */
    private ChargeReference finished(
            ChargeReference decided,
            Optional<HydrocarbonFit.Placed> hydrocarbon,
            Optional<Drift> drift,
            Optional<FermiEdge> edge,
            List<String> doubts) {
        ChargeEvidence evidence = new Evidence(reference, settings, input, work).of(decided, hydrocarbon, drift, edge);
        List<String> all = new ArrayList<>(doubts);
        boolean shifted = decided.method() != ChargeMethod.NONE;
        if (shifted) all.addAll(new EvidenceDoubts(findings).of(decided, evidence));
        return decided.with(evidence).doubted(all);
    }

    private ChargeReference failed(ChargeMethod method, String why) {
        List<Candidate> candidates = Candidates.of(input, reference, work);
        String next = candidates.isEmpty() ? "" : " " + nextBest(candidates.get(0));
        findings.add(Finding.caution("charge-reference-failed", why + next + " Referenced energies are withheld."));
        ChargeReference decided = new ChargeReference(
                method,
                "",
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                ChargeVerdict.FAILED,
                "No energy reference: " + why + next,
                Optional.empty());
        return decided.with(new Evidence(reference, settings, input, work)
                .of(decided, Optional.empty(), Optional.empty(), Optional.empty()));
    }

    static String nextBest(Candidate c) {
        return ev(
                "Next best: %s, %s at %.1f +/- %.1f eV, measured at %.2f eV, would give a shift of %+.2f +/- %.2f eV%s.",
                c.line(),
                c.state(),
                c.referenceEv(),
                c.referenceU(),
                c.measured().value(),
                c.shiftEv(),
                c.standardUncertainty().orElse(c.referenceU()),
                c.alone() ? "" : ", if it is that state");
    }

    private String reason() {
        return settings.reason().isBlank() ? "" : " Reason given: " + settings.reason() + ".";
    }

    private void caution(String rule, String spectrum, String message) {
        findings.add(Finding.caution(rule, message).in(spectrum));
    }

    private static String sentence(String text) {
        return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1) + ".";
    }

    private static OptionalDouble value(Optional<Double> value) {
        return value.map(OptionalDouble::of).orElse(OptionalDouble.empty());
    }

    static String ev(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }

    private static String uncertainty(OptionalDouble measurement, OptionalDouble reference) {
        if (measurement.isEmpty() || reference.isEmpty()) return "";
        return ev(
                " (standard uncertainty %.2f eV: %.3f measured, %.2f reference)",
                Math.hypot(measurement.getAsDouble(), reference.getAsDouble()),
                measurement.getAsDouble(),
                reference.getAsDouble());
    }
}
