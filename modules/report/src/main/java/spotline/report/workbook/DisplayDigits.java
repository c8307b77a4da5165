package spotline.report.workbook;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import spotline.report.table.CsvTable;
import spotline.report.text.DisplayNumber;

/**
 * How many decimals a number shows: as many as its uncertainty leaves a meaning. The cell keeps the whole number.
 */
final class DisplayDigits {
    private static final int UNTOLD = -1;

    /** The column that holds the uncertainty of another. */
    private static final Map<String, String> UNCERTAINTY = Map.ofEntries(
            Map.entry("atomic_percent", "standard_uncertainty"),
            Map.entry("fraction_of_element", "fraction_u"),
            Map.entry("reference_energy_ev", "reference_u_ev"),
            Map.entry("measured_energy_ev", "measurement_u_ev"),
            Map.entry("shift_ev", "standard_uncertainty_ev"),
            Map.entry("measured_position_ev", "position_u"),
            Map.entry("fwhm_ev", "fwhm_u"),
            Map.entry("area", "area_u"));

    /** Of numbers without an uncertainty of their own. */
    private static final Map<String, Integer> DECIMALS =
            Map.of("referenced_position_ev", 1, "reduced_chi_square", 2, "atomic_percent", 1);

    private final List<String> columns;

    DisplayDigits(List<String> columns) {
        this.columns = columns;
    }

    /** A number format of the workbook; empty for the general one. */
    String format(List<CsvTable.Cell> row, int column) {
        int decimals = decimals(row, column);
        if (decimals == UNTOLD) return "";
        return decimals == 0 ? "0" : "0." + "0".repeat(decimals);
    }

    private int decimals(List<CsvTable.Cell> row, int column) {
        String name = columns.get(column);
        OptionalDouble value = number(row, column);
        if (value.isEmpty()) return UNTOLD;
        int at = columns.indexOf(uncertaintyOf(name));
        OptionalDouble u = at >= 0 ? number(row, at) : isUncertainty(name) ? value : OptionalDouble.empty();
        if (u.isPresent() && u.getAsDouble() > 0) {
            String text = DisplayNumber.of(value.getAsDouble(), u, 0).value();
            int point = text.indexOf('.');
            return point < 0 ? 0 : text.length() - point - 1;
        }
        if (name.endsWith("_at_percent")) return 1;
        return DECIMALS.getOrDefault(name, name.endsWith("_ev") ? 2 : UNTOLD);
    }

    private static String uncertaintyOf(String name) {
        if (name.endsWith("_at_percent")) {
            return name.substring(0, name.length() - "_at_percent".length()) + "_u";
        }
        return UNCERTAINTY.getOrDefault(name, "");
    }

    private static boolean isUncertainty(String name) {
        return name.endsWith("_u") || name.endsWith("_u_ev") || name.contains("uncertainty") || name.endsWith("_limit");
    }

    private static OptionalDouble number(List<CsvTable.Cell> row, int column) {
        return row.get(column) instanceof CsvTable.Cell.Number number ? number.value() : OptionalDouble.empty();
    }
}
