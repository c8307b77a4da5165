/**
 * Charge referencing as a decision: which energy reference a spot gets, from what evidence, how sure. A decision is a
 * number applied at the axis; no spectrum is ever changed.
 */
@NullMarked
package spotline.analysis.charge;

import org.jspecify.annotations.NullMarked;
