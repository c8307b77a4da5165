package spotline.report;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.analysis.charge.ChargeEvidence;
import spotline.analysis.charge.ChargeEvidence.AugerParameterSeen;
import spotline.analysis.charge.ChargeEvidence.Candidate;
import spotline.analysis.charge.ChargeEvidence.Position;
import spotline.analysis.charge.ChargeEvidence.Rigidity;
import spotline.analysis.charge.ChargeEvidence.SiblingLine;
import spotline.analysis.charge.ChargeEvidence.TwoPotentials;
import spotline.analysis.charge.ChargeEvidence.UnmovedLine;
import spotline.analysis.charge.ChargeEvidence.Width;
import spotline.analysis.charge.ChargeMethod;
import spotline.analysis.charge.Drift;
import spotline.analysis.charge.FermiEdge;
import spotline.core.Estimate;
import spotline.reference.AugerParameter;
import spotline.reference.Line;

/** Evidence for an energy reference with something of every kind, all of it invented. */
final class ExampleEvidence {
    private ExampleEvidence() {}

    /** @param file of the spectra: #2 is C 1s, #3 is F 1s */
    static ChargeEvidence of(String file) {
        Estimate carbon = Estimate.of(287.35, "fit C 1s position", 0.02);
        Estimate fluorine = Estimate.of(691.6, "fit F 1s position", 0.01);
        Estimate shift =
                Estimate.of(-2.55, "fit C 1s position", -0.02).with("charge adventitious-carbon:reference", 0.25);
        return new ChargeEvidence(
                List.of("declared isolated", "declared an insulator"),
                Optional.of(drift(file)),
                List.of(
                        new Position(
                                "C 1s",
                                file + "#2",
                                carbon,
                                OptionalDouble.of(-2.55),
                                Optional.of(carbon.plus(shift)),
                                Optional.of(carbon.minus(carbon))),
                        new Position(
                                "F 1s",
                                file + "#3",
                                fluorine,
                                OptionalDouble.of(-2.55),
                                Optional.of(fluorine.plus(shift)),
                                Optional.of(fluorine.minus(carbon)))),
                List.of(candidate(ChargeMethod.INTERNAL_LINE, "F 1s", "CF2 (PTFE)", file, 689.0, "invented")),
                List.of(auger(file)),
                List.of(new UnmovedLine(Line.parse("Cu 2p3/2"), file + "#1", 932.6, 932.62)),
                Optional.of(new FermiEdge(
                        file + "#1",
                        Estimate.of(0.02, "fit edge", 0.01),
                        Estimate.of(0.5, "fit edge width", 0.02),
                        300,
                        0.56,
                        1.02)),
                List.of(new Width(
                        "C 1s",
                        "hydrocarbon",
                        file + "#2",
                        OptionalDouble.of(20),
                        Estimate.of(1.3, "fit C 1s width", 0.03),
                        Optional.of(Estimate.of(1.2, "other width", 0.02)),
                        "2",
                        OptionalDouble.of(0.5))),
                Optional.of(new TwoPotentials(0.4, OptionalDouble.of(0.1), 0.5, 1.25, 0, false)),
                Optional.of(new Rigidity(
                        List.of(
                                new Rigidity.Moved("C 1s", Estimate.of(-0.8, "a", 0.01)),
                                new Rigidity.Moved("F 1s", Estimate.of(-0.82, "b", 0.01))),
                        -0.81,
                        0.01,
                        true)),
                Optional.of(candidate(ChargeMethod.INTERNAL_LINE, "F 1s", "", file, 689.3, "stated by the analyst")),
                List.of(new SiblingLine("F 1s", "2", Estimate.of(-0.05, "sibling", 0.02))));
    }

    private static Drift drift(String file) {
        OffsetDateTime start = OffsetDateTime.parse("2026-05-12T09:00:00+02:00");
        return new Drift(
                "C 1s",
                List.of(
                        new Drift.Scan(file + "#2", Optional.of(start), Estimate.of(287.35, "first", 0.02)),
                        new Drift.Scan(
                                file + "#5", Optional.of(start.plusMinutes(30)), Estimate.of(287.4, "last", 0.02))),
                Optional.of(Estimate.of(0.1, "slope", 0.05)));
    }

    private static Candidate candidate(
            ChargeMethod method, String line, String state, String file, double referenceEv, String source) {
        return new Candidate(
                method,
                line,
                state,
                file + "#3",
                Estimate.of(691.6, "fit F 1s position", 0.01),
                referenceEv,
                0.3,
                referenceEv - 691.6,
                OptionalDouble.of(0.3),
                state.isEmpty(),
                source);
    }

    private static AugerParameterSeen auger(String file) {
        Line line = Line.parse("F 1s");
        return new AugerParameterSeen(
                line,
                "KL23L23",
                file + "#1",
                Estimate.of(1340.6, "fit F 1s position", 0.01).with("top", 0.2),
                Estimate.of(691.6, "fit F 1s position", 0.01),
                Estimate.of(649.0, "top", 0.2),
                OptionalDouble.of(689.05),
                OptionalDouble.of(651.55),
                List.of(
                        new AugerParameter(line, "CF2 <polymer>", "KL23L23", 689.0, 652.0, 1341.0, "invented"),
                        new AugerParameter(line, "metal fluoride", "KL23L23", 685.0, 655.0, 1340.0, "invented")));
    }
}
