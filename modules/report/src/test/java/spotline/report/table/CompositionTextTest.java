package spotline.report.table;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import spotline.report.Examples;
import spotline.run.RunResult;

class CompositionTextTest {
    @Test
    void markdownHasARowASampleWithDigitsByUncertainty() {
        assertThat(markdown(Examples.plain()).lines())
                .startsWith(
                        "| Sample | Spots | C / at.% | O / at.% | F / at.% | Ti / at.% |",
                        "|:---|:---|---:|---:|---:|---:|",
                        "| liner chip | 1 | 33.5 \u00b1 0.9 | &lt; 0.62 | 66.5 \u00b1 0.9 | \u2013 |",
                        "| contact strip | 2 | withheld | \u2013 | \u2013 | withheld |");
    }

    @Test
    void latexHasTheSameNumbers() {
        assertThat(latex(Examples.plain()))
                .contains("\\begin{tabular}{llrrrr}", "liner chip & 1 & $33.5 \\pm 0.9$ & $< 0.62$ &");
    }

    @Test
    void namesCannotBreakOut() {
        String name = "a|b <script>*x*_ \\input{/etc/passwd} $1 % & # ~^";
        RunResult run = Examples.named("t", name, "f.txt");
        assertThat(markdown(run)).doesNotContain("<script>").contains("a\\|b &lt;script&gt;\\*x\\*\\_");
        assertThat(latex(run))
                .doesNotContain("\\input")
                .contains("\\textbackslash{}input\\{/etc/passwd\\} \\$1 \\% \\& \\# \\textasciitilde{}");
    }

    private static String markdown(RunResult run) {
        return new String(CompositionMarkdown.of(run), StandardCharsets.UTF_8);
    }

    private static String latex(RunResult run) {
        return new String(CompositionLatex.of(run), StandardCharsets.UTF_8);
    }
}
