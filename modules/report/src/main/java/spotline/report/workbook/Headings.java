package spotline.report.workbook;

import java.util.Map;

/** Column names of the tables as headings with their unit. */
final class Headings {
    private static final String PERCENT = " (at.%)";
    private static final String EV = " (eV)";

    /** Units that the name does not tell; those of one sheet alone begin with its name. */
    private static final Map<String, String> UNITS = Map.ofEntries(
            Map.entry("atomic_percent", PERCENT),
            Map.entry("standard_uncertainty", PERCENT),
            Map.entry("statistical_uncertainty", PERCENT),
            Map.entry("detection_limit", PERCENT),
            Map.entry("fraction_of_element", " (1)"),
            Map.entry("fraction_u", " (1)"),
            Map.entry("position_u", EV),
            Map.entry("fwhm_u", EV),
            Map.entry("area", " (counts eV)"),
            Map.entry("area_u", " (counts eV)"),
            Map.entry("reduced_chi_square", " (1)"));

    private Headings() {}

    static String of(String column) {
        String unit = UNITS.getOrDefault(column, "");
        String name = column;
        if (column.endsWith("_at_percent")) {
            name = column.substring(0, column.length() - "_at_percent".length());
            unit = PERCENT;
        } else if (column.endsWith("_ev")) {
            name = column.substring(0, column.length() - "_ev".length());
            unit = EV;
        } else if (column.matches("[A-Z][a-z]?_u")) {
            name = column.substring(0, column.length() - 2) + " standard uncertainty";
            unit = PERCENT;
        }
        return name.replace('_', ' ') + unit;
    }
}
