package spotline.run.findings;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.random.RandomGenerator;
import org.jspecify.annotations.Nullable;
import spotline.analysis.background.Background;
import spotline.analysis.background.Linear;
import spotline.analysis.charge.ChargeEvidence;
import spotline.analysis.charge.ChargeMethod;
import spotline.analysis.charge.ChargeReference;
import spotline.analysis.charge.ChargeVerdict;
import spotline.analysis.charge.Drift;
import spotline.analysis.charge.FermiEdge;
import spotline.analysis.charge.ReferenceLineFit;
import spotline.analysis.identify.ElementSeen;
import spotline.analysis.identify.Feature;
import spotline.analysis.identify.HeaderDoubt;
import spotline.analysis.identify.Identification;
import spotline.analysis.identify.LineSeen;
import spotline.analysis.identify.SurveyModel;
import spotline.analysis.identify.SurveyPeak;
import spotline.analysis.identify.Verdict;
import spotline.analysis.intensity.Intensity;
import spotline.analysis.peakfit.BackgroundModel;
import spotline.analysis.peakfit.ComponentModel;
import spotline.analysis.peakfit.FitModel;
import spotline.analysis.peakfit.ParameterRule;
import spotline.analysis.peakfit.PeakFit;
import spotline.analysis.quantify.Basis;
import spotline.analysis.quantify.Quantified;
import spotline.analysis.quantify.StateShare;
import spotline.core.Estimate;
import spotline.core.Provenance;
import spotline.core.Work;
import spotline.holder.SpectrumRole;
import spotline.numerics.random.PoissonSampler;
import spotline.numerics.random.RandomStreams;
import spotline.numerics.shape.LineShape;
import spotline.reference.Line;
import spotline.reference.ReferenceData;
import spotline.run.FittedPeak;
import spotline.run.LineFit;
import spotline.run.LinkedSpectrum;
import spotline.run.MeasuredIntensity;
import spotline.run.SpotResult;
import spotline.spectra.BindingScan;
import spotline.spectra.HeaderField;
import spotline.spectra.Transmission;
import spotline.spectra.Window;

/** A spot's result being made up: what a test changes before it is looked at. */
final class Draft {
    static final double PHOTON = 1486.6;
    private static final ReferenceData REFERENCE = ReferenceData.shipped();

    final String id;
    double shiftEv;
    final Map<String, Double> percent = new LinkedHashMap<>();
    final Set<String> survey = new LinkedHashSet<>();
    final List<ElementSeen> possible = new ArrayList<>();
    final Map<String, Double> surveyEv = new LinkedHashMap<>();
    final List<Feature> features = new ArrayList<>();
    final List<HeaderDoubt> doubts = new ArrayList<>();
    final List<LinkedSpectrum> spectra = new ArrayList<>();
    final List<MeasuredIntensity> intensities = new ArrayList<>();
    final List<LineFit> fits = new ArrayList<>();
    final List<FittedPeak> peaks = new ArrayList<>();
    final List<StateShare> states = new ArrayList<>();
    final List<ChargeEvidence.UnmovedLine> unmoved = new ArrayList<>();
    final List<ChargeEvidence.AugerParameterSeen> parameters = new ArrayList<>();
    Optional<FermiEdge> edge = Optional.empty();
    ChargeMethod method = ChargeMethod.ADVENTITIOUS_CARBON;

    Draft(String id, double shiftEv) {
        this.id = id;
        this.shiftEv = shiftEv;
    }

    /** A Gaussian line 1.2 eV wide on a flat background, Poisson counts, 0.1 eV apart, 10 s a channel. */
    static BindingScan scan(String label, double at, double height, double flat) {
        double[] expected = new double[180];
        double[] energy = new double[expected.length];
        for (int i = 0; i < energy.length; i++) {
            energy[i] = Math.rint(10 * at) / 10 - 9 + 0.1 * i;
            expected[i] = flat + height * bell(energy[i] - at);
        }
        RandomGenerator random = RandomStreams.stream(1, "draft", label);
        return counted(label, energy, PoissonSampler.sample(random, expected));
    }

    /** Two Gaussian lines 1.2 eV wide: the second so much higher in energy and of so much of the first's height. */
    static BindingScan pair(String label, double at, double apart, double ratio) {
        double[] expected = new double[180];
        double[] energy = new double[expected.length];
        for (int i = 0; i < energy.length; i++) {
            energy[i] = Math.rint(10 * at) / 10 - 6 + 0.1 * i;
            expected[i] = 2000 + 50000 * (bell(energy[i] - at) + ratio * bell(energy[i] - at - apart));
        }
        RandomGenerator random = RandomStreams.stream(2, "draft", label);
        return counted(label, energy, PoissonSampler.sample(random, expected));
    }

    private static double bell(double off) {
        return Math.exp(-4 * Math.log(2) * Math.pow(off / 1.2, 2));
    }

    static BindingScan counted(String label, double[] energy, double[] counts) {
        return new BindingScan(label, PHOTON, energy, counts, true, OptionalDouble.of(10), OptionalDouble.of(20));
    }

    LinkedSpectrum spectrum(String region, SpectrumRole role, BindingScan scan, HeaderField... header) {
        return new LinkedSpectrum(
                scan.label(),
                new Provenance("made", "00", 1, 1, "made"),
                region,
                false,
                role,
                scan,
                new Transmission.PowerLaw(-0.5),
                Optional.empty(),
                List.of(header));
    }

    String label(String region, SpectrumRole role) {
        return id + " " + region + " " + role;
    }

    /** A narrow scan of a line whose area is that of so many at.%, and its intensity. */
    void measure(String line, double referencedEv, double percents) {
        percent.put(Line.parse(line).element(), percents);
        add(line, referencedEv, percents, SpectrumRole.MAIN);
    }

    void add(String line, double referencedEv, double percents, SpectrumRole role) {
        double at = referencedEv - shiftEv;
        double sigma = REFERENCE.crossSection(Line.parse(line), PHOTON).orElseThrow();
        double kinetic = (PHOTON - at) / 1000;
        double height = 400 * percents * sigma * Math.pow(kinetic, 0.75) * Math.pow(kinetic, -0.5);
        BindingScan scan = scan(label(line, role), at, height, 2000);
        spectra.add(spectrum(line, role, scan, new HeaderField("chamber pressure", "1e-9")));
        if (role != SpectrumRole.MAIN) return;
        Window window = new Window(at - 3, at + 3);
        intensities.add(intensity(scan, line, at, window));
    }

    static MeasuredIntensity intensity(BindingScan scan, String line, double at, Window window) {
        Background straight = Linear.of(5);
        var subtraction = straight.subtract(scan, window, scan.label(), Work.UNWATCHED)
                .result()
                .orElseThrow();
        return new MeasuredIntensity(
                new Intensity(
                        Line.parse(line),
                        scan.label(),
                        at,
                        1.2,
                        window,
                        "linear",
                        subtraction.netArea(),
                        true,
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        subtraction),
                Basis.NARROW,
                "power law");
    }

    /** Replaces what was measured of a line. */
    void measureAgain(String line, double referencedEv, double percents) {
        String label = label(line, SpectrumRole.MAIN);
        spectra.removeIf(s -> s.label().equals(label));
        intensities.removeIf(i -> i.intensity().spectrum().equals(label));
        measure(line, referencedEv, percents);
    }

    /** Fits Gaussians to a line's narrow scan, as an analyst's own model. */
    void fit(String line, Map<String, Double> referencedEv, LineShape shape) {
        BindingScan scan = spectra.stream()
                .filter(s -> s.label().equals(label(line, SpectrumRole.MAIN)))
                .findFirst()
                .orElseThrow()
                .scan();
        fit(line, scan, referencedEv, shape);
    }

    void fit(String line, BindingScan scan, Map<String, Double> referencedEv, LineShape shape) {
        List<ComponentModel> components = new ArrayList<>();
        referencedEv.forEach((name, at) -> {
            ComponentModel c = ComponentModel.of(name, shape)
                    .with("position", ParameterRule.Free.from(at - shiftEv, at - shiftEv - 0.5, at - shiftEv + 0.5));
            for (String parameter : shape.parameterNames()) {
                if (parameter.equals("gaussianFwhm") || parameter.equals("fwhm")) {
                    c = c.with(parameter, ParameterRule.Free.from(1.2, 0.4, 3));
                } else if (parameter.equals("lorentzianFwhm")) {
                    c = c.with(parameter, new ParameterRule.Fixed(0.1));
                } else if (parameter.equals("asymmetry")) {
                    c = c.with(parameter, new ParameterRule.Fixed(0.02));
                }
            }
            components.add(c);
        });
        FitModel model = new FitModel(scan.range(), BackgroundModel.fittedAlong(Linear.of(5)), components, List.of());
        var result = new PeakFit(REFERENCE)
                .fit(scan, model, scan.label(), Work.UNWATCHED)
                .result()
                .orElseThrow();
        fits.add(new LineFit(scan.label(), Line.parse(line), false, result));
    }

    SpotResult result(String sample) {
        List<Quantified> rows = new ArrayList<>();
        percent.forEach((element, x) -> rows.add(new Quantified(
                element,
                element,
                "made",
                Basis.NARROW,
                Optional.of(Estimate.of(x, "counting/" + element, 0.2)),
                OptionalDouble.of(0.2),
                false,
                OptionalDouble.empty())));
        return new SpotResult(
                id,
                sample,
                "made",
                spectra,
                Optional.of(identification()),
                charge(),
                intensities,
                peaks,
                rows,
                List.of(new SpotResult.Variant("survey", rows)),
                List.of(),
                fits,
                states,
                List.of(),
                Optional.empty());
    }

    private Identification identification() {
        List<ElementSeen> seen = new ArrayList<>(possible);
        for (String element : survey) {
            List<LineSeen> lines = surveyEv.containsKey(element)
                    ? List.of(new LineSeen(
                            REFERENCE
                                    .mainLine(Line.parse(element + " 1s").atom(), PHOTON)
                                    .orElseThrow()
                                    .toString(),
                            surveyEv.get(element),
                            20,
                            1))
                    : List.of();
            seen.add(new ElementSeen(element, Verdict.PRESENT, lines, 20));
        }
        List<SurveyPeak> unassigned = features.stream().map(Feature::peak).toList();
        return new Identification(
                seen,
                shiftEv,
                unassigned,
                Optional.of(new Identification.Detail(
                        shiftEv - 0.3,
                        shiftEv + 0.3,
                        "made",
                        2,
                        features,
                        doubts,
                        List.of(),
                        List.of(),
                        noModel(),
                        OptionalDouble.empty())));
    }

    /** No rule looks at the model's curves. */
    @SuppressWarnings({"NullAway", "TypeParameterUnusedInFormals"})
    private static SurveyModel noModel() {
        @Nullable SurveyModel none = null;
        return none;
    }

    private ChargeReference charge() {
        Estimate at = Estimate.of(284.8 - shiftEv, "fit", 0.01);
        ReferenceLineFit.Curve curve = new ReferenceLineFit.Curve(new double[] {1, 2, 3});
        ReferenceLineFit fit = new ReferenceLineFit(
                "C 1s",
                id + " C 1s",
                curve,
                curve,
                curve,
                List.of(new ReferenceLineFit.Component(
                        "hydrocarbon", "gaussian", at, Estimate.exact(1.2), Estimate.exact(1000), curve)),
                1);
        ChargeEvidence.Candidate other = new ChargeEvidence.Candidate(
                ChargeMethod.INTERNAL_LINE,
                "O 1s",
                "oxide",
                id + " O 1s",
                at,
                531,
                0.2,
                shiftEv,
                OptionalDouble.of(0.2),
                true,
                "made");
        boolean shifted = method == ChargeMethod.ADVENTITIOUS_CARBON;
        return new ChargeReference(
                method,
                shifted ? "C 1s" : "",
                shifted ? OptionalDouble.of(284.8) : OptionalDouble.empty(),
                shifted ? OptionalDouble.of(284.8 - shiftEv) : OptionalDouble.empty(),
                OptionalDouble.of(shiftEv),
                OptionalDouble.of(0.01),
                OptionalDouble.of(0.2),
                ChargeVerdict.ACCEPTED,
                "made",
                shifted ? Optional.of(fit) : Optional.empty(),
                new ChargeEvidence(
                        List.of(),
                        Optional.of(new Drift(
                                "C 1s",
                                List.of(
                                        new Drift.Scan("first", Optional.empty(), at),
                                        new Drift.Scan("last", Optional.empty(), at)),
                                Optional.empty())),
                        List.of(),
                        List.of(other),
                        parameters,
                        unmoved,
                        edge,
                        List.of(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        List.of()));
    }
}
