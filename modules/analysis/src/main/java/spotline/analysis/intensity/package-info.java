/** Intensities of lines: windows laid on the data, areas above a background, critical levels. */
@NullMarked
package spotline.analysis.intensity;

import org.jspecify.annotations.NullMarked;
