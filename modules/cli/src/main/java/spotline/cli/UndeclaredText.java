package spotline.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.PrintWriter;
import java.math.BigDecimal;
import spotline.core.Decimal;
import spotline.core.Finding;
import spotline.formats.text.TextLook;

/** Columns of numbers that nobody declared yet: what is there and what is missing. */
final class UndeclaredText {
    private UndeclaredText() {}

    static void print(String name, TextLook look, PrintWriter out) {
        out.println(name + ": text, " + look.columns() + " columns, " + look.rows() + " rows from line "
                + look.firstRowLine());
        TextTable table = new TextTable("column", "least", "greatest");
        for (int i = 0; i < look.ranges().size(); i++) {
            TextLook.Range range = look.ranges().get(i);
            table.row("" + (i + 1), Decimal.text(range.least()), Decimal.text(range.greatest()));
        }
        table.print(out);
        out.println("To be declared under \"columns\" in the holder run: " + String.join(", ", look.undeclared()));
        for (Finding warning : look.warnings()) {
            out.println(warning.severity().word() + ": " + warning.message());
        }
    }

    static ObjectNode json(String name, TextLook look) {
        ObjectNode node = new ObjectMapper().createObjectNode();
        node.put("file", name);
        node.put("format", "text");
        node.put("columns", look.columns());
        node.put("rows", look.rows());
        node.put("firstRowLine", look.firstRowLine());
        ArrayNode ranges = node.putArray("ranges");
        for (TextLook.Range range : look.ranges()) {
            ranges.addObject()
                    .put("least", new BigDecimal(Decimal.text(range.least())))
                    .put("greatest", new BigDecimal(Decimal.text(range.greatest())));
        }
        ArrayNode undeclared = node.putArray("undeclared");
        look.undeclared().forEach(undeclared::add);
        ArrayNode comments = node.putArray("comments");
        look.comments().forEach(comments::add);
        return node;
    }
}
