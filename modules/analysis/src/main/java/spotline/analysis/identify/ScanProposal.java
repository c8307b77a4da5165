package spotline.analysis.identify;

import java.util.OptionalDouble;
import spotline.spectra.Window;

/**
 * A narrow scan worth taking.
 *
 * @param line of the element, for the plan
 * @param window measured binding energies, eV
 * @param relativeUncertainty of the area by counting that the time reaches or betters
 * @param seconds for the whole window at the pass energy of the survey, whatever the step; empty where the survey's own
 *     time is not known
 */
public record ScanProposal(
        String element, String line, Window window, double relativeUncertainty, OptionalDouble seconds) {}
