package spotline.demo;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;

/**
 * A spot and the spectra to take there, in order.
 *
 * @param id as the holder run names the spot
 * @param file name of its spectrum file
 * @param start of the first spectrum
 * @param quantified shell a quantified element: {@code "Ti" -> "2p"}
 */
public record SpotPlan(
        String id,
        String file,
        String sampleId,
        String sampleName,
        Surface surface,
        List<Scan> scans,
        OffsetDateTime start,
        Map<String, String> quantified) {
    /** Time lost between two spectra: the analyser settles. */
    static final double PAUSE_SECONDS = 12;

    public SpotPlan {
        scans = List.copyOf(scans);
    }

    /** Seconds from the start of the spot to the start of a scan. */
    double secondsBefore(int scan) {
        double seconds = 0;
        for (Scan earlier : scans.subList(0, scan)) seconds += earlier.seconds() + PAUSE_SECONDS;
        return seconds;
    }

    OffsetDateTime startOf(int scan) {
        return start.plusSeconds((long) Math.ceil(secondsBefore(scan)));
    }

    /** Potential at the middle of a scan less the surface's own, V: the drift is even in time. */
    double driftEv(int scan) {
        double middle = secondsBefore(scan) + 0.5 * scans.get(scan).seconds();
        return surface.driftEv() * middle / secondsBefore(scans.size());
    }
}
