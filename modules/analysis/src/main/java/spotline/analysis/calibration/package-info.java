/**
 * The spectrometer's scales: where reference lines were measured, the energy correction they ask for, how good and how old
 * it is. No sample's charge reference is decided here.
 */
@NullMarked
package spotline.analysis.calibration;

import org.jspecify.annotations.NullMarked;
