package spotline.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import spotline.analysis.quantify.Quantified;
import spotline.core.Estimate;
import spotline.core.Finding;

class BlankVariantTest {
    private static final QuantifySettings.Blank BY_SILICON = new QuantifySettings.Blank("9", "Si", 1);

    private static Quantified row(String element, double percent, double u) {
        return Made.row(element, Estimate.of(percent, "counting/" + element + percent, u));
    }

    /** A tape of C 50, O 25, Si 25 covers 40 % of what is seen; the rest is C 60, F 40. Derived. */
    private static final SpotResult TAPE =
            Made.spot("9", "tape", row("C", 50, 0.3), row("O", 25, 0.3), row("Si", 25, 0.3));

    private static final SpotResult SPOT =
            Made.spot("1", "flake", row("C", 56, 0.3), row("O", 10, 0.3), row("F", 24, 0.3), row("Si", 10, 0.3));

    private static List<Quantified> less(QuantifySettings.Blank blank, SpotResult spot, SpotResult tape) {
        SpotResult result = BlankVariant.added(spot, blank, Optional.of(tape));
        SpotResult.Variant variant = result.variants().get(result.variants().size() - 1);
        assertThat(variant.name()).isEqualTo("less-blank");
        return variant.rows();
    }

    @Test
    void whatTheTapeShowsIsTakenOff() {
        List<Quantified> rows = less(BY_SILICON, SPOT, TAPE);
        assertThat(rows).extracting(Quantified::element).containsExactly("C", "O", "F", "Si");
        assertThat(rows.get(0).atomicPercent().orElseThrow().value()).isCloseTo(60, within(1e-9));
        assertThat(rows.get(2).atomicPercent().orElseThrow().value()).isCloseTo(40, within(1e-9));
        assertThat(rows.get(1).belowDetection()).isTrue();
        assertThat(rows.get(3).belowDetection()).isTrue();
        assertThat(rows.get(0)
                        .atomicPercent()
                        .orElseThrow()
                        .standardUncertainty()
                        .orElseThrow())
                .isBetween(0.2, 2.0);
    }

    @Test
    void thePrimaryResultStaysAndAFindingSaysSo() {
        SpotResult result = BlankVariant.added(SPOT, BY_SILICON, Optional.of(TAPE));
        assertThat(result.composition()).isEqualTo(SPOT.composition());
        assertThat(result.findings()).extracting(Finding::rule).containsExactly("blank-taken-off");
    }

    @Test
    void aShareOfTheElementMayBeTheSamplesOwn() {
        List<Quantified> rows = less(new QuantifySettings.Blank("9", "Si", 0.5), SPOT, TAPE);
        // half of 10 at.% of silicon stays; 80 % of the signal is left
        assertThat(rows.get(3).atomicPercent().orElseThrow().value()).isCloseTo(100 * 5 / 80.0, within(1e-9));
    }

    @Test
    void withoutItsElementTheBlankIsOfNoUse() {
        SpotResult bare = Made.spot("9", "tape", row("C", 100, 0.3));
        SpotResult result = BlankVariant.added(SPOT, BY_SILICON, Optional.of(bare));
        assertThat(result.variants().get(0).rows()).isEmpty();
        assertThat(result.findings()).extracting(Finding::rule).containsExactly("blank-not-usable");
        assertThat(BlankVariant.added(SPOT, BY_SILICON, Optional.empty()).findings())
                .extracting(Finding::rule)
                .containsExactly("blank-not-usable");
        assertThat(BlankVariant.added(SPOT, BY_SILICON, Optional.empty()).findings())
                .allMatch(f -> f.message().contains("no such spot"));
    }

    /** 3.29 standard deviations of counting (Currie 1968), and no less for an element that cancels to the last digit. */
    @Test
    void limitsAreThoseOfCounting() {
        SpotResult result = BlankVariant.added(SPOT, BY_SILICON, Optional.of(TAPE));
        assertThat(result.variants().get(0).rows())
                .filteredOn(r -> r.element().equals("Si"))
                .singleElement()
                .satisfies(r -> assertThat(r.detectionLimit().orElseThrow()).isGreaterThan(0.1));
    }
}
