package spotline.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.dhatim.fastexcel.reader.Cell;
import org.dhatim.fastexcel.reader.CellType;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.Row;
import org.junit.jupiter.api.Test;
import spotline.report.table.CompositionCsv;
import spotline.report.table.CsvTable;
import spotline.report.workbook.CompositionWorkbook;
import spotline.run.RunResult;

class CompositionWorkbookTest {
    private static final List<String> SHEETS =
            List.of("summary", "composition", "states", "peaks", "charge", "findings", "provenance");

    @Test
    void holdsTheSheetsAndTheNumbersOfTheTables() throws IOException {
        RunResult run = ExampleRun.plain();
        Map<String, List<Row>> sheets = read(CompositionWorkbook.of(run, Optional.empty()));
        assertThat(sheets.keySet()).containsExactlyInAnyOrderElementsOf(SHEETS);
        CsvTable table = CompositionCsv.table(run);
        List<Row> rows = sheets.get("composition");
        assertThat(rows).hasSize(1 + table.rows().size());
        int numbers = 0;
        for (int r = 0; r < table.rows().size(); r++) {
            for (int c = 0; c < table.columns().size(); c++) {
                CsvTable.Cell expected = table.rows().get(r).get(c);
                Optional<Cell> actual = rows.get(r + 1).getOptionalCell(c);
                if (expected instanceof CsvTable.Cell.Number number
                        && number.value().isPresent()) {
                    assertThat(actual.orElseThrow().getType()).isEqualTo(CellType.NUMBER);
                    assertThat(actual.get().asNumber().doubleValue())
                            .isEqualTo(number.value().getAsDouble());
                    numbers++;
                } else if (expected instanceof CsvTable.Cell.Flag flag) {
                    assertThat(actual.orElseThrow().asBoolean()).isEqualTo(flag.value());
                } else {
                    assertThat(actual.map(Cell::getText).orElse("")).isEqualTo(expected.text());
                }
            }
        }
        assertThat(numbers).isGreaterThan(5);
    }

    @Test
    void headingsCarryUnitsAndFormatsTheDigits() throws IOException {
        Map<String, List<Row>> sheets = read(CompositionWorkbook.of(ExampleRun.plain(), Optional.empty()));
        assertThat(texts(sheets.get("composition").get(0))).contains("atomic percent (at.%)", "detection limit (at.%)");
        assertThat(texts(sheets.get("charge").get(0))).contains("shift (eV)", "standard uncertainty (eV)");
        assertThat(texts(sheets.get("summary").get(0))).contains("C (at.%)", "C standard uncertainty (at.%)");
        // 33.457 with u = 0.911: one decimal, as the CSV's own digits are cut for display only.
        assertThat(sheets.get("composition").get(1).getCell(3).getDataFormatString())
                .isEqualTo("0.0");
        // Measured position 287.35, u = 0.02.
        assertThat(sheets.get("peaks").get(1).getCell(6).getDataFormatString()).isEqualTo("0.000");
        assertThat(sheets.get("peaks").get(1).getCell(7).getDataFormatString()).isEqualTo("0.0");
    }

    @Test
    void theHeaderRowIsFrozenAndNoTextIsAFormula() throws IOException {
        byte[] book =
                CompositionWorkbook.of(ExampleRun.named("=1+1", "=cmd()|'/c calc'!A1", "@file.txt"), Optional.empty());
        Map<String, String> parts = parts(book);
        for (int i = 1; i <= SHEETS.size(); i++) {
            String sheet = parts.get("xl/worksheets/sheet" + i + ".xml");
            assertThat(sheet).contains("ySplit=\"1\"").doesNotContain("<f>");
        }
        assertThat(read(book).get("summary").get(1).getCellText(0)).isEqualTo("'=cmd()|'/c calc'!A1");
    }

    @Test
    void theTimeInsideIsTheOneItIsTold() throws IOException {
        Instant made = Instant.parse("2026-05-12T10:20:30Z");
        byte[] book = CompositionWorkbook.of(ExampleRun.plain(), Optional.of(made));
        assertThat(parts(book).get("docProps/core.xml")).contains("2026-05-12T10:20:30Z");
        assertThat(CompositionWorkbook.of(ExampleRun.plain(), Optional.of(made)))
                .isEqualTo(book);
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(book))) {
            for (ZipEntry e = zip.getNextEntry(); e != null; e = zip.getNextEntry()) {
                assertThat(e.getTimeLocal()).isEqualTo("2026-05-12T10:20:30");
            }
        }
    }

    private static List<String> texts(Row row) {
        return row.stream().map(Cell::getText).collect(Collectors.toList());
    }

    private static Map<String, List<Row>> read(byte[] book) throws IOException {
        Map<String, List<Row>> sheets = new TreeMap<>();
        try (ReadableWorkbook workbook = new ReadableWorkbook(
                new ByteArrayInputStream(book), new org.dhatim.fastexcel.reader.ReadingOptions(true, true))) {
            workbook.getSheets().forEach(sheet -> {
                try {
                    sheets.put(sheet.getName(), sheet.read());
                } catch (IOException e) {
                    throw new java.io.UncheckedIOException(e);
                }
            });
        }
        return sheets;
    }

    private static Map<String, String> parts(byte[] book) throws IOException {
        Map<String, String> parts = new TreeMap<>();
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(book))) {
            for (ZipEntry e = zip.getNextEntry(); e != null; e = zip.getNextEntry()) {
                parts.put(e.getName(), new String(zip.readAllBytes(), java.nio.charset.StandardCharsets.UTF_8));
            }
        }
        return parts;
    }
}
