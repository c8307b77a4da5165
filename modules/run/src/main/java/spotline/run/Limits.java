package spotline.run;

/**
 * Limits of checks across spectra and spots.
 *
 * @param photonEnergyAgreementEv header and record may differ by this, eV
 * @param surveySpanEv a spectrum at least this wide is a survey, eV
 * @param surveyNarrowRelative survey and narrow composition may differ by this
 * @param spotAgreementEv referenced positions of one sample may differ by this, eV
 */
public record Limits(
        double photonEnergyAgreementEv, double surveySpanEv, double surveyNarrowRelative, double spotAgreementEv) {}
