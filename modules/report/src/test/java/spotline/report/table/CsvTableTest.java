package spotline.report.table;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CsvTableTest {
    private static String oneCell(String text) {
        CsvTable table = new CsvTable(List.of("c"));
        table.add(new CsvTable.Row().text(text));
        return new String(table.bytes(), StandardCharsets.UTF_8).substring("c\n".length());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "=1+1",
                "+1",
                "-1+1",
                "@SUM(A1)",
                "\t=1",
                "\r=1",
                "=HYPERLINK(\"http://x\",\"y\")",
                "\uff1d1",
                "=cmd|' /C calc'!A0"
            })
    void aTextNeverStartsAFormula(String text) {
        String cell = oneCell(text);
        String content = cell.startsWith("\"") ? cell.substring(1) : cell;
        assertThat(content).startsWith("'" + text.charAt(0));
    }

    @Test
    void ourOwnNumbersKeepTheirSign() {
        CsvTable table = new CsvTable(List.of("a", "b", "c"));
        table.add(new CsvTable.Row().number(-2.55).number(Double.NaN).flag(true));
        assertThat(new String(table.bytes(), StandardCharsets.UTF_8)).isEqualTo("a,b,c\n-2.55,,true\n");
    }

    // RFC 4180, section 2, rules 6 and 7
    @Test
    void cellsAreQuotedWhereTheyNeedIt() {
        assertThat(oneCell("a,b")).isEqualTo("\"a,b\"\n");
        assertThat(oneCell("a\"b")).isEqualTo("\"a\"\"b\"\n");
        assertThat(oneCell("a\nb")).isEqualTo("\"a\nb\"\n");
        assertThat(oneCell("a\rb")).isEqualTo("\"a\rb\"\n");
        assertThat(oneCell("C\u2013C i\u0307I\u0130")).isEqualTo("C\u2013C i\u0307I\u0130\n");
    }

    @Test
    void aRowHasACellAColumn() {
        CsvTable table = new CsvTable(List.of("a", "b"));
        assertThatIllegalArgumentException().isThrownBy(() -> table.add(new CsvTable.Row().text("x")));
    }
}
