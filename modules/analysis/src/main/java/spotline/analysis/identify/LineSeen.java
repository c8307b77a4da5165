package spotline.analysis.identify;

/**
 * A line of an element found in a survey.
 *
 * @param line name of the line or Auger group: {@code "Ti 2p3/2"}, {@code "O KL23L23"}
 * @param energyEv measured binding energy, eV
 * @param significance of the peak
 * @param ratioToExpected area over the area expected from the main line; 1 for the main line itself, NaN where nothing
 *     is expected of it (Auger groups)
 */
public record LineSeen(String line, double energyEv, double significance, double ratioToExpected) {}
