/**
 * Least squares and counting likelihood for any model function: problems and results are values, the solver is a pure
 * function of them. No word of spectra or of files in it.
 */
@NullMarked
package spotline.numerics.fit;

import org.jspecify.annotations.NullMarked;
