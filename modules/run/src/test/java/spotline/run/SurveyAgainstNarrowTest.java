package spotline.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import spotline.analysis.quantify.Basis;
import spotline.analysis.quantify.Quantified;
import spotline.core.Estimate;
import spotline.core.Finding;
import spotline.core.Severity;

class SurveyAgainstNarrowTest {
    private static Quantified row(Basis basis, double percent, double ownU, double sharedU) {
        Estimate x = Estimate.of(percent, "counting/" + basis, ownU).with("factor/cross section O 1s", sharedU);
        return new Quantified(
                "O",
                "O 1s",
                basis.word(),
                basis,
                Optional.of(x),
                OptionalDouble.of(ownU),
                false,
                OptionalDouble.empty());
    }

    private static List<Finding> compared(double narrow, double survey, double ownU) {
        return new SpotChecks(DefaultTreatment.treatment(), new TreeSet<>())
                .surveyAgainstNarrow(
                        List.of(row(Basis.NARROW, narrow, ownU, 2)),
                        List.of(new SpotResult.Variant("survey", List.of(row(Basis.SURVEY, survey, ownU, 2)))));
    }

    /** The factor is the same in both: its uncertainty does not excuse a difference. */
    @Test
    void aDifferenceBeyondBothLimitsIsACaution() {
        assertThat(compared(31, 38, 1)).singleElement().satisfies(f -> {
            assertThat(f.severity()).isEqualTo(Severity.CAUTION);
            assertThat(f.message()).contains("31.0", "38.0", "4.9 standard uncertainties", "10 %");
        });
    }

    @Test
    void withinEitherLimitNothingIsSaid() {
        assertThat(compared(31, 33, 0.1)).isEmpty();
        assertThat(compared(31, 38, 2)).isEmpty();
    }
}
