package spotline.demo.corpus;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestReporter;
import spotline.analysis.identify.Identification;
import spotline.analysis.identify.QuickShare;

/** Holds the identification to what it was measured to do on the corpus; the README has the whole table. */
class IdentificationScoreTest {
    private static final long SEED = 20260101;
    private static final int SAMPLE = 40;
    private static final int ALL = 2000;

    /** Measured on the whole corpus; see the README of this module. */
    private static final double FOUND = 0.982;

    private static final double PRESENT = 0.917;
    private static final double FALSE_SURVEYS = 0.010;
    private static final double SHIFT_CLOSE = 0.915;
    private static final double INSIDE = 0.963;
    private static final double COMPOSITION = 0.912;

    private static IdentificationScore score(int from, int to) {
        SurveyCorpus corpus = new SurveyCorpus(SEED);
        IdentificationScore score = new IdentificationScore();
        for (int n = from; n < to; n++) score.add(corpus.make(n));
        return score;
    }

    @Test
    void aSampleOfTheCorpusScoresAsTheWholeDoes() {
        IdentificationScore score = score(0, SAMPLE);
        assertThat(score.foundShare()).isGreaterThan(least(FOUND, score.aboveCases()));
        assertThat(score.presentShare()).isGreaterThan(least(PRESENT, score.aboveCases()));
        assertThat(1 - score.falseSurveyShare()).isGreaterThan(least(1 - FALSE_SURVEYS, SAMPLE));
        assertThat(score.hydrocarbonCloseShare()).isGreaterThan(least(SHIFT_CLOSE, score.hydrocarbonCases()));
        assertThat(score.compositionShare()).isGreaterThan(least(COMPOSITION, score.shareCases()));
    }

    /** A sample may fall three binomial standard deviations below the whole. */
    private static double least(double share, int cases) {
        return share - 3 * Math.sqrt(share * (1 - share) / cases);
    }

    @Test
    @Tag("slow")
    void theWholeCorpusScoresAsTheReadmeSays(TestReporter reporter) {
        IdentificationScore score = score(0, ALL);
        reporter.publishEntry("score", String.join("\n", score.table()));
        assertThat(score.foundShare()).isGreaterThan(FOUND - 0.005);
        assertThat(score.presentShare()).isGreaterThan(PRESENT - 0.005);
        assertThat(score.falseSurveyShare()).isLessThan(FALSE_SURVEYS + 0.003);
        assertThat(score.hydrocarbonCloseShare()).isGreaterThan(SHIFT_CLOSE - 0.01);
        assertThat(score.insideShare()).isGreaterThan(INSIDE - 0.01);
        assertThat(score.compositionShare()).isGreaterThan(COMPOSITION - 0.005);
    }

    @Test
    void overlappedLinesAreSharedOut() {
        // Al 2p with Cu 3p, Mo 3d with S 2s, K 2p with C 1s, Na KLL and Zn LMM with Sn 3d, Pd 3p with O 1s.
        List<Map<String, Double>> pairs = List.of(
                Map.of("Al", 0.5, "Cu", 0.3, "O", 0.5),
                Map.of("Mo", 0.33, "S", 0.67),
                Map.of("K", 0.3, "O", 0.5, "Cl", 0.3),
                Map.of("Sn", 0.3, "Zn", 0.3, "O", 0.6),
                Map.of("Sn", 0.3, "Na", 0.4, "O", 0.6),
                Map.of("Pd", 0.4, "O", 0.5));
        SurveyCorpus corpus = new SurveyCorpus(SEED);
        int right = 0;
        int all = 0;
        for (int n = 0; n < pairs.size(); n++) {
            SurveyCase survey = corpus.make(5000 + n, pairs.get(n));
            Identification found = IdentificationScore.identify(survey);
            for (String symbol : pairs.get(n).keySet()) {
                SurveyCase.ElementTruth truth = survey.element(symbol).orElseThrow();
                if (truth.counts() < 2 * truth.detectionLimit()) continue;
                double told = found.detail().orElseThrow().composition().stream()
                        .filter(s -> s.element().equals(symbol))
                        .map(QuickShare::atomicPercent)
                        .mapToDouble(e -> e.value())
                        .findFirst()
                        .orElse(0);
                all++;
                double expected = truth.apparentPercent();
                if (Math.abs(told - expected) <= Math.max(2, 0.2 * expected)) right++;
            }
        }
        assertThat(all).isGreaterThan(10);
        assertThat(right).isGreaterThanOrEqualTo(all - 3);
    }

    @Test
    void aCaseIsTheSameWhicheverOthersAreMade() {
        SurveyCase alone = new SurveyCorpus(SEED).make(7);
        SurveyCorpus corpus = new SurveyCorpus(SEED);
        corpus.make(6);
        SurveyCase after = corpus.make(7);
        assertThat(after.scan().counts()).isEqualTo(alone.scan().counts());
        assertThat(after.elements()).isEqualTo(alone.elements());
        assertThat(new SurveyCorpus(SEED + 1).make(7).scan().counts())
                .isNotEqualTo(alone.scan().counts());
    }

    @Test
    void theTruthOfACaseHangsTogether() {
        SurveyCorpus corpus = new SurveyCorpus(SEED);
        for (int n = 0; n < 30; n++) {
            SurveyCase survey = corpus.make(n);
            assertThat(survey.elements()).hasSizeBetween(1, 9);
            double sum = survey.elements().stream()
                    .mapToDouble(SurveyCase.ElementTruth::apparentPercent)
                    .sum();
            assertThat(sum).isBetween(99.999, 100.001);
            assertThat(survey.chargingEv()).isBetween(-10.5, 12.5);
            assertThat(survey.hydrocarbonPercent()).isBetween(0.0, 100.0);
            for (SurveyCase.ElementTruth truth : survey.elements()) {
                assertThat(truth.criticalLevel()).isLessThan(truth.detectionLimit());
                assertThat(truth.countingLimit()).isLessThanOrEqualTo(truth.detectionLimit());
            }
        }
    }
}
