/** The spotline command: reads arguments, calls the rooms behind it, prints. No computation of its own. */
@NullMarked
package spotline.cli;

import org.jspecify.annotations.NullMarked;
