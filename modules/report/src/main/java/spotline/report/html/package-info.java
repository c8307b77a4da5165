/** The report page: one self-contained HTML file without scripts. All text from files passes through {@link Markup}. */
@NullMarked
package spotline.report.html;

import org.jspecify.annotations.NullMarked;
