package spotline.report.workbook;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import spotline.report.table.ChargeCsv;
import spotline.report.table.CompositionCsv;
import spotline.report.table.CsvTable;
import spotline.report.table.ExceptionsCsv;
import spotline.report.table.FindingsCsv;
import spotline.report.table.PeaksCsv;
import spotline.report.table.ProvenanceTable;
import spotline.report.table.SamplesCsv;
import spotline.report.table.StatesCsv;
import spotline.report.text.Shown;
import spotline.run.RunResult;

/**
 * The workbook of a holder run: a sheet a table, numbers as numbers that show as many digits as their uncertainty leaves
 * a meaning, units in the headings, a header row that stays in place.
 *
 * <p>Its bytes depend on the result and on the time it is told it was made at.
 */
public final class CompositionWorkbook {
    public static final String FILE = "composition.xlsx";

    /** What one cell can hold. Source: ECMA-376, string limits of a cell as spreadsheets keep them. */
    private static final int LONGEST_CELL = 32_767;

    private static final int WIDEST_COLUMN = 60;
    private static final int NARROWEST_COLUMN = 8;

    private CompositionWorkbook() {}

    /** @param made written into the file as the time it was made; without it the file holds the earliest a ZIP can */
    public static byte[] of(RunResult result, Optional<Instant> made) {
        Map<String, CsvTable> sheets = new LinkedHashMap<>();
        sheets.put("summary", SamplesCsv.table(result));
        sheets.put("composition", CompositionCsv.table(result));
        CsvTable exceptions = ExceptionsCsv.table(result);
        if (!exceptions.rows().isEmpty()) sheets.put("exceptions", exceptions);
        sheets.put("states", StatesCsv.table(result));
        sheets.put("peaks", PeaksCsv.table(result));
        sheets.put("charge", ChargeCsv.table(result));
        sheets.put("findings", FindingsCsv.table(result.findings()));
        sheets.put("provenance", ProvenanceTable.table(result));
        ByteArrayOutputStream out = new ByteArrayOutputStream(1 << 15);
        try (Workbook workbook = new Workbook(out, "Spotline", "1.0")) {
            // 10 pt of the sort every office program has; which one is drawn is the reader's own affair.
            workbook.setGlobalDefaultFont("Arial", 10);
            sheets.forEach((name, table) -> sheet(workbook.newWorksheet(name), table));
        } catch (IOException e) {
            throw new UncheckedIOException("a workbook could not be made in memory", e);
        }
        return FixedTimes.of(out.toByteArray(), made);
    }

    private static void sheet(Worksheet sheet, CsvTable table) {
        DisplayDigits digits = new DisplayDigits(table.columns());
        List<List<CsvTable.Cell>> rows = table.rows();
        for (int c = 0; c < table.columns().size(); c++) {
            String heading = Headings.of(table.columns().get(c));
            sheet.value(0, c, heading);
            sheet.style(0, c).bold().wrapText(true).verticalAlignment("top").set();
            int widest = NARROWEST_COLUMN;
            for (String word : heading.split(" ", -1)) widest = Math.max(widest, word.length() + 2);
            for (int r = 0; r < rows.size(); r++) {
                CsvTable.Cell cell = rows.get(r).get(c);
                write(sheet, r + 1, c, cell, digits.format(rows.get(r), c));
                if (cell instanceof CsvTable.Cell.Words words) {
                    widest = Math.max(widest, words.text().length() + 1);
                }
            }
            sheet.width(c, Math.min(widest, WIDEST_COLUMN));
        }
        sheet.freezePane(0, 1);
        sheet.repeatRows(0);
        sheet.pageOrientation("landscape");
        sheet.setFitToPage(true);
        sheet.fitToWidth((short) 1);
        sheet.fitToHeight((short) 0);
    }

    private static void write(Worksheet sheet, int row, int column, CsvTable.Cell cell, String format) {
        if (cell instanceof CsvTable.Cell.Number number) {
            OptionalDouble value = number.value();
            if (value.isEmpty()) return;
            sheet.value(row, column, value.getAsDouble());
            if (!format.isEmpty()) sheet.style(row, column).format(format).set();
        } else if (cell instanceof CsvTable.Cell.Flag flag) {
            sheet.value(row, column, flag.value());
        } else if (!cell.text().isEmpty()) {
            String text = Shown.text(cell.text());
            sheet.value(row, column, text.substring(0, Math.min(text.length(), LONGEST_CELL)));
        }
    }
}
