package spotline.run.findings;

import static spotline.run.findings.Limit.PRACTICE;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import spotline.analysis.identify.Feature;
import spotline.analysis.identify.Identification;
import spotline.core.Finding;
import spotline.core.Severity;
import spotline.run.LinkedSpectrum;
import spotline.run.RunView;
import spotline.run.SpotView;
import spotline.spectra.BindingScan;
import spotline.spectra.HeaderField;

/** Quality of the data: checks 9 to 18. */
final class DataRules {
    private static final Limit COUNT_RATE = Limit.own(
            "highestCountRatePerSecond",
            Double.NaN,
            "counts/s",
            "the laboratory's own check of linearity, ISO 21270 for the idea");
    private static final Limit PRESSURE = Limit.own("pressureRise", 3, "times", PRACTICE);
    private static final Limit FEATURE = Limit.own("strayPeakSignificance", 10, "sigma", PRACTICE);
    private static final String NO_SURVEY = "there is no survey";

    private DataRules() {}

    static List<Rule> rules() {
        return List.of(
                new Rule(
                        9,
                        "energy-calibration-overdue",
                        "Energy calibration overdue, or too much of its tolerance used",
                        Severity.CAUTION,
                        List.of(Limit.fixed("share of the tolerance", 0.7, "", "ISO 15472 for the idea")),
                        Set.of(
                                "energy-calibration-age",
                                "energy-calibration-later",
                                "energy-calibration-incomplete",
                                "energy-calibration-not-applied",
                                "energy-scale-outside",
                                "energy-scale-nearly-used",
                                "energy-scale-corrected"),
                        run -> java.util.Map.of(
                                "",
                                run.plan()
                                                .file()
                                                .instrument()
                                                .energyCalibration()
                                                .isPresent()
                                        ? RuleState.PASSED
                                        : RuleState.notChecked("no energy calibration is named"))),
                new Rule(
                        10,
                        "transmission-applied-twice",
                        "Transmission missing though the factors need it, or applied twice",
                        Severity.STOP,
                        List.of(),
                        Set.of("transmission-not-known", "transmission-not-used"),
                        Rule.everySpot(DataRules::transmissionTwice)),
                Rule.ofSpot(
                        11,
                        "counts-not-poisson",
                        "Counts that do not scatter as counts do",
                        Severity.CAUTION,
                        List.of(Scatter.SIGMAS, Scatter.ONE_SCAN_SIGMAS),
                        Scatter::check),
                Rule.ofSpot(
                        12,
                        "count-rate-too-high",
                        "Count rate above the linear range",
                        Severity.CAUTION,
                        List.of(COUNT_RATE),
                        DataRules::countRate),
                Rule.ofSpot(
                        13,
                        "photon-energy-inconsistent",
                        "Photon energy or energy axis that the lines contradict",
                        Severity.STOP,
                        List.of(PhotonEnergy.REACH, PhotonEnergy.PEAK, PhotonEnergy.ELEMENT),
                        PhotonEnergy::check),
                Rule.elsewhere(
                        14,
                        "scan-too-narrow",
                        "Window too narrow for background or peak",
                        Severity.CAUTION,
                        List.of(Limit.fixed("margin beside the outermost component", 2, "FWHM", PRACTICE)),
                        Set.of(
                                "window-outside-scan",
                                "line-outside-scan",
                                "scan-too-short",
                                "background-window",
                                "background-channels",
                                "background-endpoints"),
                        Rule.needs(
                                s -> s.result().spectra().stream().anyMatch(l -> !l.survey()),
                                "there is no narrow scan")),
                Rule.ofSpot(
                        15,
                        "end-on-structure",
                        "A background that ends on another line",
                        Severity.CAUTION,
                        List.of(WindowEnds.NEAR, WindowEnds.SHARE),
                        WindowEnds::check),
                Rule.ofSpot(
                        16,
                        "degradation",
                        "A line that changed while the spot was measured",
                        Severity.STOP,
                        List.of(Degradation.CAUTION, Degradation.STOP, Degradation.SIGMAS),
                        Degradation::check),
                Rule.ofSpot(
                        17,
                        "pressure-rise",
                        "Pressure that rose while the spot was measured",
                        Severity.NOTE,
                        List.of(PRESSURE),
                        DataRules::pressure),
                new Rule(
                        18,
                        "unassigned-peak",
                        "A peak of the survey that no element explains",
                        Severity.CAUTION,
                        List.of(FEATURE),
                        Set.of(),
                        Rule.everySpot(DataRules::stray)));
    }

    private static RuleState transmissionTwice(RunView run, SpotView spot, Limits limits) {
        List<Finding> findings = new ArrayList<>();
        for (LinkedSpectrum s : spot.result().spectra()) {
            if (!s.transmission().corrects()) continue;
            for (HeaderField field : s.header()) {
                String text = (field.name() + " " + field.value()).toLowerCase(Locale.ROOT);
                boolean corrected = text.contains("transmission")
                        && (text.contains("corrected") || text.contains("applied") || text.contains("divided"));
                boolean denied = text.contains("not ") || text.contains("uncorrected") || text.contains("no ");
                if (!corrected || denied) continue;
                findings.add(Finding.stop(
                                "transmission-applied-twice",
                                "The file says that the transmission is already applied (\""
                                        + (field.name() + " " + field.value()).strip()
                                        + "\"), and the intensities were divided by it again ("
                                        + s.transmission().describe() + ").")
                        .in(s.label()));
                break;
            }
        }
        return RuleState.of(findings);
    }

    private static RuleState countRate(RunView run, SpotView spot, Limits limits) {
        OptionalDouble limit = limits.stated(COUNT_RATE);
        if (limit.isEmpty()) return RuleState.notChecked("no linear range of the detector is stated");
        List<Finding> findings = new ArrayList<>();
        boolean looked = false;
        for (LinkedSpectrum s : spot.result().spectra()) {
            BindingScan scan = s.scan();
            if (!scan.countsKnown() || scan.secondsPerChannel().isEmpty()) continue;
            looked = true;
            double most = 0;
            for (int i = 0; i < scan.channels(); i++) most = Math.max(most, scan.counts(i));
            double rate = most / scan.secondsPerChannel().getAsDouble();
            if (rate <= limit.getAsDouble()) continue;
            findings.add(Finding.caution(
                            "count-rate-too-high",
                            Rule.words(
                                    "%s peaks at %.0f counts/s, above the linear limit of %.0f: its area reads low.",
                                    s.region(), rate, limit.getAsDouble()))
                    .in(s.label()));
        }
        return looked ? RuleState.of(findings) : RuleState.notChecked("counts or collection time are unknown");
    }

    private static RuleState pressure(RunView run, SpotView spot, Limits limits) {
        List<Double> pressures = new ArrayList<>();
        for (LinkedSpectrum s : spot.result().spectra()) {
            for (HeaderField field : s.header()) {
                if (!field.name().toLowerCase(Locale.ROOT).contains("pressure")) continue;
                number(field.value()).ifPresent(pressures::add);
                break;
            }
        }
        if (pressures.size() < 2) return RuleState.notChecked("no pressures are recorded");
        double first = pressures.get(0);
        double most = pressures.stream().mapToDouble(p -> p).max().orElse(first);
        if (!(first > 0) || most < limits.of(PRESSURE) * first) return RuleState.PASSED;
        return RuleState.fired(Finding.note(
                "pressure-rise",
                Rule.words(
                        "The pressure rose by a factor of %.1f during spot %s (limit %.1f): outgassing may have coated"
                                + " other spots.",
                        most / first, spot.id(), limits.of(PRESSURE))));
    }

    private static OptionalDouble number(String text) {
        try {
            return OptionalDouble.of(Double.parseDouble(text.strip().split("\\s+")[0]));
        } catch (NumberFormatException e) {
            return OptionalDouble.empty();
        }
    }

    /** Peaks that an element explains if another source excites it. */
    private static RuleState stray(RunView run, SpotView spot, Limits limits) {
        if (spot.result().identification().isEmpty()) return RuleState.notChecked(NO_SURVEY);
        List<Feature> features = spot.result()
                .identification()
                .flatMap(Identification::detail)
                .map(Identification.Detail::features)
                .orElse(List.of());
        List<Finding> findings = new ArrayList<>();
        for (Feature f : features) {
            Optional<String> stray = f.explanations().stream()
                    .filter(e -> e.contains("excited by stray"))
                    .findFirst();
            if (stray.isEmpty() || f.peak().significance() < limits.of(FEATURE)) continue;
            findings.add(Finding.caution(
                    "unassigned-peak",
                    Rule.words(
                            "A peak at %.1f eV as measured (%.0f sigma, limit %.0f) matches %s.",
                            f.peak().energyEv(), f.peak().significance(), limits.of(FEATURE), stray.get())));
        }
        return RuleState.of(findings);
    }
}
