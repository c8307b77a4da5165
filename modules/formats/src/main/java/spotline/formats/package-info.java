/**
 * From a file of an open format to {@link spotline.formats.SpectrumFile}: what every reader comes to. The formats
 * themselves live in the packages below; nothing here treats a spectrum or knows what a holder is.
 */
@NullMarked
package spotline.formats;

import org.jspecify.annotations.NullMarked;
