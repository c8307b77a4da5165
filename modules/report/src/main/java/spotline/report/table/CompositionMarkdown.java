package spotline.report.table;

import java.nio.charset.StandardCharsets;
import java.util.stream.Collectors;
import spotline.run.RunResult;

/** The composition table in Markdown: a row a sample, values with their uncertainty. Everything that Markdown or HTML would act on is escaped. */
public final class CompositionMarkdown {
    public static final String FILE = "composition.md";

    private CompositionMarkdown() {}

    public static byte[] of(RunResult result) {
        ShownComposition table = ShownComposition.of(result);
        StringBuilder out = new StringBuilder("| Sample | Spots |");
        table.elements().forEach(e -> out.append(' ').append(escaped(e)).append(" / at.% |"));
        out.append("\n|:---|:---|")
                .append("---:|".repeat(table.elements().size()))
                .append('\n');
        for (ShownComposition.Row row : table.rows()) {
            out.append("| ")
                    .append(escaped(row.sample()))
                    .append(" | ")
                    .append(escaped(row.spots()))
                    .append(" | ");
            out.append(row.values().stream().map(CompositionMarkdown::cell).collect(Collectors.joining(" | ")));
            out.append(" |\n");
        }
        out.append('\n').append(ShownComposition.NOTE).append('\n');
        for (String note : table.notes()) out.append('\n').append(escaped(note)).append('\n');
        return out.toString().getBytes(StandardCharsets.UTF_8);
    }

    private static String cell(ShownComposition.Value value) {
        if (value.value().isEmpty()) return value.relation();
        String number =
                value.uncertainty().isEmpty() ? value.value() : value.value() + " \u00b1 " + value.uncertainty();
        return value.relation().isEmpty() ? number : "&lt; " + number;
    }

    private static String escaped(String text) {
        StringBuilder out = new StringBuilder();
        for (char c : text.toCharArray()) {
            switch (c) {
                case '&' -> out.append("&amp;");
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                default -> {
                    if ("\\`*_{}[]()#+-.!|~:=@".indexOf(c) >= 0) out.append('\\');
                    out.append(c);
                }
            }
        }
        return out.toString();
    }
}
