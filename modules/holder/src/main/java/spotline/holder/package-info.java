/**
 * One loaded holder as people describe it: the holder-run file, the plan it amounts to, and holder templates. Values and
 * the readers that make them; no spectrum is read here and nothing is treated.
 */
@NullMarked
package spotline.holder;

import org.jspecify.annotations.NullMarked;
