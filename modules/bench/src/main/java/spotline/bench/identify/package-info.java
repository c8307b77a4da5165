/** How long the identification of a survey takes. Measures; holds nothing to account. */
@NullMarked
package spotline.bench.identify;

import org.jspecify.annotations.NullMarked;
