package spotline.core;

import static java.util.Objects.requireNonNull;

/**
 * Something the analyst should know, with what was measured against which limit.
 *
 * @param rule stable identifier of the rule that raised it, lower-case words joined by hyphens
 * @param spot spot id, sample name and spectrum (file and block) it concerns; empty where it concerns none
 */
public record Finding(Severity severity, String rule, String spot, String sample, String spectrum, String message) {
    public Finding {
        requireNonNull(severity, "severity");
        requireNonNull(spot, "spot");
        requireNonNull(sample, "sample");
        requireNonNull(spectrum, "spectrum");
        if (rule.isBlank()) throw new IllegalArgumentException("a finding needs a rule");
        if (message.isBlank()) throw new IllegalArgumentException("a finding needs a message");
    }

    /** A finding that concerns the whole run until {@link #at} says more. */
    public static Finding of(Severity severity, String rule, String message) {
        return new Finding(severity, rule, "", "", "", message);
    }

    public static Finding note(String rule, String message) {
        return of(Severity.NOTE, rule, message);
    }

    public static Finding caution(String rule, String message) {
        return of(Severity.CAUTION, rule, message);
    }

    public static Finding stop(String rule, String message) {
        return of(Severity.STOP, rule, message);
    }

    /** The same finding placed at a spot; a place it already has is kept. */
    public Finding at(String newSpot, String newSample) {
        return new Finding(
                severity,
                rule,
                spot.isEmpty() ? newSpot : spot,
                sample.isEmpty() ? newSample : sample,
                spectrum,
                message);
    }

    /** The same finding tied to one spectrum; a spectrum it already names is kept. */
    public Finding in(String newSpectrum) {
        return new Finding(severity, rule, spot, sample, spectrum.isEmpty() ? newSpectrum : spectrum, message);
    }
}
