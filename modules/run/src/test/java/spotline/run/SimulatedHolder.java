package spotline.run;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.random.RandomGenerator;
import spotline.core.Provenance;
import spotline.core.ReadException;
import spotline.holder.HolderPlan;
import spotline.holder.HolderRunReader;
import spotline.holder.SpectrumRole;
import spotline.holder.Spot;
import spotline.numerics.random.PoissonSampler;
import spotline.numerics.random.RandomStreams;
import spotline.numerics.shape.Voigt;
import spotline.reference.Line;
import spotline.reference.NaturalWidth;
import spotline.reference.ReferenceData;
import spotline.spectra.BindingScan;
import spotline.spectra.Transmission;

/**
 * A small holder with everything drawn that the program cannot know: the true cross sections, mean free path and response
 * scatter about what it takes for granted by the uncertainties it states, the energy of hydrocarbon about its reference
 * value, and the surface potential at will.
 *
 * <p>Four narrow scans of a sodium silicate with carbon mixed into it; zero-loss Voigt lines, their tails by the
 * three-parameter loss function of SiO2, which is none that is subtracted, on a smooth background.
 */
record SimulatedHolder(SpotInput input, Map<String, Double> truth) {
    /**
     * What is drawn.
     *
     * @param systematic how much of each stated uncertainty: 1 for all, 0 for counting alone
     * @param tails whether lines have loss tails
     */
    record Spread(double systematic, boolean tails) {}

    private static final double PHOTON = 1486.6;
    private static final double POWER = -0.5;
    private static final double BRIGHTNESS = 400;
    private static final Map<String, Double> USUAL = Map.of("C 1s", 25.0, "O 1s", 45.0, "Si 2p", 22.0, "Na 1s", 8.0);
    private static final Map<String, Double> PLACE =
            Map.of("C 1s", 284.8, "O 1s", 532.2, "Si 2p", 102.8, "Na 1s", 1071.6);

    static SimulatedHolder draw(ReferenceData reference, long trial, Spread spread) {
        RandomGenerator random = RandomStreams.stream(20260601, "holder", "" + trial);
        Map<String, Double> atoms = new LinkedHashMap<>();
        double sum = 0;
        for (String line : List.of("C 1s", "O 1s", "Si 2p", "Na 1s")) {
            double n = Objects.requireNonNull(USUAL.get(line)) * Math.exp(0.3 * random.nextGaussian());
            atoms.put(line, n);
            sum += n;
        }
        double freePath = 0.75 + 0.05 * spread.systematic() * random.nextGaussian();
        double response = POWER + 0.05 * spread.systematic() * random.nextGaussian();
        double reached = random.nextGaussian() + 0.25 * spread.systematic() * random.nextGaussian();
        List<LinkedSpectrum> spectra = new ArrayList<>();
        Map<String, Double> truth = new LinkedHashMap<>();
        for (Map.Entry<String, Double> e : atoms.entrySet()) {
            Line line = Line.parse(e.getKey());
            double sigma = 1 + 0.05 * spread.systematic() * random.nextGaussian();
            double place = Objects.requireNonNull(PLACE.get(e.getKey()));
            double[] energy = new double[260];
            double start = Math.rint(10 * (place + reached - 10)) / 10;
            for (int i = 0; i < energy.length; i++) energy[i] = start + 0.1 * i;
            double[] zeroLoss = zeroLoss(reference, line, e.getValue() * sigma, place + reached, freePath, energy);
            if (spread.tails()) addTails(zeroLoss);
            for (int i = 0; i < zeroLoss.length; i++) {
                zeroLoss[i] = (zeroLoss[i] + BRIGHTNESS) * Math.pow((PHOTON - energy[i]) / 1000, response);
            }
            spectra.add(linked(line, energy, PoissonSampler.sample(random, zeroLoss)));
            truth.put(line.element(), 100 * e.getValue() / sum);
        }
        Treatment treatment = DefaultTreatment.treatment();
        return new SimulatedHolder(
                new SpotInput(spot(), spectra, OptionalDouble.of(54.7356103), true, treatment, List.of()), truth);
    }

    private static double[] zeroLoss(
            ReferenceData reference, Line line, double strength, double place, double freePath, double[] energy) {
        double[] spectrum = new double[energy.length];
        double split = reference.doublet(line, PHOTON).map(d -> d.splittingEv()).orElse(0.0);
        for (Line member : line.members()) {
            double at = place + (member.equals(line.high()) ? 0 : split);
            double area = BRIGHTNESS
                    * strength
                    * reference.crossSection(member, PHOTON).orElseThrow()
                    * Math.pow((PHOTON - at) / 1000, freePath);
            double natural =
                    reference.naturalWidth(member).map(NaturalWidth::fwhmEv).orElse(0.2);
            double[] peak = new double[energy.length];
            new Voigt().evaluate(energy, new double[] {at, area, 1.15, natural}, peak);
            for (int i = 0; i < peak.length; i++) spectrum[i] += peak[i];
        }
        return spectrum;
    }

    /** J = F + K * J; the loss function of SiO2 from memory: Tougaard, Surf. Interface Anal. 25 (1997) 137. */
    private static void addTails(double[] spectrum) {
        for (int i = 0; i < spectrum.length; i++) {
            double sum = 0;
            for (int k = 1; k <= i; k++) {
                double t = 0.1 * k;
                sum += 0.1 * 325 * t / ((542 - t * t) * (542 - t * t) + 275 * t * t) * spectrum[i - k];
            }
            spectrum[i] += sum;
        }
    }

    private static LinkedSpectrum linked(Line line, double[] energy, double[] counts) {
        String label = line.toString();
        BindingScan scan =
                new BindingScan(label, PHOTON, energy, counts, true, OptionalDouble.of(1), OptionalDouble.of(20));
        return new LinkedSpectrum(
                label,
                new Provenance("simulated", "00", 1, 1, "made"),
                label,
                false,
                SpectrumRole.MAIN,
                scan,
                new Transmission.PowerLaw(POWER),
                Optional.empty());
    }

    private static Spot spot() {
        String json = """
                {"format": "spotline-holder-run/1", "spots": [{"id": "1",
                 "sample": {"name": "silicate", "conductivity": "insulator", "carbon": "adventitious",
                            "expectedElements": ["Na", "Si", "O", "C"]},
                 "mount": {"electricalState": "isolated"}}]}
                """;
        try {
            return HolderPlan.of(HolderRunReader.read("made.json", json.getBytes(StandardCharsets.UTF_8)))
                    .spots()
                    .get(0);
        } catch (ReadException e) {
            throw new IllegalStateException(e);
        }
    }
}
