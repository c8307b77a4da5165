/** Numbers and words as people read them: digits by uncertainty, untrusted text made harmless. No file format here. */
@NullMarked
package spotline.report.text;

import org.jspecify.annotations.NullMarked;
