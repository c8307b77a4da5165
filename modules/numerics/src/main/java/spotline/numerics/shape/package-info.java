/**
 * Line shapes with analytic derivatives, by area, in the units of their abscissa.
 *
 * <p>A shape knows nothing of spectra, backgrounds or fitting. It is stateless: parameters come in as arrays, scratch
 * as an object that belongs to one thread.
 */
@NullMarked
package spotline.numerics.shape;

import org.jspecify.annotations.NullMarked;
