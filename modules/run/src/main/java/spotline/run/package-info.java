/**
 * One loaded holder treated from its spectra to compositions: linking, the treatment as data, the pipeline, results. Only
 * this room owns threads. Nothing here draws or prints.
 */
@NullMarked
package spotline.run;

import org.jspecify.annotations.NullMarked;
