/** The fit-model file: reading it with every fault at once, and writing a model as data. No fitting happens here. */
@NullMarked
package spotline.run.fitmodel;

import org.jspecify.annotations.NullMarked;
