/** Opens the window. What is decided and drawn lives in the packages below. */
@NullMarked
package spotline.viewer;

import org.jspecify.annotations.NullMarked;
