/**
 * Plain columns of numbers, whose meaning a person declares: nothing about scale, photon energy or counting is guessed
 * from the numbers.
 */
@NullMarked
package spotline.formats.text;

import org.jspecify.annotations.NullMarked;
