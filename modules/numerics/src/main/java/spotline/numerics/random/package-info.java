/** Seeded random streams that are the same on every JVM, and Monte-Carlo with them. */
@NullMarked
package spotline.numerics.random;

import org.jspecify.annotations.NullMarked;
