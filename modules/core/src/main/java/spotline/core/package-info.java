/** The few words every room speaks: estimates, findings, places, outcomes, work. Nothing here knows what a spectrum is. */
@NullMarked
package spotline.core;

import org.jspecify.annotations.NullMarked;
