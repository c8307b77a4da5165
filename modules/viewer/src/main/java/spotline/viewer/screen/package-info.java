/** The parts of the window. They draw what the models say and report what the analyst does; nothing is decided here. */
@NullMarked
package spotline.viewer.screen;

import org.jspecify.annotations.NullMarked;
