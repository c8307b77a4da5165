package spotline.spectra;

import java.util.Arrays;

/** Relative intensity response of the spectrometer against kinetic energy. Only ratios of its values mean anything. */
public sealed interface Transmission {
    /** @param kineticEv kinetic energy, eV */
    double at(double kineticEv);

    /** What a table or report calls it. */
    String describe();

    /** Whether it changes any ratio of intensities. */
    default boolean corrects() {
        return true;
    }

    /** The same response at every energy. */
    record Flat() implements Transmission {
        @Override
        public double at(double kineticEv) {
            return 1;
        }

        @Override
        public String describe() {
            return "flat";
        }

        @Override
        public boolean corrects() {
            return false;
        }
    }

    /** Proportional to a power of the kinetic energy, 1 at 1000 eV. */
    record PowerLaw(double power) implements Transmission {
        public PowerLaw {
            if (!Double.isFinite(power)) throw new IllegalArgumentException("power must be finite, was " + power);
        }

        @Override
        public double at(double kineticEv) {
            return Math.pow(kineticEv / 1000, power);
        }

        @Override
        public String describe() {
            return "kinetic energy to the power " + power;
        }
    }

    /** Linear between listed points, the end values beyond them. */
    final class Tabulated implements Transmission {
        private final String origin;
        private final double[] kineticEv;
        private final double[] values;

        /**
         * @param kineticEv rising, eV
         * @param values above 0
         */
        public Tabulated(String origin, double[] kineticEv, double[] values) {
            this.origin = origin;
            this.kineticEv = kineticEv.clone();
            this.values = values.clone();
            if (kineticEv.length == 0 || kineticEv.length != values.length) {
                throw new IllegalArgumentException("a transmission table needs a value an energy");
            }
            for (int i = 0; i < values.length; i++) {
                if (!(values[i] > 0) || Double.isInfinite(values[i])) {
                    throw new IllegalArgumentException(
                            "transmission must be above 0, was " + values[i] + " at " + kineticEv[i] + " eV");
                }
                if (!Double.isFinite(kineticEv[i]) || (i > 0 && !(kineticEv[i] > kineticEv[i - 1]))) {
                    throw new IllegalArgumentException(
                            "kinetic energies must rise, did not at " + kineticEv[i] + " eV");
                }
            }
        }

        @Override
        public double at(double energyEv) {
            int found = Arrays.binarySearch(kineticEv, energyEv);
            if (found >= 0) return values[found];
            int above = -found - 1;
            if (above == 0) return values[0];
            if (above == values.length) return values[values.length - 1];
            double share = (energyEv - kineticEv[above - 1]) / (kineticEv[above] - kineticEv[above - 1]);
            return values[above - 1] + share * (values[above] - values[above - 1]);
        }

        @Override
        public String describe() {
            return origin;
        }
    }
}
