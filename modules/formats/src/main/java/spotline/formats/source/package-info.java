/**
 * What all readers share: bounded lines of bytes, numbers from bytes and as text, limits, warnings, and how sure a
 * reader is. No format's own rules.
 */
@NullMarked
package spotline.formats.source;

import org.jspecify.annotations.NullMarked;
