/** A result in the words of somebody who has never seen a spectrum. No word of the trade without its meaning beside it. */
@NullMarked
package spotline.report.plain;

import org.jspecify.annotations.NullMarked;
