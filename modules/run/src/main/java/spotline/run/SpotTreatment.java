package spotline.run;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Collectors;
import spotline.analysis.charge.ChargeInput;
import spotline.analysis.charge.ChargeReference;
import spotline.analysis.charge.ChargeReferencing;
import spotline.analysis.charge.SpotCondition;
import spotline.analysis.identify.ElementSeen;
import spotline.analysis.identify.Identification;
import spotline.analysis.identify.IdentifySettings;
import spotline.analysis.identify.SurveyIdentification;
import spotline.analysis.identify.Verdict;
import spotline.analysis.quantify.Basis;
import spotline.analysis.quantify.Quantified;
import spotline.core.Finding;
import spotline.core.Outcome;
import spotline.core.Severity;
import spotline.core.Work;
import spotline.holder.CarbonOrigin;
import spotline.holder.Conductivity;
import spotline.holder.Sample;
import spotline.holder.SpectrumRole;
import spotline.holder.Spot;
import spotline.reference.Elements;
import spotline.reference.Line;
import spotline.reference.ReferenceData;
import spotline.run.SpotIntensities.Assigned;

/**
 * Treats one spot: identify, reference the charge, take the intensities, quantify. Pure: the same input gives the same
 * result in any thread.
 *
 * <p>Errors: none; what cannot be done is a finding, and the rest goes on.
 */
public final class SpotTreatment {
    private final ReferenceData reference;
    private final Memo memo;

    public SpotTreatment(ReferenceData reference) {
        this(reference, Memo.NONE);
    }

    /** @param memo of steps that ran before */
    public SpotTreatment(ReferenceData reference, Memo memo) {
        this.reference = reference;
        this.memo = memo;
    }

    public SpotResult treat(SpotInput given, Work work) {
        return memo.of(Memo.Key.of("spot", given), () -> treated(given, work));
    }

    private SpotResult treated(SpotInput given, Work work) {
        PreparationSettings prepare = given.treatment().prepare();
        List<LinkedSpectrum> spectra = blanksAsMain(given.spectra());
        Preparation.Prepared prepared =
                memo.of(Memo.Key.of("prepare", prepare, spectra), () -> new Preparation(prepare).prepared(spectra));
        SpotInput input = given.withSpectra(prepared.spectra());
        Spot spot = input.spot();
        List<Finding> findings = new ArrayList<>(input.findings());
        findings.addAll(prepared.findings());
        SortedSet<String> declared = declared(spot);
        SpotCondition condition = condition(spot);
        Optional<LinkedSpectrum> survey = input.spectra().stream()
                .filter(s -> s.survey() && quantifiable(s.role()))
                .findFirst();
        Optional<Identification> identification = survey.map(s -> identify(s, input, declared, condition, work));
        if (survey.isEmpty() && !input.spectra().isEmpty()) {
            findings.add(Finding.note(
                    "no-survey", "There is no survey: elements beyond the narrow scans were not checked."));
        }
        double workingShift = identification
                .map(Identification::shiftEv)
                .orElseGet(() -> new WorkingShift(reference, input.treatment()).of(input.spectra(), condition));
        SortedSet<String> elements = new TreeSet<>(declared);
        identification.ifPresent(i -> i.elements().forEach(e -> elements.add(e.element())));
        SortedSet<String> unseen = unseen(declared, identification);
        LineAssignment lines = new LineAssignment(
                reference,
                elements,
                unseen,
                input.treatment().quantify().doublets(),
                input.treatment().identify().toleranceEv());
        List<Assigned> narrow = assign(input, lines, workingShift, findings);
        Set<String> planned = narrow.stream().map(a -> a.line().element()).collect(Collectors.toSet());
        work.check();
        ChargeInput chargeInput = chargeInput(input, narrow, survey, identification, condition, workingShift);
        Outcome<ChargeReference> decided = memo.of(
                Memo.Key.of(ChargeReferencing.STEP, input.treatment().charge(), chargeInput),
                () -> new ChargeReferencing(reference, input.treatment().charge()).decide(chargeInput, work));
        findings.addAll(decided.allFindings());
        ChargeReference charge = decided.result().orElseThrow();
        double shift = charge.shiftEv().orElse(workingShift);
        work.check();
        SpotIntensities taking = new SpotIntensities(
                reference, memo, spot.id(), lines, shift, sure(declared, identification), input.fallbackLines());
        List<SpotComposition.Taken> narrowTaken =
                taking.narrow(firstOfEachLine(narrow), input.treatment().narrow(), input.treatment()::line, work);
        List<SpotComposition.Taken> surveyTaken = List.of();
        if (survey.isPresent() && identification.isPresent()) {
            List<Line> wanted = surveyLines(identification.get(), narrowTaken, declared, lines, survey.get());
            surveyTaken = taking.survey(survey.get(), wanted, input.treatment().survey(), work);
        }
        findings.addAll(taking.findings());
        List<MeasuredIntensity> intensities = new ArrayList<>();
        narrowTaken.forEach(t -> intensities.add(measured(t, Basis.NARROW)));
        surveyTaken.forEach(t -> intensities.add(measured(t, Basis.SURVEY)));
        SpotQuantification quantification =
                SpotQuantification.of(reference, input, shift, narrowTaken, surveyTaken, declared, unseen);
        List<Quantified> rows = quantification.rows();
        List<SpotResult.Variant> variants = quantification.variants();
        findings.addAll(quantification.findings());
        work.check();
        SpotFits fits = SpotFits.of(reference, memo, input, charge, narrowTaken, sure(declared, identification), work);
        findings.addAll(fits.findings());
        SpotChecks checks = new SpotChecks(input.treatment(), declared);
        findings.addAll(checks.elements(identification, rows, survey.isPresent()));
        findings.addAll(checks.surveyAgainstNarrow(rows, variants));
        findings.addAll(checks.unweighted(input.spectra()));
        if (withheld(findings)) {
            rows = rows.stream().map(Quantified::withheld).toList();
            variants = variants.stream()
                    .map(v -> new SpotResult.Variant(
                            v.name(),
                            v.rows().stream().map(Quantified::withheld).toList()))
                    .toList();
        }
        String sample = spot.sampleName();
        List<FittedPeak> ofReference = peaks(charge);
        return new SpotResult(
                spot.id(),
                sample,
                spot.mount().electricalState().word(),
                input.spectra(),
                identification.map(i -> i.unplanned(planned)),
                charge,
                intensities,
                fits.peaks(charge, ofReference),
                rows,
                variants,
                findings.stream().map(f -> f.at(spot.id(), sample)).distinct().toList(),
                fits.fits(),
                SpotQuantification.states(fits.fits(), ofReference, rows),
                SpotQuantification.derived(input.treatment().quantify().derived(), rows),
                Optional.of(quantification.factors()));
    }

    /** A stop on a spectrum or on the comparability of lines leaves no at.% that could be defended. */
    private static boolean withheld(List<Finding> findings) {
        return findings.stream().anyMatch(f -> f.severity() == Severity.STOP);
    }

    private static SortedSet<String> declared(Spot spot) {
        SortedSet<String> symbols = new TreeSet<>();
        for (String symbol : spot.sample().map(Sample::expectedElements).orElse(List.of())) {
            if (Elements.bySymbol(symbol).filter(e -> e.z() > 2).isPresent()) symbols.add(symbol);
        }
        return symbols;
    }

    private static SpotCondition condition(Spot spot) {
        Conductivity conductivity = spot.sample().map(Sample::conductivity).orElse(Conductivity.UNKNOWN);
        CarbonOrigin carbon = spot.sample().map(Sample::carbon).orElse(CarbonOrigin.UNKNOWN);
        return new SpotCondition(
                SpotCondition.Conduction.valueOf(conductivity.name()),
                SpotCondition.Contact.valueOf(spot.mount().electricalState().name()),
                SpotCondition.CarbonOrigin.valueOf(carbon.name()));
    }

    /** A blank is quantified where it is all there is at its spot. */
    private static List<LinkedSpectrum> blanksAsMain(List<LinkedSpectrum> spectra) {
        boolean blank = !spectra.isEmpty() && spectra.stream().allMatch(s -> s.role() == SpectrumRole.BLANK);
        return blank ? spectra.stream().map(s -> s.in(SpectrumRole.MAIN)).toList() : spectra;
    }

    private static boolean quantifiable(SpectrumRole role) {
        return role == SpectrumRole.MAIN || role == SpectrumRole.UNKNOWN;
    }

    private Identification identify(
            LinkedSpectrum survey, SpotInput input, SortedSet<String> declared, SpotCondition condition, Work work) {
        boolean grounded = condition.contact() == SpotCondition.Contact.GROUNDED
                && condition.conduction() == SpotCondition.Conduction.CONDUCTOR;
        OptionalDouble known = grounded ? OptionalDouble.of(0) : OptionalDouble.empty();
        IdentifySettings settings = input.treatment().identify();
        Memo.Key key = Memo.Key.of(
                "identify",
                settings,
                survey.scan(),
                new Memo.Same(survey.transmission()),
                List.copyOf(declared),
                known,
                input.monochromated());
        return memo.of(
                key,
                () -> new SurveyIdentification(reference, settings)
                        .identify(survey.scan(), survey.transmission(), declared, known, input.monochromated(), work));
    }

    private static List<Assigned> assign(SpotInput input, LineAssignment lines, double shift, List<Finding> findings) {
        List<Assigned> assigned = new ArrayList<>();
        for (LinkedSpectrum s : input.spectra()) {
            if (s.survey()) continue;
            Optional<Line> line = lines.lineOf(s, shift);
            if (line.isPresent()) {
                assigned.add(new Assigned(s, line.get()));
            } else {
                findings.add(Finding.note(
                                "narrow-scan-unassigned",
                                "The label \"" + s.region()
                                        + "\" names no line and no single known element has its main"
                                        + " line inside: the scan was not quantified.")
                        .in(s.label()));
            }
        }
        return assigned;
    }

    private static ChargeInput chargeInput(
            SpotInput input,
            List<Assigned> narrow,
            Optional<LinkedSpectrum> survey,
            Optional<Identification> identification,
            SpotCondition condition,
            double workingShift) {
        SortedSet<String> elements = declared(input.spot());
        identification.ifPresent(i -> i.elements().stream()
                .filter(e -> e.verdict() == Verdict.PRESENT)
                .forEach(e -> elements.add(e.element())));
        List<LinkedSpectrum> assigned = narrow.stream().map(Assigned::spectrum).toList();
        return new ChargeInput(
                condition,
                narrow.stream()
                        .filter(a -> a.spectrum().role() != SpectrumRole.BLANK)
                        .map(a -> new ChargeInput.MeasuredLine(
                                a.line(), a.spectrum().scan(), a.spectrum().time()))
                        .toList(),
                input.spectra().stream()
                        .filter(s -> !s.survey() && quantifiable(s.role()) && !assigned.contains(s))
                        .map(s -> new ChargeInput.OtherScan(s.region(), s.scan()))
                        .toList(),
                survey.map(LinkedSpectrum::scan),
                elements,
                sputtered(input.spectra()),
                input.monochromated(),
                workingShift);
    }

    /** Whether etching came before the carbon that would be the reference. */
    private static boolean sputtered(List<LinkedSpectrum> spectra) {
        for (LinkedSpectrum s : spectra) {
            if (s.role() == SpectrumRole.ETCH) return true;
            if (!s.survey() && quantifiable(s.role())) return false;
        }
        return false;
    }

    /** The earliest scan of a line is the one to quantify; later ones only test drift and damage. */
    private List<Assigned> firstOfEachLine(List<Assigned> narrow) {
        Map<Line, Assigned> first = new LinkedHashMap<>();
        for (Assigned a : narrow) {
            if (quantifiable(a.spectrum().role())) first.putIfAbsent(a.line(), a);
        }
        List<Assigned> main = new ArrayList<>();
        List<Assigned> further = new ArrayList<>();
        for (Assigned a : first.values()) {
            boolean isMain = reference
                    .mainLine(a.line().atom(), a.spectrum().scan().photonEnergyEv())
                    .filter(a.line()::equals)
                    .isPresent();
            (isMain ? main : further).add(a);
        }
        main.addAll(further);
        return main;
    }

    private static MeasuredIntensity measured(SpotComposition.Taken taken, Basis basis) {
        return new MeasuredIntensity(
                taken.intensity(), basis, taken.spectrum().transmission().describe());
    }

    /** Declared elements that the survey does not show. */
    private static SortedSet<String> unseen(SortedSet<String> declared, Optional<Identification> identification) {
        SortedSet<String> unseen = new TreeSet<>();
        identification.ifPresent(i ->
                declared.stream().filter(symbol -> i.element(symbol).isEmpty()).forEach(unseen::add));
        return unseen;
    }

    /** What may be taken to lie in a window: a declaration is a prior, and the survey overrules it. */
    private static SortedSet<String> sure(SortedSet<String> declared, Optional<Identification> identification) {
        SortedSet<String> sure = new TreeSet<>(declared);
        sure.removeAll(unseen(declared, identification));
        identification.ifPresent(i -> i.elements().stream()
                .filter(e -> e.verdict() == Verdict.PRESENT)
                .forEach(e -> sure.add(e.element())));
        return sure;
    }

    /**
     * Main lines of the elements present, lines measured narrow too, so that the two can be compared, and main lines of what
     * is declared, so that its absence has a limit.
     */
    private static List<Line> surveyLines(
            Identification identification,
            List<SpotComposition.Taken> narrow,
            SortedSet<String> declared,
            LineAssignment lines,
            LinkedSpectrum survey) {
        Map<String, Line> chosen = new LinkedHashMap<>();
        for (SpotComposition.Taken t : narrow) {
            chosen.putIfAbsent(
                    t.intensity().line().element(), t.intensity().line().whole());
        }
        for (ElementSeen e : identification.elements()) {
            if (e.verdict() != Verdict.PRESENT) continue;
            lines.main(e.element(), survey.scan().photonEnergyEv())
                    .ifPresent(line -> chosen.putIfAbsent(e.element(), line));
        }
        for (String symbol : declared) {
            lines.main(symbol, survey.scan().photonEnergyEv()).ifPresent(line -> chosen.putIfAbsent(symbol, line));
        }
        return List.copyOf(chosen.values());
    }

    private static List<FittedPeak> peaks(ChargeReference charge) {
        return charge.fit()
                .map(fit -> fit.components().stream()
                        .map(c -> new FittedPeak(
                                fit.spectrum(),
                                fit.line(),
                                c.name(),
                                c.shape(),
                                c.position(),
                                charge.referenced(c.position().value()),
                                c.fwhm(),
                                c.area(),
                                fit.reducedChiSquare()))
                        .toList())
                .orElse(List.of());
    }
}
