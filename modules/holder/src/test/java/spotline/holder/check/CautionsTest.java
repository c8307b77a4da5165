package spotline.holder.check;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import spotline.holder.HolderTemplates;

class CautionsTest {
    private static List<String> topics(String body) {
        return Cautions.of(Plans.plan(body), Optional.of(Plans.BAR)).stream()
                .map(Caution::topic)
                .toList();
    }

    @Test
    void aSampleWithoutHazardsOnAPlainBarCallsForNone() {
        assertThat(topics(Plans.shorthand("\"hazards\": \"None\"", "", ""))).isEmpty();
    }

    @Test
    void whatTheRecordSaysCallsForItsCaution() {
        assertThat(topics(Plans.shorthand("", "", ""))).containsExactly("unknown hazards");
        assertThat(topics(Plans.shorthand("\"hazards\": \"corrosive\"", "", "")))
                .containsExactly("declared hazards");
        assertThat(topics(Plans.shorthand("\"hazards\": \"none\", \"form\": \"powder\"", "", "")))
                .containsExactly("loose powder");
        assertThat(topics(Plans.shorthand("\"hazards\": \"none\", \"form\": \"fibre\"", "", "")))
                .containsExactly("loose fibres");
        assertThat(topics(Plans.shorthand("\"hazards\": \"none\", \"form\": \"liquid-residue\"", "", "")))
                .containsExactly("residue of a liquid");
        assertThat(topics(Plans.shorthand(
                        "\"hazards\": \"none\"", "", "\"spectra\": [ { \"file\": \"a\", \"role\": \"etch\" } ]")))
                .containsExactly("ion gun");
    }

    @Test
    void aHolderThatHeatsOrCoolsCallsForItsCaution() {
        String safe = Plans.shorthand("\"hazards\": \"none\"", "", "");
        assertThat(Cautions.of(Plans.plan(safe), Optional.of(HolderTemplates.shipped("temperature-stage"))))
                .extracting(Caution::topic)
                .containsExactly("heat", "cold");
        assertThat(Cautions.of(Plans.plan(safe), Optional.of(HolderTemplates.shipped("cold-stub-bar"))))
                .extracting(Caution::topic)
                .containsExactly("cold");
        assertThat(Cautions.of(Plans.plan(safe), Optional.empty())).isEmpty();
    }

    @Test
    void cautionsNameWhatTheyConcernAndClaimNothing() {
        Caution caution = Cautions.of(Plans.plan(Plans.shorthand("", "", "")), Optional.empty())
                .get(0);
        assertThat(caution.concerns()).containsExactly("sample s (spot 7)");
        assertThat(Cautions.NOTICE).contains("local rules", "certifies neither safety nor compliance");
    }

    @Test
    void aPlanIsNotReadyWithoutANamedLocalRiskReview() {
        assertThat(Cautions.notReady(Plans.plan("\"spots\": []"))).isPresent();
        assertThat(Cautions.notReady(Plans.plan("\"localRiskReview\": { \"by\": \"somebody named\" }")))
                .isEmpty();
    }
}
