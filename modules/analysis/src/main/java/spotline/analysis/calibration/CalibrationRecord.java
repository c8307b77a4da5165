package spotline.analysis.calibration;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import spotline.core.Finding;
import spotline.core.Problem;
import spotline.core.Problems;
import spotline.spectra.BindingScan;

/**
 * A calibration of the energy scale, kept: what was measured, the correction it asks for, and how long it is good.
 *
 * @param date of the measurement
 * @param nextDue by when the scale is to be checked again
 * @param instrument in the lab's own words, empty when not known
 * @param source {@code "Al Ka"}
 * @param photonEnergyEv eV
 * @param passEnergyEv of the reference scans, eV
 * @param toleranceEv the scale was held against, eV
 * @param a slope of the correction {@code corrected = E + a E + b}
 * @param bEv its offset, eV
 * @param standardUncertaintyEv largest of the correction from 0 to 1000 eV, eV
 * @param verdict of the scale as found
 * @param lines a row a reference line
 */
public record CalibrationRecord(
        LocalDate date,
        LocalDate nextDue,
        String instrument,
        String source,
        boolean monochromated,
        double photonEnergyEv,
        OptionalDouble passEnergyEv,
        double toleranceEv,
        double a,
        double bEv,
        OptionalDouble standardUncertaintyEv,
        EnergyScale.Verdict verdict,
        List<Line> lines) {
    /** A correction larger than this asks for service, eV. */
    private static final double LARGEST = 3;

    private static final double SOURCE_AGREEMENT = 0.5;

    /**
     * One reference line as it was measured.
     *
     * @param intensity counts eV per second of a channel
     */
    public record Line(
            String line,
            double referenceEv,
            double measuredEv,
            OptionalDouble measurementU,
            OptionalDouble fwhmEv,
            OptionalDouble intensity) {
        public double deviationEv() {
            return measuredEv - referenceEv;
        }
    }

    public CalibrationRecord {
        lines = List.copyOf(lines);
        Problems.throwIfAny(check(date, nextDue, photonEnergyEv, toleranceEv, a, bEv));
    }

    private static List<Problem> check(
            LocalDate date, LocalDate nextDue, double photonEnergyEv, double toleranceEv, double a, double b) {
        List<Problem> problems = new ArrayList<>(EnergyScale.check(toleranceEv));
        if (nextDue.isBefore(date)) problems.add(new Problem("nextDue", nextDue.toString(), "no day before " + date));
        if (!(photonEnergyEv > 0)) problems.add(new Problem("photonEnergyEv", photonEnergyEv + " eV", "above 0 eV"));
        double worst = Math.max(Math.abs(b), Math.abs(1000 * a + b));
        if (!(worst <= LARGEST))
            problems.add(new Problem("a, bEv", "a correction of " + worst + " eV", "at most " + LARGEST + " eV"));
        return problems;
    }

    public static CalibrationRecord of(
            EnergyScale scale,
            LocalDate date,
            LocalDate nextDue,
            String instrument,
            String source,
            boolean monochromated,
            double photonEnergyEv,
            OptionalDouble passEnergyEv) {
        double u = 0;
        for (double end : new double[] {0, 1000}) {
            u = Math.max(
                    u,
                    scale.deviationAt(end)
                            .map(d -> d.standardUncertainty().orElse(Double.NaN))
                            .orElse(Double.NaN));
        }
        return new CalibrationRecord(
                date,
                nextDue,
                instrument,
                source,
                monochromated,
                photonEnergyEv,
                passEnergyEv,
                scale.toleranceEv(),
                scale.a(),
                scale.b(),
                Double.isNaN(u) ? OptionalDouble.empty() : OptionalDouble.of(u),
                scale.verdict(),
                scale.lines().stream()
                        .map(l -> new Line(
                                l.line(),
                                l.reference().value(),
                                l.measuredEv().value(),
                                l.measuredEv().standardUncertainty(),
                                l.fwhmEv(),
                                l.intensity()
                                        .map(i -> OptionalDouble.of(i.value()))
                                        .orElse(OptionalDouble.empty())))
                        .toList());
    }

    /** A measured binding energy on the corrected scale, eV. */
    public double corrected(double energyEv) {
        return energyEv * (1 + a) + bEv;
    }

    /** The same counts on the corrected scale; nothing measured is changed. */
    public BindingScan corrected(BindingScan scan) {
        double[] energy = scan.energies();
        for (int i = 0; i < energy.length; i++) energy[i] = corrected(energy[i]);
        return new BindingScan(
                scan.label(),
                scan.photonEnergyEv(),
                energy,
                scan.counts(),
                scan.countsKnown(),
                scan.secondsPerChannel(),
                scan.passEnergyEv());
    }

    /** Whether the record is of the source that excited a scan. */
    public boolean appliesTo(BindingScan scan) {
        return Math.abs(scan.photonEnergyEv() - photonEnergyEv) <= SOURCE_AGREEMENT;
    }

    /** What a run that uses this record has to be told. @param run day of the measurement, empty when not known */
    public List<Finding> findings(Optional<LocalDate> run) {
        List<Finding> findings = new ArrayList<>();
        findings.add(Finding.note(
                "energy-scale-corrected",
                Texts.ev(
                        "Binding energies are corrected by the calibration of %s: %+.3f eV at 0 eV, %+.3f eV at 1000 eV.",
                        date, corrected(0), corrected(1000) - 1000)));
        if (run.isEmpty()) {
            findings.add(Finding.note(
                    "energy-calibration-age",
                    "The day of the run is not known, so the age of the energy calibration is not either."));
        } else if (run.get().isAfter(nextDue)) {
            findings.add(Finding.caution(
                    "energy-calibration-overdue",
                    "The energy scale was last checked " + ChronoUnit.DAYS.between(date, run.get())
                            + " days before the run; it was due again on " + nextDue + "."));
        } else if (run.get().isBefore(date)) {
            findings.add(Finding.caution(
                    "energy-calibration-later",
                    "The energy calibration of " + date + " is later than the run of " + run.get() + "."));
        }
        if (verdict == EnergyScale.Verdict.UNDETERMINED) {
            findings.add(Finding.caution(
                    "energy-calibration-incomplete",
                    "The energy calibration rests on fewer than both ends of the scale: an offset at most."));
        } else if (verdict == EnergyScale.Verdict.OUTSIDE) {
            findings.add(Finding.caution(
                    "energy-scale-outside",
                    Texts.ev(
                            "The energy scale was outside its tolerance of %.2f eV when it was checked.",
                            toleranceEv)));
        } else if (verdict == EnergyScale.Verdict.NEARLY_USED) {
            findings.add(Finding.caution(
                    "energy-scale-nearly-used",
                    Texts.ev(
                            "The energy scale used over 70 %% of its tolerance of %.2f eV when checked.",
                            toleranceEv)));
        }
        return findings;
    }
}
