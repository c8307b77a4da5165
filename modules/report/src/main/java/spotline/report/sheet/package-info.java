/**
 * The loading sheet: what lies where on a holder, drawn to scale, with what to do before it is loaded. Pages are made of
 * a few kinds of marks in millimetres, which go to PDF and to SVG alike. Nothing here checks a plan or reads a spectrum.
 */
@NullMarked
package spotline.report.sheet;

import org.jspecify.annotations.NullMarked;
