package spotline.report.text;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class ShownTest {
    @Test
    void aSentenceHasTrueMinusSigns() {
        assertThat(Shown.prose("a shift of -3.11 eV (-0.2 +/- 0.1) in spot-2 of 2026-05-12"))
                .isEqualTo("a shift of \u22123.11 eV (\u22120.2 \u00b1 0.1) in spot-2 of 2026-05-12");
    }

    @Test
    void whatDoesNotShowIsWrittenOut() {
        assertThat(Shown.text("a\u202Eb\u0000c\uD800d\u2066")).isEqualTo("a[U+202E]b[U+0000]c[U+D800]d[U+2066]");
    }

    @Test
    void ordinaryTextOfAnyScriptIsLeftAlone() {
        String text = "Ti 2p\u00b3\u141f\u00b2, \u03b1-\u0416\u0623\u6f22 \uD83D\uDD2C \u00b1 1\u00b5m\n";
        assertThat(Shown.text(text)).isSameAs(text);
    }

    @Test
    void labelsAreShort() {
        assertThat(Shown.label("x".repeat(300))).hasSize(48).endsWith("\u2026");
        assertThat(Shown.label("C 1s")).isEqualTo("C 1s");
        assertThat(Shown.label("\uD83D\uDD2C".repeat(100))).doesNotContain("[U+");
    }
}
