/** The whole run as one JSON record: results, settings, provenance. Unknown is null; the order of fields is fixed. */
@NullMarked
package spotline.report.json;

import org.jspecify.annotations.NullMarked;
