/**
 * JSON files that people write: checked against a published schema, every fault at once and in plain words. Nothing here
 * knows what a holder is, and nothing here touches a file other than the one it is asked to read.
 */
@NullMarked
package spotline.holder.json;

import org.jspecify.annotations.NullMarked;
