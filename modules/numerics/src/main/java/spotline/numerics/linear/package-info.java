/** Linear problems with signs: symmetric positive definite systems and least squares without negative amplitudes. No word of spectra. */
@NullMarked
package spotline.numerics.linear;

import org.jspecify.annotations.NullMarked;
