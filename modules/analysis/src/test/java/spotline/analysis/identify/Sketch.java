package spotline.analysis.identify;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import spotline.reference.Line;
import spotline.reference.LineData;
import spotline.reference.ReferenceData;
import spotline.spectra.BindingScan;

/** A plain simulated survey: Gaussian lines of tabulated areas on a slope, each with a step, Poisson noise. */
final class Sketch {
    private static final double FWHM = 2.2;

    private final double photonEv;
    private final double shiftEv;
    private final List<double[]> peaks = new ArrayList<>();

    /** @param chargingEv added to every binding energy */
    Sketch(double photonEv, double chargingEv) {
        this.photonEv = photonEv;
        this.shiftEv = chargingEv;
    }

    Sketch element(String symbol, double amount) {
        ReferenceData data = ReferenceData.shipped();
        for (LineData shell :
                data.lines(spotline.reference.Elements.bySymbol(symbol).orElseThrow(), photonEv)) {
            for (Line member : shell.members()) {
                double binding = data.bindingEnergy(member).orElseThrow().valueEv();
                double kinetic = photonEv - binding;
                double sigma = data.crossSection(member, photonEv).orElse(0);
                if (kinetic < 100 || binding < 12) continue;
                double width = data.naturalWidth(member).map(w -> w.fwhmEv()).orElse(0.5);
                peaks.add(new double[] {
                    binding + shiftEv, amount * sigma * Math.pow(kinetic / 1000, 0.75), Math.hypot(FWHM, width)
                });
            }
        }
        return this;
    }

    /** A bump that belongs to no element. */
    Sketch bump(double energyEv, double area) {
        peaks.add(new double[] {energyEv, area, FWHM});
        return this;
    }

    /** A peak of every line, repeated elsewhere and weaker. */
    Sketch repeated(double moveEv, double share) {
        for (double[] p : List.copyOf(peaks)) peaks.add(new double[] {p[0] + moveEv, p[1] * share, p[2]});
        return this;
    }

    double[] expected(double[] energy) {
        double[] counts = new double[energy.length];
        for (int i = 0; i < energy.length; i++) {
            double sum = 400 + 1.2 * Math.max(0, energy[i]);
            for (double[] p : peaks) {
                double sigma = p[2] / 2.3548;
                double t = (energy[i] - p[0]) / sigma;
                if (t < -8) continue;
                if (t < 8) sum += p[1] / (sigma * Math.sqrt(2 * Math.PI)) * Math.exp(-0.5 * t * t);
                if (t > 0) {
                    double loss = energy[i] - p[0];
                    sum += 0.6 * p[1] * 2866 * loss / ((1643 + loss * loss) * (1643 + loss * loss));
                }
            }
            counts[i] = sum;
        }
        return counts;
    }

    BindingScan scan(long seed) {
        int n = 1301;
        double[] energy = new double[n];
        for (int i = 0; i < n; i++) energy[i] = -5 + i;
        return noisy(energy, expected(energy), seed, photonEv);
    }

    static BindingScan noisy(double[] energy, double[] expected, long seed, double photonEv) {
        Random random = new Random(seed);
        double[] counts = new double[expected.length];
        for (int i = 0; i < counts.length; i++) {
            counts[i] = Math.max(0, Math.rint(expected[i] + Math.sqrt(expected[i]) * random.nextGaussian()));
        }
        return new BindingScan(
                "sketch", photonEv, energy, counts, true, OptionalDouble.of(0.1), OptionalDouble.empty());
    }
}
