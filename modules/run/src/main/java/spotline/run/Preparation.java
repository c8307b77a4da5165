package spotline.run;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import spotline.core.Finding;
import spotline.holder.SpectrumRole;
import spotline.spectra.BindingScan;

/**
 * Counts as the treatment asks for them: corrected for dead time, freed of spikes, repeated scans summed. What was
 * measured is not altered: new spectra stand in for the old, and a finding tells of each thing done.
 *
 * <p>Dead time of a non-paralysable counter: n = m / (1 - m tau / t), t the time a channel was counted; above {@value
 * #LARGEST_LOSS} of the time lost nothing is corrected. The corrected counts scatter more than Poisson counts do, by a
 * factor of 1 + 3 m tau / t in the variance, which the finding says and the uncertainty does not hold.
 *
 * <p>A spike is a single channel above the mean of its four nearest neighbours by the stated number of standard deviations
 * of counting, and more than twice as far above the lower of its second neighbours as its nearest ones are: a line of three
 * channels at half its height, the narrowest that is told from a spike, is 1.6 times as far. It is replaced by that mean.
 * Where channels are wider than {@value #COARSEST_EV} eV, as in surveys, a line may stand in one channel and nothing is removed.
 *
 * <p>Scans are summed where they agree within counting: one that drifted or degraded is not.
 *
 * <p>Source: dead time G.F. Knoll, Radiation Detection and Measurement, chapter 4, from memory; spikes and sums common
 * practice, no source.
 */
final class Preparation {
    private static final double LARGEST_LOSS = 0.2;
    static final double COARSEST_EV = 0.2;
    private static final double SHARPER_THAN_LINES = 2;
    /** Scans whose difference has a chi-square this many standard deviations above its mean are not the same. */
    private static final double UNLIKE = 5;

    private final PreparationSettings settings;
    private final List<Finding> findings = new ArrayList<>();

    /** The spectra to treat and what was done to them. */
    record Prepared(List<LinkedSpectrum> spectra, List<Finding> findings) {
        Prepared {
            spectra = List.copyOf(spectra);
            findings = List.copyOf(findings);
        }
    }

    Preparation(PreparationSettings settings) {
        this.settings = settings;
    }

    List<Finding> findings() {
        return findings;
    }

    Prepared prepared(List<LinkedSpectrum> spectra) {
        return new Prepared(of(spectra), findings);
    }

    /** The spectra to treat, in the order of those they stand in for. */
    List<LinkedSpectrum> of(List<LinkedSpectrum> spectra) {
        List<LinkedSpectrum> prepared = new ArrayList<>();
        for (LinkedSpectrum s : spectra) {
            LinkedSpectrum next = s;
            if (settings.deadTimeSeconds().isPresent()) {
                next = deadTime(next, settings.deadTimeSeconds().getAsDouble());
            }
            if (settings.removeSpikes()) next = despiked(next);
            prepared.add(next);
        }
        return settings.sumScans() ? summed(prepared) : prepared;
    }

    private LinkedSpectrum deadTime(LinkedSpectrum spectrum, double tau) {
        BindingScan scan = spectrum.scan();
        if (!scan.countsKnown() || scan.secondsPerChannel().isEmpty()) {
            note(
                    spectrum,
                    "dead-time-not-corrected",
                    "Counts or collection time are unknown: no dead time was corrected.");
            return spectrum;
        }
        double seconds = scan.secondsPerChannel().getAsDouble();
        double[] counts = scan.counts();
        double worst = Arrays.stream(counts).max().orElse(0) * tau / seconds;
        if (worst > LARGEST_LOSS) {
            findings.add(Finding.caution(
                            "dead-time-too-large",
                            String.format(
                                    Locale.ROOT,
                                    "%.0f %% of the time was lost at the top (limit %.0f %%): nothing was corrected.",
                                    100 * worst,
                                    100 * LARGEST_LOSS))
                    .in(spectrum.label()));
            return spectrum;
        }
        Arrays.setAll(counts, i -> counts[i] / (1 - counts[i] * tau / seconds));
        note(
                spectrum,
                "dead-time-corrected",
                String.format(
                        Locale.ROOT,
                        "Counts were corrected for a dead time of %s s, by %.2f %% at the top; their variance is up to"
                                + " %.0f %% larger than stated.",
                        spotline.core.Decimal.text(tau),
                        100 * worst / (1 - worst),
                        300 * worst));
        return with(spectrum, counts);
    }

    private LinkedSpectrum despiked(LinkedSpectrum spectrum) {
        BindingScan scan = spectrum.scan();
        double[] counts = scan.counts();
        double[] cleaned = counts.clone();
        if (scan.stepEv() > COARSEST_EV) {
            note(
                    spectrum,
                    "spikes-not-looked-for",
                    String.format(
                            Locale.ROOT,
                            "Channels are %.2f eV apart (limit %.2f eV): a line may stand in one of them, and no spike was"
                                    + " removed.",
                            scan.stepEv(),
                            COARSEST_EV));
            return spectrum;
        }
        for (int i = 2; i < counts.length - 2; i++) {
            double beside = 0.25 * (counts[i - 2] + counts[i - 1] + counts[i + 1] + counts[i + 2]);
            double largest = Math.max(counts[i - 1], counts[i + 1]);
            double limit = settings.spikeSignificance() * Math.sqrt(Math.max(1, beside));
            if (!scan.countsKnown() || counts[i] - beside < limit || counts[i] - largest < limit) continue;
            double foot = Math.min(counts[i - 2], counts[i + 2]);
            if (counts[i] - foot < SHARPER_THAN_LINES * (largest - foot)) continue;
            cleaned[i] = beside;
            note(
                    spectrum,
                    "spike-removed",
                    String.format(
                            Locale.ROOT,
                            "A spike of %.0f counts at %.2f eV, %.0f standard deviations above its neighbours, was"
                                    + " replaced by their mean of %.0f.",
                            counts[i],
                            scan.energy(i),
                            (counts[i] - beside) / Math.sqrt(Math.max(1, beside)),
                            beside));
        }
        return Arrays.equals(counts, cleaned) ? spectrum : with(spectrum, cleaned);
    }

    private List<LinkedSpectrum> summed(List<LinkedSpectrum> spectra) {
        Map<String, LinkedSpectrum> sums = new LinkedHashMap<>();
        for (LinkedSpectrum s : spectra) {
            boolean open = s.role() == SpectrumRole.MAIN || s.role() == SpectrumRole.UNKNOWN;
            LinkedSpectrum first = open ? sums.get(s.region()) : null;
            if (s.role() == SpectrumRole.REPEAT) {
                note(s, "scan-not-summed", "A repeat shows drift and degradation: it is kept beside the sum.");
            }
            if (first == null) {
                sums.put(open ? s.region() : s.region() + "/" + s.label(), s);
            } else if (!alike(first, s)) {
                note(
                        s,
                        "scan-not-summed",
                        "It differs from " + first.label() + " in energies or settings: not summed.");
                sums.put(s.region() + "/" + s.label(), s);
            } else if (unlike(first.scan(), s.scan())) {
                findings.add(Finding.caution(
                                "scan-not-summed",
                                "It differs from " + first.label()
                                        + " by more than counting allows (drift, degradation or another place?): not"
                                        + " summed.")
                        .in(s.label()));
                sums.put(s.region() + "/" + s.label(), s);
            } else {
                sums.put(s.region(), sum(first, s));
            }
        }
        return List.copyOf(sums.values());
    }

    private static boolean alike(LinkedSpectrum a, LinkedSpectrum b) {
        return Arrays.equals(a.scan().energies(), b.scan().energies())
                && a.scan().countsKnown()
                && b.scan().countsKnown()
                && a.scan().photonEnergyEv() == b.scan().photonEnergyEv()
                && a.scan().passEnergyEv().equals(b.scan().passEnergyEv())
                && a.transmission().describe().equals(b.transmission().describe());
    }

    /** Chi-square of the difference of two scans, brought to one time, against its mean. */
    private static boolean unlike(BindingScan a, BindingScan b) {
        double ratio = 1;
        if (a.secondsPerChannel().isPresent() && b.secondsPerChannel().isPresent()) {
            ratio = a.secondsPerChannel().getAsDouble() / b.secondsPerChannel().getAsDouble();
        }
        double[] first = a.counts();
        double[] second = b.counts();
        double sum = 0;
        for (int i = 0; i < first.length; i++) {
            double difference = first[i] - ratio * second[i];
            sum += difference * difference / Math.max(1, first[i] + ratio * ratio * second[i]);
        }
        return sum > first.length + UNLIKE * Math.sqrt(2.0 * first.length);
    }

    private LinkedSpectrum sum(LinkedSpectrum a, LinkedSpectrum b) {
        double[] counts = a.scan().counts();
        double[] more = b.scan().counts();
        Arrays.setAll(counts, i -> counts[i] + more[i]);
        OptionalDouble ta = a.scan().secondsPerChannel();
        OptionalDouble tb = b.scan().secondsPerChannel();
        OptionalDouble seconds = ta.isPresent() && tb.isPresent()
                ? OptionalDouble.of(ta.getAsDouble() + tb.getAsDouble())
                : OptionalDouble.empty();
        String label = a.label() + "+" + b.label().substring(b.label().lastIndexOf('#') + 1);
        LinkedSpectrum sum = replaced(a, label, counts, seconds);
        note(sum, "scans-summed", a.label() + " and " + b.label() + " were summed.");
        return sum;
    }

    private static LinkedSpectrum with(LinkedSpectrum spectrum, double[] counts) {
        return replaced(spectrum, spectrum.label(), counts, spectrum.scan().secondsPerChannel());
    }

    private static LinkedSpectrum replaced(
            LinkedSpectrum spectrum, String label, double[] counts, OptionalDouble seconds) {
        BindingScan scan = spectrum.scan();
        return new LinkedSpectrum(
                label,
                spectrum.source(),
                spectrum.region(),
                spectrum.survey(),
                spectrum.role(),
                new BindingScan(
                        label,
                        scan.photonEnergyEv(),
                        scan.energies(),
                        counts,
                        scan.countsKnown(),
                        seconds,
                        scan.passEnergyEv()),
                spectrum.transmission(),
                spectrum.time(),
                spectrum.header());
    }

    private void note(LinkedSpectrum spectrum, String rule, String message) {
        findings.add(Finding.note(rule, message).in(spectrum.label()));
    }
}
