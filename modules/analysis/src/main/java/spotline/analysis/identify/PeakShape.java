package spotline.analysis.identify;

/**
 * A line of natural (Lorentzian) width seen through a Gaussian analyser: pseudo-Voigt of unit area.
 *
 * <p>Units: per eV. Errors: none; the tail is cut where the shape has fallen below about 1 % of its top.
 *
 * <p>Source: P. Thompson, D.E. Cox, J.B. Hastings, J. Appl. Cryst. 20 (1987) 79, widths and mixing.
 */
final class PeakShape {
    private static final double GAUSS = 4 * Math.log(2);
    private static final double GAUSS_TOP = 2 * Math.sqrt(Math.log(2) / Math.PI);

    final double fwhmEv;
    private final double mixing;

    PeakShape(double gaussianEv, double lorentzianEv) {
        double g = gaussianEv;
        double l = lorentzianEv;
        fwhmEv = Math.pow(
                g * g * g * g * g
                        + 2.69269 * g * g * g * g * l
                        + 2.42843 * g * g * g * l * l
                        + 4.47163 * g * g * l * l * l
                        + 0.07842 * g * l * l * l * l
                        + l * l * l * l * l,
                0.2);
        double q = l / fwhmEv;
        mixing = 1.36603 * q - 0.47719 * q * q + 0.11116 * q * q * q;
    }

    double reachEv() {
        return fwhmEv * (1.5 + 2 * mixing);
    }

    double at(double distanceEv) {
        double x = distanceEv / fwhmEv;
        double gauss = GAUSS_TOP / fwhmEv * Math.exp(-GAUSS * x * x);
        if (mixing < 0.01) return gauss;
        double lorentz = 2 / (Math.PI * fwhmEv * (1 + 4 * x * x));
        return (1 - mixing) * gauss + mixing * lorentz;
    }

    void addTo(Curve.Builder builder, SurveyGrid grid, double centreEv, double area) {
        double reach = reachEv();
        double perChannel = area;
        int last = Math.min(grid.channels, grid.at(centreEv + reach));
        for (int i = grid.at(centreEv - reach); i < last; i++) {
            builder.add(i, perChannel * at(grid.energy[i] - centreEv));
        }
    }
}
