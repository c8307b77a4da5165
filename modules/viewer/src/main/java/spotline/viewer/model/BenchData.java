package spotline.viewer.model;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.analysis.background.Subtraction;
import spotline.analysis.charge.ReferenceLineFit;
import spotline.analysis.identify.ElementSeen;
import spotline.analysis.identify.Identification;
import spotline.analysis.identify.LineSeen;
import spotline.analysis.identify.SurveyModel;
import spotline.analysis.identify.Verdict;
import spotline.analysis.peakfit.FittedComponent;
import spotline.analysis.peakfit.PeakFitResult;
import spotline.run.LineFit;
import spotline.run.LinkedSpectrum;
import spotline.run.MeasuredIntensity;
import spotline.run.SpotResult;

/**
 * One scan with everything that was done to it.
 *
 * <p>Units: measured binding energies in eV, the scan's ordinate.
 *
 * @param ordinate key of what the values are, for the axis
 * @param shiftEv what is added to measured energies; empty when the reference failed
 * @param backgrounds subtracted under each window
 * @param model fitted sum; empty when nothing was fitted
 * @param components of the fit, background included
 * @param residuals measured less fitted sum, in standard deviations; empty when nothing was fitted
 */
public record BenchData(
        String spot,
        String spectrum,
        String name,
        boolean survey,
        String ordinate,
        double photonEnergyEv,
        OptionalDouble shiftEv,
        Curve measured,
        List<Curve> backgrounds,
        List<WindowMark> windows,
        Optional<Curve> model,
        List<Curve> components,
        Optional<Curve> residuals,
        List<LineMark> lines) {
    /** Energies an intensity was taken between. */
    public record WindowMark(String line, double lowEv, double highEv) {}

    /** A line that was found. */
    public record LineMark(String line, double energyEv, boolean sure) {}

    public BenchData {
        backgrounds = List.copyOf(backgrounds);
        windows = List.copyOf(windows);
        components = List.copyOf(components);
        lines = List.copyOf(lines);
    }

    public static Optional<BenchData> of(SpotResult spot, String spectrum) {
        return spot.spectra().stream()
                .filter(s -> s.label().equals(spectrum))
                .findFirst()
                .map(s -> of(spot, s));
    }

    private static BenchData of(SpotResult spot, LinkedSpectrum s) {
        Curve measured = new Curve(s.region(), s.scan().energies(), s.scan().counts());
        List<Curve> backgrounds = new ArrayList<>();
        List<WindowMark> windows = new ArrayList<>();
        for (MeasuredIntensity m : spot.intensities()) {
            if (!m.intensity().spectrum().equals(s.label())) continue;
            String line = m.intensity().line().toString();
            windows.add(new WindowMark(
                    line, m.intensity().window().lowEv(), m.intensity().window().highEv()));
            backgrounds.add(curve(line, measured, m.intensity().subtraction()));
        }
        Fitted fitted = fitted(spot, s);
        return new BenchData(
                spot.spot(),
                s.label(),
                s.region(),
                s.survey(),
                s.scan().countsKnown() ? "bench.counts" : "bench.intensity",
                s.scan().photonEnergyEv(),
                spot.charge().shiftEv(),
                measured,
                backgrounds,
                windows,
                fitted.model(),
                fitted.components(),
                fitted.residuals(),
                lines(spot.identification(), s));
    }

    static Curve curve(String line, Curve measured, Subtraction subtraction) {
        return new Curve(
                line,
                Arrays.copyOfRange(measured.energies(), subtraction.from(), subtraction.to()),
                subtraction.backgrounds());
    }

    private record Fitted(Optional<Curve> model, List<Curve> components, Optional<Curve> residuals) {
        static final Fitted NOTHING = new Fitted(Optional.empty(), List.of(), Optional.empty());
    }

    private static Fitted fitted(SpotResult spot, LinkedSpectrum s) {
        if (s.survey()) {
            return spot.identification()
                    .flatMap(Identification::detail)
                    .map(d -> ofSurvey(d.model()))
                    .orElse(Fitted.NOTHING);
        }
        Optional<LineFit> own =
                spot.fits().stream().filter(f -> f.spectrum().equals(s.label())).findFirst();
        if (own.isPresent()) return of(own.get().result());
        return spot.charge()
                .fit()
                .filter(f -> f.spectrum().equals(s.label()))
                .map(f -> ofReference(f, s))
                .orElse(Fitted.NOTHING);
    }

    private static Fitted of(PeakFitResult fit) {
        double[] background = fit.background();
        List<Curve> components = new ArrayList<>();
        for (FittedComponent c : fit.components()) {
            double[] above = c.curve();
            for (int i = 0; i < above.length; i++) above[i] += background[i];
            components.add(new Curve(c.name(), fit.energies(), above));
        }
        return new Fitted(
                Optional.of(new Curve("model", fit.energies(), fit.sum())),
                components,
                Optional.of(new Curve("residual", fit.energies(), fit.residuals())));
    }

    /** The same with another fit in place of what it has. */
    BenchData with(PeakFitResult fit) {
        Fitted fitted = of(fit);
        return new BenchData(
                spot,
                spectrum,
                name,
                survey,
                ordinate,
                photonEnergyEv,
                shiftEv,
                measured,
                backgrounds,
                windows,
                fitted.model(),
                fitted.components(),
                fitted.residuals(),
                lines);
    }

    private static Fitted ofSurvey(SurveyModel model) {
        double[] energies = model.energies();
        double[] residual = model.residual();
        double[] deviation = model.standardDeviation();
        for (int i = 0; i < residual.length; i++) residual[i] = deviation[i] > 0 ? residual[i] / deviation[i] : 0;
        return new Fitted(
                Optional.of(new Curve("model", energies, model.fittedSum())),
                List.of(),
                Optional.of(new Curve("residual", energies, residual)));
    }

    private static Fitted ofReference(ReferenceLineFit fit, LinkedSpectrum s) {
        double[] energies = fit.energies().copy();
        double[] background = fit.background().copy();
        double[] sum = fit.sum().copy();
        List<Curve> components = new ArrayList<>();
        for (ReferenceLineFit.Component c : fit.components()) {
            double[] above = c.curve().copy();
            for (int i = 0; i < above.length; i++) above[i] += background[i];
            components.add(new Curve(c.name(), energies, above));
        }
        int first = s.scan().firstAtOrAbove(energies[0]);
        double[] residual = new double[energies.length];
        for (int i = 0; i < residual.length; i++) {
            double counts = s.scan().counts(Math.min(first + i, s.scan().channels() - 1));
            residual[i] = (counts - sum[i]) / Math.sqrt(Math.max(1, sum[i]));
        }
        return new Fitted(
                Optional.of(new Curve("model", energies, sum)),
                components,
                Optional.of(new Curve("residual", energies, residual)));
    }

    private static List<LineMark> lines(Optional<Identification> identification, LinkedSpectrum s) {
        List<LineMark> marks = new ArrayList<>();
        if (identification.isEmpty()) return marks;
        for (ElementSeen element : identification.get().elements()) {
            for (LineSeen line : element.lines()) {
                double at = line.energyEv();
                if (at < s.scan().range().lowEv() || at > s.scan().range().highEv()) continue;
                marks.add(new LineMark(line.line(), at, element.verdict() == Verdict.PRESENT));
            }
        }
        return marks;
    }

    /** The same with another window of a line, and the background under it where one exists. */
    BenchData withWindow(String line, double lowEv, double highEv, Optional<Curve> background) {
        List<WindowMark> marks = new ArrayList<>();
        for (WindowMark w : windows) marks.add(w.line().equals(line) ? new WindowMark(line, lowEv, highEv) : w);
        List<Curve> curves = new ArrayList<>();
        for (Curve c : backgrounds) if (!c.name().equals(line)) curves.add(c);
        background.ifPresent(curves::add);
        return new BenchData(
                spot,
                spectrum,
                name,
                survey,
                ordinate,
                photonEnergyEv,
                shiftEv,
                measured,
                curves,
                marks,
                model,
                components,
                residuals,
                lines);
    }

    /** The same with one window more. */
    BenchData withMark(WindowMark mark) {
        List<WindowMark> marks = new ArrayList<>(windows);
        marks.add(mark);
        return new BenchData(
                spot,
                spectrum,
                name,
                survey,
                ordinate,
                photonEnergyEv,
                shiftEv,
                measured,
                backgrounds,
                marks,
                model,
                components,
                residuals,
                lines);
    }

    /** Lines that were found near a measured energy, eV. */
    public List<LineMark> linesNear(double measuredEv) {
        return lines.stream()
                .filter(l -> Math.abs(l.energyEv() - measuredEv) <= LineCandidates.REACH_EV)
                .toList();
    }

    /** Measured value of the channel nearest to an energy. */
    public double measuredAt(double energyEv) {
        int best = 0;
        for (int i = 1; i < measured.channels(); i++) {
            if (Math.abs(measured.energy(i) - energyEv) < Math.abs(measured.energy(best) - energyEv)) best = i;
        }
        return measured.value(best);
    }
}
