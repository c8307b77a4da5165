/** Spectra, and what is read from them, drawn as SVG, binding energy from high to low. Draws what was measured and computed, changes none of it. */
@NullMarked
package spotline.report.figure;

import org.jspecify.annotations.NullMarked;
