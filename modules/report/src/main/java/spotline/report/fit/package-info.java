/** One peak fit shown by itself: as a drawing, as text, as JSON. Nothing is computed here. */
@NullMarked
package spotline.report.fit;

import org.jspecify.annotations.NullMarked;
