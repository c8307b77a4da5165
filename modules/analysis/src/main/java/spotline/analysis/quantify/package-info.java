/**
 * From intensities to atomic fractions: sensitivity factors as objects, composition with its uncertainty, limits of
 * detection. Knows nothing of how an area was taken.
 */
@NullMarked
package spotline.analysis.quantify;

import org.jspecify.annotations.NullMarked;
