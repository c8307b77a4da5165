/**
 * The rules that weigh plan, mounts, neighbours, spectra and results together, each with its limits, and what explains
 * what among their findings. No rule measures or changes anything: a rule reads one immutable view of the run.
 */
@NullMarked
package spotline.run.findings;

import org.jspecify.annotations.NullMarked;
