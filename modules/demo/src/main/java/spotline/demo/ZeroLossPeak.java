package spotline.demo;

/**
 * A peak of electrons that lost no energy: a Lorentzian of the natural width convolved with a Gaussian.
 *
 * @param bindingEv position on the apparent binding-energy scale, eV
 * @param area whole area, counts·eV before transmission
 * @param gaussianFwhmEv full width of everything but the natural width: analyser, source, chemical broadening
 * @param lorentzianFwhmEv natural full width
 */
public record ZeroLossPeak(double bindingEv, double area, double gaussianFwhmEv, double lorentzianFwhmEv) {
    public ZeroLossPeak {
        if (!(area >= 0)) throw new IllegalArgumentException("area must be 0 or more, was " + area);
        if (!(gaussianFwhmEv >= 0) || !(lorentzianFwhmEv >= 0)) {
            throw new IllegalArgumentException("widths must be 0 eV or more");
        }
    }
}
