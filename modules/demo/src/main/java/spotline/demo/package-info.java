/**
 * Makes invented spectra from stated physics and a seed: the demonstration holder, and surfaces for test corpora. Nothing
 * here was measured, nothing here treats a spectrum, and no other part of the program may lean on it.
 */
@NullMarked
package spotline.demo;

import org.jspecify.annotations.NullMarked;
