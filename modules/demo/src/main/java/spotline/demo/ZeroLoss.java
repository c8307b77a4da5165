package spotline.demo;

/** Electrons that lost no energy, as a shape on the apparent binding-energy scale. */
public sealed interface ZeroLoss {
    /** Whole area, counts·eV before transmission. */
    double area();

    /** Where its transform's phase is anchored, eV. */
    double bindingEv();

    double gaussianFwhmEv();

    /** Transform at frequency s of the shape at 0 eV, without area and Gaussian. */
    Complex shape(double s);

    /**
     * A line: a Lorentzian of the natural width, to be convolved with a Gaussian.
     *
     * @param gaussianFwhmEv full width of everything but the natural width: analyser, source, chemical broadening
     * @param lorentzianFwhmEv natural full width
     */
    record Peak(double bindingEv, double area, double gaussianFwhmEv, double lorentzianFwhmEv) implements ZeroLoss {
        public Peak {
            if (!(area >= 0)) throw new IllegalArgumentException("area must be 0 or more, was " + area);
            if (!(gaussianFwhmEv >= 0) || !(lorentzianFwhmEv >= 0)) {
                throw new IllegalArgumentException("widths must be 0 eV or more");
            }
        }

        @Override
        public Complex shape(double s) {
            return new Complex(StrictMath.exp(-0.5 * lorentzianFwhmEv * s), 0);
        }
    }

    /**
     * A flat band of occupied states from the Fermi level down.
     *
     * <p>Its transform is {@code (1 - exp(-i s w)) / (i s w)} times that of the thermal edge,
     * {@code pi kT s / sinh(pi kT s)} (the transform of minus the derivative of the Fermi function).
     *
     * @param bindingEv of the Fermi level
     * @param widthEv of the band, w
     */
    record FermiBand(double bindingEv, double area, double gaussianFwhmEv, double widthEv) implements ZeroLoss {
        /** kT at 300 K. Source: CODATA 2022 Boltzmann constant, 8.617333e-5 eV/K. */
        static final double THERMAL_EV = 8.617333e-5 * 300;

        public FermiBand {
            if (!(area >= 0)) throw new IllegalArgumentException("area must be 0 or more, was " + area);
            if (!(widthEv > 0)) throw new IllegalArgumentException("a band needs a width above 0 eV");
        }

        @Override
        public Complex shape(double s) {
            if (s == 0) return Complex.ONE;
            double x = s * widthEv;
            double thermal = Math.PI * THERMAL_EV * s;
            return new Complex(StrictMath.sin(x) / x, (StrictMath.cos(x) - 1) / x)
                    .times(thermal / StrictMath.sinh(thermal));
        }
    }
}
