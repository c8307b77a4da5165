/**
 * Published tables as immutable values: elements, lines, binding energies, cross sections, widths, mean free paths,
 * calibration energies, chemical states. Everything here was read from the tables that ship with the program, each of
 * which names its own source; nothing here knows a spectrum, a file of the user, or how a value is shown.
 */
@NullMarked
package spotline.reference;

import org.jspecify.annotations.NullMarked;
