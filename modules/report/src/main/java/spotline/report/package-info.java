/**
 * What a treated holder run is handed over as: tables, one JSON record, one report page. This package puts the files in
 * place; what stands in them is made by the packages below it. Nothing here computes a result.
 */
@NullMarked
package spotline.report;

import org.jspecify.annotations.NullMarked;
