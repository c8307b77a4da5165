package spotline.analysis.charge;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import spotline.core.Finding;
import spotline.core.Outcome;
import spotline.core.Work;
import spotline.reference.Line;
import spotline.reference.ReferenceData;
import spotline.spectra.BindingScan;

/**
 * Decides the energy reference of a spot.
 *
 * <p>A grounded conductor is checked by a metal line and never shifted: carbon on a conductor lies anywhere between 284.1
 * and 286.7 eV (Greczynski and Hultman, 2017). Isolated spots are referenced to adventitious carbon, unless the carbon is
 * the sample's own: then only a reference the analyst states is used.
 *
 * <p>Shape: one spot in, one decision out. Units: eV, the shift to be added to measured binding energies. Errors: none; a
 * reference that cannot be found is a decision with the verdict failed.
 *
 * <p>Source: ISO 19318 (what to report), ASTM E1523 (methods).
 */
public final class ChargeReferencing {
    /** Version of the step: rises when its numbers change. */
    public static final String STEP = "charge/1";

    // Adventitious carbon on insulators: facility reviews, Biesinger, Appl. Surf. Sci. 597, 153681 (2022).
    private static final double ADVENTITIOUS_EV = 284.8;
    private static final double ADVENTITIOUS_U = 0.25;

    private final ReferenceData reference;
    private final ChargeSettings settings;

    public ChargeReferencing(ReferenceData reference, ChargeSettings settings) {
        this.reference = reference;
        this.settings = settings;
    }

    public Outcome<ChargeReference> decide(ChargeInput input, Work work) {
        Decision decision = new Decision(input, work);
        ChargeReference result = decision.make();
        return Outcome.done(result, decision.findings);
    }

    /** One decision in the making. */
    private final class Decision {
        private final ChargeInput input;
        private final Work work;
        private final CarbonFit carbonFit = new CarbonFit(reference);
        private final List<Finding> findings = new ArrayList<>();

        Decision(ChargeInput input, Work work) {
            this.input = input;
            this.work = work;
        }

        /** Carbon and whatever else a narrow scan was taken of. */
        private Set<String> elements() {
            Set<String> elements = new TreeSet<>(Set.of("C"));
            for (ChargeInput.MeasuredLine line : input.lines())
                elements.add(line.line().element());
            return elements;
        }

        ChargeReference make() {
            return switch (settings.method()) {
                case BY_RECORD -> byRecord();
                case NONE -> none(true);
                case ADVENTITIOUS_CARBON -> adventitious(List.of());
                case SAMPLE_CARBON -> sampleCarbon();
                case INTERNAL_LINE -> internalLine();
                case FIXED -> fixed();
                case FERMI_EDGE, WORK_FUNCTION ->
                    failed(
                            settings.method(),
                            "The method " + settings.method().word() + " is not available for this spot.");
            };
        }

        private ChargeReference byRecord() {
            SpotCondition c = input.condition();
            boolean grounded = c.contact() == SpotCondition.Contact.GROUNDED;
            boolean conducts = c.conduction() == SpotCondition.Conduction.CONDUCTOR
                    || c.conduction() == SpotCondition.Conduction.SEMICONDUCTOR;
            if (grounded && conducts) return none(true);
            if (grounded && c.conduction() == SpotCondition.Conduction.UNKNOWN) return none(false);
            if (c.carbon() == SpotCondition.CarbonOrigin.OWN) {
                return failed(
                        ChargeMethod.SAMPLE_CARBON,
                        "The carbon is the sample's own, so adventitious carbon does not apply; state a reference in the"
                                + " treatment: sample-carbon or internal-line with its energy and the reason.");
            }
            List<String> doubts = new ArrayList<>();
            if (c.contact() == SpotCondition.Contact.UNKNOWN) {
                doubts.add("the electrical state is not declared");
            }
            if (grounded) doubts.add("the spot is declared grounded though the sample does not conduct");
            return adventitious(doubts);
        }

        private ChargeReference none(boolean certain) {
            Optional<MetalLine> metal = MetalLine.find(input.lines(), reference, settings.conductorToleranceEv(), work);
            StringBuilder sentence = new StringBuilder("Grounded conductor: no charge correction");
            boolean off = false;
            if (metal.isPresent()) {
                MetalLine m = metal.get();
                off = !m.agrees();
                sentence.append(String.format(
                        Locale.ROOT,
                        "; %s measured at %.2f eV, %.2f eV expected of the metal",
                        m.line(),
                        m.measuredEv(),
                        m.expectedEv()));
                if (off) {
                    findings.add(Finding.caution(
                                    "grounded-conductor-off",
                                    String.format(
                                            Locale.ROOT,
                                            "Declared a grounded conductor, yet %s lies %+.2f eV off its metal energy"
                                                    + " (limit %.2f eV): contact, calibration or an oxide layer?",
                                            m.line(),
                                            m.measuredEv() - m.expectedEv(),
                                            settings.conductorToleranceEv()))
                            .in(m.spectrum()));
                }
            } else {
                sentence.append("; no metal line was measured to check it");
            }
            sentence.append('.');
            if (!certain) sentence.append(" Whether the sample conducts is not declared.");
            return new ChargeReference(
                    ChargeMethod.NONE,
                    metal.map(m -> m.line().toString()).orElse(""),
                    metal.map(m -> OptionalDouble.of(m.expectedEv())).orElse(OptionalDouble.empty()),
                    metal.map(m -> OptionalDouble.of(m.measuredEv())).orElse(OptionalDouble.empty()),
                    OptionalDouble.of(0),
                    metal.map(MetalLine::measurementU).orElse(OptionalDouble.empty()),
                    OptionalDouble.empty(),
                    certain && !off ? ChargeVerdict.NOT_NEEDED : ChargeVerdict.DOUBTFUL,
                    sentence.toString(),
                    Optional.empty());
        }

        private ChargeReference adventitious(List<String> doubts) {
            if (input.carbon().isEmpty()) {
                return failed(ChargeMethod.ADVENTITIOUS_CARBON, "No C 1s narrow scan was measured.");
            }
            double value = settings.referenceEv().orElse(ADVENTITIOUS_EV);
            double u = settings.referenceUncertaintyEv().orElse(ADVENTITIOUS_U);
            Optional<ReferenceLineFit> fit =
                    carbonFit.hydrocarbon(input.carbon().get(), value - input.workingShiftEv(), elements(), work);
            String name = "adventitious carbon";
            return fit.map(f ->
                            referenced(ChargeMethod.ADVENTITIOUS_CARBON, name, f, value, OptionalDouble.of(u), doubts))
                    .orElseGet(() -> failed(
                            ChargeMethod.ADVENTITIOUS_CARBON, "The C 1s scan shows no line that could be fitted."));
        }

        private ChargeReference sampleCarbon() {
            if (input.carbon().isEmpty()) {
                return failed(ChargeMethod.SAMPLE_CARBON, "No C 1s narrow scan was measured.");
            }
            return strongest(
                    ChargeMethod.SAMPLE_CARBON,
                    "the sample's own carbon",
                    Line.parse("C 1s"),
                    input.carbon().get());
        }

        private ChargeReference internalLine() {
            Optional<Line> wanted = Line.find(settings.referenceLine());
            Optional<ChargeInput.MeasuredLine> measured = input.lines().stream()
                    .filter(l -> wanted.isPresent()
                            && l.line().whole().equals(wanted.get().whole()))
                    .findFirst();
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
            Optional<ReferenceLineFit> fit = carbonFit.strongest(line, scan, work);
            return fit.map(f -> referenced(method, name, f, value, settings.referenceUncertaintyEv(), List.of()))
                    .orElseGet(() -> failed(method, "The " + line + " scan shows no line that could be fitted."));
        }

        private ChargeReference fixed() {
            double shift = settings.shiftEv().orElseThrow();
            return new ChargeReference(
                    ChargeMethod.FIXED,
                    "",
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    OptionalDouble.of(shift),
                    OptionalDouble.empty(),
                    settings.referenceUncertaintyEv(),
                    ChargeVerdict.ACCEPTED,
                    String.format(Locale.ROOT, "A fixed shift of %+.2f eV is applied: %s", shift, settings.reason()),
                    Optional.empty());
        }

        private ChargeReference referenced(
                ChargeMethod method,
                String name,
                ReferenceLineFit fit,
                double value,
                OptionalDouble referenceU,
                List<String> knownDoubts) {
            ReferenceLineFit.Component line = fit.reference();
            double measured = line.position().value();
            OptionalDouble u = line.position().standardUncertainty();
            double width = line.fwhm().value();
            List<String> doubts = new ArrayList<>(knownDoubts);
            if (u.isEmpty() || u.getAsDouble() > settings.largestMeasurementUEv()) {
                String known =
                        u.isPresent() ? String.format(Locale.ROOT, "%.2f eV", u.getAsDouble()) : "no known bound";
                doubts.add(fit.line() + " is placed to " + known + " only");
                findings.add(Finding.caution(
                                "reference-line-weak",
                                String.format(
                                        Locale.ROOT,
                                        "The position of %s is known to %s only (limit %.2f eV).",
                                        fit.line(),
                                        known,
                                        settings.largestMeasurementUEv()))
                        .in(fit.spectrum()));
            }
            if (width > settings.widestReferenceFwhmEv()) {
                doubts.add(fit.line() + String.format(Locale.ROOT, " is %.2f eV wide", width));
                findings.add(Finding.caution(
                                "reference-line-broad",
                                String.format(
                                        Locale.ROOT,
                                        "The reference component of %s is %.2f eV wide (limit %.2f eV): two potentials?",
                                        fit.line(),
                                        width,
                                        settings.widestReferenceFwhmEv()))
                        .in(fit.spectrum()));
            }
            drift(method, value, measured, u).ifPresent(doubts::add);
            double shift = value - measured;
            String sentence = String.format(
                    Locale.ROOT,
                    "Referenced to %s: %s measured at %.2f eV is set to %.2f eV, a shift of %+.2f eV%s.%s%s",
                    name,
                    fit.line(),
                    measured,
                    value,
                    shift,
                    uncertainty(u, referenceU),
                    settings.reason().isBlank() ? "" : " Reason given: " + settings.reason() + ".",
                    doubts.isEmpty() ? "" : " Doubtful: " + String.join("; ", doubts) + ".");
            return new ChargeReference(
                    method,
                    fit.line(),
                    OptionalDouble.of(value),
                    OptionalDouble.of(measured),
                    OptionalDouble.of(shift),
                    u,
                    referenceU,
                    doubts.isEmpty() ? ChargeVerdict.ACCEPTED : ChargeVerdict.DOUBTFUL,
                    sentence,
                    Optional.of(fit));
        }

        /** First against last scan of the reference line. */
        private Optional<String> drift(ChargeMethod method, double value, double measured, OptionalDouble u) {
            if (method == ChargeMethod.INTERNAL_LINE || input.lastCarbon().isEmpty()) return Optional.empty();
            Optional<ReferenceLineFit> last = method == ChargeMethod.ADVENTITIOUS_CARBON
                    ? carbonFit.hydrocarbon(input.lastCarbon().get(), measured, elements(), work)
                    : carbonFit.strongest(Line.parse("C 1s"), input.lastCarbon().get(), work);
            if (last.isEmpty()) return Optional.empty();
            double change = last.get().reference().position().value() - measured;
            double combined = Math.hypot(
                    u.orElse(0),
                    last.get().reference().position().standardUncertainty().orElse(0));
            if (Math.abs(change) <= settings.largestDriftEv() || Math.abs(change) <= 3 * combined) {
                return Optional.empty();
            }
            findings.add(Finding.caution(
                            "surface-potential-drifted",
                            String.format(
                                    Locale.ROOT,
                                    "C 1s moved by %+.2f eV between its first and last scan (limit %.2f eV).",
                                    change,
                                    settings.largestDriftEv()))
                    .in(last.get().spectrum()));
            return Optional.of(String.format(Locale.ROOT, "C 1s moved by %+.2f eV during the run", change));
        }

        private ChargeReference failed(ChargeMethod method, String why) {
            findings.add(Finding.caution("charge-reference-failed", why + " Referenced energies are withheld."));
            return new ChargeReference(
                    method,
                    "",
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    ChargeVerdict.FAILED,
                    "No energy reference: " + why,
                    Optional.empty());
        }
    }

    private static String uncertainty(OptionalDouble measurement, OptionalDouble reference) {
        if (measurement.isEmpty() || reference.isEmpty()) return "";
        return String.format(
                Locale.ROOT,
                " (standard uncertainty %.2f eV: %.3f measured, %.2f reference)",
                Math.hypot(measurement.getAsDouble(), reference.getAsDouble()),
                measurement.getAsDouble(),
                reference.getAsDouble());
    }
}
