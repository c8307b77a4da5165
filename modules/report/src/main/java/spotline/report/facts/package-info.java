/**
 * Plain questions to a run result that every kind of output asks: is a number there, below detection or withheld and
 * why, which spectrum does a row speak of. Nothing is computed anew.
 */
@NullMarked
package spotline.report.facts;

import org.jspecify.annotations.NullMarked;
