/** Spectra as a plain table for other programs. Writing only; no reader, nothing treated. */
@NullMarked
package spotline.formats.csv;

import org.jspecify.annotations.NullMarked;
