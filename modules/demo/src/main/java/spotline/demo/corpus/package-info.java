/**
 * Random surveys of known surfaces, to score an identification by. Physics of its own: nothing here may be shared with the
 * model that is scored, save published tables.
 */
@NullMarked
package spotline.demo.corpus;

import org.jspecify.annotations.NullMarked;
