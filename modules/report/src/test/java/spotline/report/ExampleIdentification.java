package spotline.report;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.analysis.identify.ElementSeen;
import spotline.analysis.identify.Evidence;
import spotline.analysis.identify.Feature;
import spotline.analysis.identify.HeaderDoubt;
import spotline.analysis.identify.Identification;
import spotline.analysis.identify.LineSeen;
import spotline.analysis.identify.QuickShare;
import spotline.analysis.identify.ScanProposal;
import spotline.analysis.identify.SurveyModel;
import spotline.analysis.identify.SurveyPeak;
import spotline.analysis.identify.Verdict;
import spotline.core.Estimate;
import spotline.spectra.Window;

/** An invented identification with evidence of every kind. */
final class ExampleIdentification {
    private static final SurveyPeak STRAY = new SurveyPeak(534.8, 12, 2000);

    private ExampleIdentification() {}

    static Identification found() {
        ElementSeen fluorine = new ElementSeen(
                "F",
                Verdict.PRESENT,
                List.of(
                        new LineSeen("F 1s", 691.6, 210.4, 1),
                        new LineSeen("F KL23L23", 835.04, 80, Double.NaN),
                        new LineSeen("F 2s", 34, 60, 1.1)),
                210.4);
        ElementSeen carbon =
                new ElementSeen("C", Verdict.PRESENT, List.of(new LineSeen("C 1s", 294.46, 90.25, 1)), 90.25);
        Evidence doubtful = new Evidence(
                44.5,
                List.of(new Evidence.LineMissing("Cl 2s", 271.2, 5.25, 0.4)),
                List.of("C 1s under Cl 2p"),
                List.of(new Evidence.Alternative("B", 31.5), new Evidence.Alternative("energy loss", Double.NaN)),
                List.of("One line alone."));
        ElementSeen chlorine =
                new ElementSeen("Cl", Verdict.POSSIBLE, List.of(new LineSeen("Cl 2p3/2", 289.5, 11, 1)), 11, doubtful);
        return new Identification(List.of(fluorine, carbon, chlorine), -2.5, List.of(STRAY), Optional.of(detail()));
    }

    private static Identification.Detail detail() {
        return new Identification.Detail(
                -2.8,
                -2.2,
                "Hydrocarbon C 1s stands at 287.30 eV.",
                1.9,
                List.of(new Feature(STRAY, List.of("X-ray satellite K-alpha3 of O 1s"))),
                List.of(new HeaderDoubt(
                        HeaderDoubt.Kind.AXIS_REVERSED,
                        OptionalDouble.empty(),
                        0.4,
                        0.8,
                        List.of("O", "C"),
                        "Elements explain more with the axis running the other way.")),
                List.of(new QuickShare("F", "F 1s", Estimate.of(61.5, "survey model F", 2.5))),
                List.of(new ScanProposal("Cl", "Cl 2p", new Window(281.5, 301.5), 0.03, OptionalDouble.of(84))),
                new SurveyModel(
                        new double[] {0, 1}, new double[] {5, 6}, new double[] {4, 4}, new double[] {2, 2}, Map.of()),
                OptionalDouble.of(1.25));
    }
}
