package spotline.formats.iso14976;

import java.util.List;

/**
 * Items 33 to 36: how the signal was collected.
 *
 * @param mode as the file gives it; the standard's words are {@code analogue} and {@code pulse counting}
 * @param collectionTime s per scan and channel
 * @param timeCorrection s: dead time of pulse counting, time constant of an analogue signal
 */
public record Signal(String mode, Real collectionTime, Real scans, Real timeCorrection) {
    public static final String PULSE_COUNTING = "pulse counting";
    public static final String ANALOGUE = "analogue";
    static final List<String> MODES = List.of(ANALOGUE, PULSE_COUNTING);

    static final Signal UNKNOWN = new Signal(PULSE_COUNTING, Real.UNKNOWN, Real.UNKNOWN, Real.UNKNOWN);

    public Signal {
        Text.check("signal mode", mode);
    }
}
