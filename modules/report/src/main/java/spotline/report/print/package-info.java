/**
 * Printed pages: a few kinds of marks in millimetres, the shipped typeface, and the files they go to. Nothing here knows
 * what a page is about.
 */
@NullMarked
package spotline.report.print;

import org.jspecify.annotations.NullMarked;
