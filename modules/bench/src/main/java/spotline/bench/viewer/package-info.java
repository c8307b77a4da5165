/** How fast the window is: starting, choosing, dragging. Draws on a screen that nobody sees; the bars are the viewer's own. */
@NullMarked
package spotline.bench.viewer;

import org.jspecify.annotations.NullMarked;
