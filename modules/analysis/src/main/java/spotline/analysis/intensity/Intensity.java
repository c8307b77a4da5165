package spotline.analysis.intensity;

import java.util.List;
import java.util.OptionalDouble;
import spotline.analysis.background.Subtraction;
import spotline.core.Estimate;
import spotline.reference.Line;
import spotline.spectra.Window;

/**
 * The intensity of one line in one spectrum.
 *
 * @param peakEv measured binding energy of the top of the line, eV
 * @param window the area was taken in, measured binding energy
 * @param background what was subtracted, in words
 * @param area counts eV before transmission, contributions by counting and end points
 * @param wholePerWindow what the area must be multiplied by to be that of the whole line, tails and all, 1 or more; its
 *     uncertainty is that of the window and of the choice of background
 * @param detected whether the line is told from noise: its area above the critical level, its peak clear of the search's
 *     threshold
 * @param criticalLevel an area below it is not told from noise, counts eV; empty where the statistics are unknown
 * @param detectionLimit the smallest true area that is found reliably, counts eV; empty where the statistics are unknown
 * @param separatedFrom elements whose lines were fitted beside this one, so that nothing of them is in the area
 */
public record Intensity(
        Line line,
        String spectrum,
        double peakEv,
        double fwhmEv,
        Window window,
        String background,
        Estimate area,
        Estimate wholePerWindow,
        boolean detected,
        OptionalDouble criticalLevel,
        OptionalDouble detectionLimit,
        Subtraction subtraction,
        List<String> separatedFrom) {
    public Intensity {
        separatedFrom = List.copyOf(separatedFrom);
    }

    /** An intensity whose window holds the whole line. */
    public Intensity(
            Line line,
            String spectrum,
            double peakEv,
            double fwhmEv,
            Window window,
            String background,
            Estimate area,
            boolean detected,
            OptionalDouble criticalLevel,
            OptionalDouble detectionLimit,
            Subtraction subtraction) {
        this(
                line,
                spectrum,
                peakEv,
                fwhmEv,
                window,
                background,
                area,
                Estimate.exact(1),
                detected,
                criticalLevel,
                detectionLimit,
                subtraction,
                List.of());
    }
}
