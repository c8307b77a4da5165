package spotline.report.table;

import java.nio.charset.StandardCharsets;
import java.util.stream.Collectors;
import spotline.run.RunResult;

/**
 * The composition table in LaTeX: a {@code tabular} without packages of its own, values with their uncertainty. Every
 * character that LaTeX would act on is escaped.
 */
public final class CompositionLatex {
    public static final String FILE = "composition.tex";

    private CompositionLatex() {}

    public static byte[] of(RunResult result) {
        ShownComposition table = ShownComposition.of(result);
        StringBuilder out =
                new StringBuilder("% ").append(ShownComposition.NOTE).append('\n');
        out.append("\\begin{tabular}{ll")
                .append("r".repeat(table.elements().size()))
                .append("}\n\\hline\n");
        out.append("Sample & Spots");
        table.elements().forEach(e -> out.append(" & ").append(escaped(e)).append(" / at.\\%"));
        out.append(" \\\\\n\\hline\n");
        for (ShownComposition.Row row : table.rows()) {
            out.append(escaped(row.sample()))
                    .append(" & ")
                    .append(escaped(row.spots()))
                    .append(" & ");
            out.append(row.values().stream().map(CompositionLatex::cell).collect(Collectors.joining(" & ")));
            out.append(" \\\\\n");
        }
        out.append("\\hline\n");
        for (String note : table.notes()) {
            out.append("\\multicolumn{")
                    .append(2 + table.elements().size())
                    .append("}{l}{\\footnotesize ")
                    .append(escaped(note))
                    .append("} \\\\\n");
        }
        out.append("\\end{tabular}\n");
        return out.toString().getBytes(StandardCharsets.UTF_8);
    }

    private static String cell(ShownComposition.Value value) {
        if (value.value().isEmpty()) return value.relation().equals("\u2013") ? "--" : value.relation();
        String number = value.value().replace('\u2212', '-');
        String u = value.uncertainty().isEmpty() ? "" : " \\pm " + value.uncertainty();
        return "$" + (value.relation().isEmpty() ? "" : "< ") + number + u + "$";
    }

    private static String escaped(String text) {
        StringBuilder out = new StringBuilder();
        for (char c : text.toCharArray()) {
            switch (c) {
                case '\\' -> out.append("\\textbackslash{}");
                case '~' -> out.append("\\textasciitilde{}");
                case '^' -> out.append("\\textasciicircum{}");
                case '<' -> out.append("\\textless{}");
                case '>' -> out.append("\\textgreater{}");
                // The command for a straight quote is not known in every font encoding.
                case '"' -> out.append("{''}");
                // Braced, so that none of them joins its neighbour to another sign, or opens an optional argument.
                case '-', '\'', '`', '[', ']', ',', '=', '*', '!', '?' ->
                    out.append('{').append(c).append('}');
                case '&', '%', '$', '#', '_', '{', '}' -> out.append('\\').append(c);
                default -> out.append(c);
            }
        }
        return out.toString();
    }
}
