/**
 * Inelastic backgrounds and the area above them, each with what it adds to the area's uncertainty. One background is one
 * record with its own computation; kernels take primitive arrays. No line table, no peak shape, no file lives here.
 */
@NullMarked
package spotline.analysis.background;

import org.jspecify.annotations.NullMarked;
