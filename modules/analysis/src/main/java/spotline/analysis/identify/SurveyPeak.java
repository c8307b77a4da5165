package spotline.analysis.identify;

/**
 * A feature of a survey that stands out of its surroundings.
 *
 * @param energyEv measured binding energy of its top, eV
 * @param significance response of the search filter over its standard deviation
 * @param area net area, counts eV, as the filter estimates it for the width it is tuned to
 */
public record SurveyPeak(double energyEv, double significance, double area) {}
