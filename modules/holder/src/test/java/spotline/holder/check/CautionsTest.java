package spotline.holder.check;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import spotline.holder.HolderPlan;
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
    void whatThePlanDoesCallsForItsCaution() {
        assertThat(topics(Plans.shorthand("\"hazards\": \"none\"", "", "\"etchSteps\": [ { } ]")))
                .containsExactly("ion gun");
        assertThat(topics(Plans.shorthand("\"hazards\": \"none\", \"sensitivities\": [ \"moisture\" ]", "", "")))
                .containsExactly("kept from the air");
        assertThat(topics(Plans.shorthand("\"hazards\": \"none\"", "", "\"transfer\": { \"vessel\": \"v\" }")))
                .containsExactly("kept from the air");
        String stage =
                ", \"stage\": { \"biasV\": 5, \"setPoints\": [ { \"temperatureC\": 80 }, { \"temperatureC\": -5 } ] }";
        assertThat(topics(Plans.shorthand("\"hazards\": \"none\"", "", "") + stage))
                .containsExactly("heat", "cold", "bias");
    }

    @Test
    void aStopKeepsAPlanFromBeingReady() {
        String reviewed = "\"localRiskReview\": { \"by\": \"somebody named\" }, ";
        HolderPlan plan = Plans.plan(reviewed + Plans.rectangle(5, 10, 0));
        assertThat(Cautions.notReady(plan, PlanCheck.check(plan, Optional.of(Plans.BAR))))
                .containsExactly("1 finding says stop: put right before loading.");
        HolderPlan good = Plans.plan(reviewed + Plans.rectangle(50, 10, 0));
        assertThat(Cautions.notReady(good, PlanCheck.check(good, Optional.of(Plans.BAR))))
                .isEmpty();
        assertThat(Cautions.notReady(
                        Plans.plan(Plans.rectangle(5, 10, 0)), PlanCheck.check(plan, Optional.of(Plans.BAR))))
                .hasSize(2);
    }

    @Test
    void aMissingReviewIsAFindingOfTheLoad() {
        String rectangle = Plans.rectangle(50, 10, 0);
        assertThat(PlanCheck.ofLoad(Plans.plan(rectangle), Optional.of(Plans.BAR)))
                .singleElement()
                .satisfies(f -> {
                    assertThat(f.rule()).isEqualTo("local-risk-review");
                    assertThat(f.severity()).isEqualTo(spotline.core.Severity.CAUTION);
                });
        String reviewed = "\"localRiskReview\": { \"by\": \"somebody named\" }, ";
        assertThat(PlanCheck.ofLoad(Plans.plan(reviewed + rectangle), Optional.of(Plans.BAR)))
                .isEmpty();
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
