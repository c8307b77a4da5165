/** Which elements a survey spectrum shows, and by which lines. Finds; never quantifies and never references energies. */
@NullMarked
package spotline.analysis.identify;

import org.jspecify.annotations.NullMarked;
