/**
 * Checks of a plan against its holder before anything is loaded, and the cautions a plan calls for. Findings only: nothing
 * here reads a file, changes a plan or silences a finding.
 */
@NullMarked
package spotline.holder.check;

import org.jspecify.annotations.NullMarked;
