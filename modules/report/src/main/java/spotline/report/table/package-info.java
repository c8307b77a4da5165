/** The result tables as CSV, one class a table. Column names and their order are a promise to scripts. */
@NullMarked
package spotline.report.table;

import org.jspecify.annotations.NullMarked;
