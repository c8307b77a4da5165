/**
 * The text format of ISO 14976:1998 (first published by W.A. Dench, L.B. Hazell, M.P. Seah and the VAMAS community,
 * Surf. Interface Anal. 13 (1988) 63): one value a structure of the standard, its parser and writer, and the way from a
 * block to a spectrum set. No judgement of the data beyond what the file itself says.
 */
@NullMarked
package spotline.formats.iso14976;

import org.jspecify.annotations.NullMarked;
