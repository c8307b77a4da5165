/**
 * Speed of the solver and the line shapes beside general-purpose libraries: same data, same starting values, same stop
 * rule, in one run, with the chi-square that each ends at. Nothing of the product may depend on what lives here.
 */
@NullMarked
package spotline.bench;

import org.jspecify.annotations.NullMarked;
