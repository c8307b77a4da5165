/**
 * Measured spectra as immutable values: axes, ordinates, how they were acquired. No file format, no treatment; a charge
 * shift never changes anything here.
 */
@NullMarked
package spotline.spectra;

import org.jspecify.annotations.NullMarked;
