package spotline.analysis.peakfit;

import static java.util.Objects.requireNonNull;

import java.util.Optional;
import spotline.analysis.peakfit.ParameterRule.Fixed;
import spotline.analysis.peakfit.ParameterRule.Own;
import spotline.reference.Line;

/**
 * The partner with j = l - 1/2 that a component of a spin-orbit doublet brings.
 *
 * @param line whole nl: {@code Ti 2p}
 * @param splittingEv partner's position less the component's, eV; empty: as the reference data have it
 * @param areaRatio partner's area over the component's; empty: as the reference data have it
 * @param widthRatio partner's widths over the component's
 * @param lorentzianFwhm partner's Lorentzian width, eV, in place of what the ratio makes it: larger than the component's
 *     where Coster-Kronig decay shortens the partner's life; empty: by the ratio, as for a shape without such a width
 */
public record DoubletRule(
        Line line, Optional<Own> splittingEv, Optional<Own> areaRatio, Own widthRatio, Optional<Own> lorentzianFwhm) {
    /** Name of the shape parameter that {@link #lorentzianFwhm} is about. */
    static final String LORENTZIAN = "lorentzianFwhm";

    public DoubletRule {
        requireNonNull(line, "line");
        requireNonNull(splittingEv, "splittingEv");
        requireNonNull(areaRatio, "areaRatio");
        requireNonNull(widthRatio, "widthRatio");
        requireNonNull(lorentzianFwhm, "lorentzianFwhm");
    }

    /** Splitting and area ratio of the reference data, both widths alike. */
    public static DoubletRule of(Line line) {
        return new DoubletRule(line.whole(), Optional.empty(), Optional.empty(), new Fixed(1), Optional.empty());
    }

    public DoubletRule withWidthRatio(Own ratio) {
        return new DoubletRule(line, splittingEv, areaRatio, ratio, lorentzianFwhm);
    }

    public DoubletRule withLorentzianFwhm(Own width) {
        return new DoubletRule(line, splittingEv, areaRatio, widthRatio, Optional.of(width));
    }

    /** What the partner of a component is called: {@code "oxide 2p1/2"}. */
    String partnerName(String component) {
        return component + " " + line.whole().low().orbital();
    }
}
