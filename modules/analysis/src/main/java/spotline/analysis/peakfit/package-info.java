/**
 * Constrained peak fits: the fit model as values, its first guesses, the fit, results with the full covariance, and the
 * models that lines get by default. No file format lives here, and no least squares: those are the numerics'.
 */
@NullMarked
package spotline.analysis.peakfit;

import org.jspecify.annotations.NullMarked;
