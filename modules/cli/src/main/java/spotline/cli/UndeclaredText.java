package spotline.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.PrintWriter;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import spotline.core.Decimal;
import spotline.core.Finding;
import spotline.formats.text.TextLook;

/** Columns of numbers that nobody declared yet: what is there and what is missing. */
final class UndeclaredText {
    /** Fields of a holder run's {@code columns} that cannot be left out. */
    private static final List<String> REQUIRED = List.of("energy", "ordinate", "scale", "photonEnergyEv");

    private UndeclaredText() {}

    static void print(String name, TextLook look, PrintWriter out) {
        out.println(TerminalText.clean(name) + ": text, " + look.columns() + " columns, " + look.rows()
                + " rows from line " + look.firstRowLine() + ", parted by " + look.separator() + ", decimal "
                + (look.decimalComma() ? "comma" : "point"));
        TextTable table = new TextTable("column", "least", "greatest");
        for (int i = 0; i < look.ranges().size(); i++) {
            TextLook.Range range = look.ranges().get(i);
            table.row("" + (i + 1), Decimal.text(range.least()), Decimal.text(range.greatest()));
        }
        table.print(out);
        out.println("To be declared under \"columns\" in the holder run: " + String.join(", ", look.undeclared()));
        for (TextLook.Suggestion s : look.suggestions()) {
            out.println("  suggested, to be checked: " + s.field() + " " + s.value() + ", because " + s.reason());
        }
        out.println("  \"columns\": " + columns(look));
        for (Finding warning : look.warnings()) {
            out.println(warning.severity().word() + ": " + Main.oneLine(warning.message()));
        }
    }

    /** What would stand in the holder run; a question mark where a person has to say it. */
    private static String columns(TextLook look) {
        Map<String, String> fields = new LinkedHashMap<>();
        for (String field : REQUIRED) fields.put(field, "?");
        for (TextLook.Suggestion s : look.suggestions()) fields.put(s.field(), s.value());
        StringBuilder text = new StringBuilder("{ ");
        fields.forEach((field, value) -> text.append(text.length() > 2 ? ", " : "")
                .append('"')
                .append(field)
                .append("\": ")
                .append(value));
        return text.append(" }").toString();
    }

    static ObjectNode json(String name, TextLook look) {
        ObjectNode node = new ObjectMapper().createObjectNode();
        node.put("file", name);
        node.put("format", "text");
        node.put("columns", look.columns());
        node.put("rows", look.rows());
        node.put("firstRowLine", look.firstRowLine());
        node.put("separator", look.separator());
        node.put("decimalSign", look.decimalComma() ? "," : ".");
        ArrayNode ranges = node.putArray("ranges");
        for (TextLook.Range range : look.ranges()) {
            ranges.addObject()
                    .put("least", new BigDecimal(Decimal.text(range.least())))
                    .put("greatest", new BigDecimal(Decimal.text(range.greatest())));
        }
        ArrayNode undeclared = node.putArray("undeclared");
        look.undeclared().forEach(undeclared::add);
        ArrayNode suggestions = node.putArray("suggestions");
        for (TextLook.Suggestion s : look.suggestions()) {
            suggestions
                    .addObject()
                    .put("field", s.field())
                    .put("value", s.value())
                    .put("reason", s.reason());
        }
        ArrayNode comments = node.putArray("comments");
        look.comments().forEach(comments::add);
        InspectCommand.warnings(node.putArray("warnings"), look.warnings());
        return node;
    }
}
