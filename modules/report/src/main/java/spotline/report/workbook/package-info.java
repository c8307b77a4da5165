/** The result tables as one XLSX workbook. Cells come from the typed tables that the CSV files are made of; none is made here. */
@NullMarked
package spotline.report.workbook;

import org.jspecify.annotations.NullMarked;
