package spotline.report;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import spotline.analysis.background.Linear;
import spotline.analysis.background.Subtraction;
import spotline.analysis.charge.ReferenceLineFit;
import spotline.core.Estimate;
import spotline.core.Provenance;
import spotline.core.Work;
import spotline.holder.SpectrumRole;
import spotline.run.LinkedSpectrum;
import spotline.spectra.BindingScan;
import spotline.spectra.Transmission;
import spotline.spectra.Window;

/** Invented spectra: Gaussian peaks, each with a step behind it, and noise from a fixed seed. */
final class ExampleSpectra {
    /** @param height counts */
    record Peak(double energyEv, double height, double fwhmEv) {
        double at(double energy) {
            double x = (energy - energyEv) / fwhmEv;
            return height * Math.exp(-4 * Math.log(2) * x * x);
        }

        private double step(double energy) {
            return 0.12 * height / (1 + Math.exp(-3 * (energy - energyEv) / fwhmEv));
        }
    }

    private ExampleSpectra() {}

    static BindingScan scan(
            String label, double low, double high, double step, double base, boolean countsKnown, List<Peak> peaks) {
        int n = (int) Math.round((high - low) / step) + 1;
        double[] energy = new double[n];
        double[] counts = new double[n];
        SplittableRandom random = new SplittableRandom(label.hashCode());
        for (int i = 0; i < n; i++) {
            energy[i] = low + i * step;
            double mean = base;
            for (Peak peak : peaks) mean += peak.at(energy[i]) + peak.step(energy[i]);
            // Sum of 12 even numbers: nearly normal, the same on every machine.
            double normal = -6;
            for (int k = 0; k < 12; k++) normal += random.nextDouble();
            counts[i] = Math.max(0, Math.rint(mean + Math.sqrt(mean) * normal));
        }
        return new BindingScan(
                label, 1486.6, energy, counts, countsKnown, OptionalDouble.of(0.5), OptionalDouble.of(20));
    }

    static LinkedSpectrum linked(BindingScan scan, String file, int block, String region, boolean survey) {
        return new LinkedSpectrum(
                scan.label(),
                new Provenance(file, "ab".repeat(32), block, 10 * block, "iso14976/1"),
                region,
                survey,
                SpectrumRole.MAIN,
                scan,
                new Transmission.Flat(),
                Optional.empty());
    }

    static Subtraction straight(BindingScan scan, Window window) {
        return Linear.of(5)
                .subtract(scan, window, scan.label(), Work.UNWATCHED)
                .result()
                .orElseThrow();
    }

    /** Curves made of the very peaks the scan was made of, over a window of it. */
    static ReferenceLineFit fit(BindingScan scan, String line, Window window, List<Peak> peaks) {
        int from = scan.firstAtOrAbove(window.lowEv());
        int to = scan.lastAtOrBelow(window.highEv()) + 1;
        double[] energies = new double[to - from];
        double[] background = new double[energies.length];
        double[] sum = new double[energies.length];
        double[][] curves = new double[peaks.size()][energies.length];
        for (int i = 0; i < energies.length; i++) {
            energies[i] = scan.energy(from + i);
            background[i] = scan.counts(from);
            for (Peak peak : peaks) background[i] += peak.step(energies[i]);
            sum[i] = background[i];
            for (int k = 0; k < curves.length; k++) {
                curves[k][i] = peaks.get(k).at(energies[i]);
                sum[i] += curves[k][i];
            }
        }
        List<ReferenceLineFit.Component> components = new java.util.ArrayList<>();
        for (int k = 0; k < curves.length; k++) {
            Peak peak = peaks.get(k);
            components.add(new ReferenceLineFit.Component(
                    k == 0 ? "C\u2013C/C\u2013H" : "C\u2013O",
                    "Voigt",
                    Estimate.of(peak.energyEv(), "counting/" + scan.label(), 0.02),
                    Estimate.of(peak.fwhmEv(), "counting/" + scan.label(), 0.03),
                    Estimate.of(peak.height() * peak.fwhmEv() * 1.0645, "counting/" + scan.label(), 40),
                    new ReferenceLineFit.Curve(curves[k])));
        }
        return new ReferenceLineFit(
                line,
                scan.label(),
                new ReferenceLineFit.Curve(energies),
                new ReferenceLineFit.Curve(background),
                new ReferenceLineFit.Curve(sum),
                components,
                1.08);
    }
}
