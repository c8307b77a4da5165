package spotline.demo.corpus;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import spotline.reference.Doublet;
import spotline.reference.Element;
import spotline.reference.Elements;
import spotline.reference.Line;
import spotline.reference.ReferenceData;
import spotline.spectra.BindingScan;
import spotline.spectra.Transmission;

/**
 * Makes random surveys from a seed: case n is the same whichever others are made.
 *
 * <p>Every zero-loss peak brings the tail of {@link Scattering}; Auger electrons, shake-up, plasmons, X-ray satellites, a
 * stray X-ray line, a secondary background and counting noise are added, and all is moved by the surface charging.
 *
 * <p>Shape: one survey a case. Units: counts, eV. Errors: none.
 */
public final class SurveyCorpus {
    private static final double TRANSMISSION_ERROR = 0.05;
    private static final double UNRESOLVED_DOUBLET_EV = 3;
    private static final double HYDROCARBON_WITHIN_EV = 0.18;
    private static final double OVERLAP_KNOWN_TO = 0.1;

    private final long seed;
    private final ReferenceData data;

    public SurveyCorpus(long seed) {
        this.seed = seed;
        this.data = ReferenceData.shipped();
    }

    /** What an element contributes: channel by channel, expected counts before scaling. */
    private static final class Contribution {
        final double[] structure;
        final double[] main;
        final double[] tail;

        Contribution(int channels) {
            structure = new double[channels];
            main = new double[channels];
            tail = new double[channels];
        }
    }

    /** A case with everything drawn. */
    public SurveyCase make(int number) {
        return make(number, Map.of());
    }

    /**
     * A case of a medium with given elements, all else drawn.
     *
     * @param amounts atoms, relative; a layer of hydrocarbon may lie on top
     */
    public SurveyCase make(int number, Map<String, Double> amounts) {
        Draw draw = new Draw(seed, number);
        Setup setup = Setup.draw(draw);
        Recipe recipe = Recipe.draw(draw, amounts);
        Scattering scattering = Scattering.draw(draw);
        Painter painter = new Painter(setup);
        Emission emission = new Emission(data, setup, recipe, draw.between(0.7, 0.8), draw);
        Map<String, Contribution> parts = new LinkedHashMap<>();
        Map<String, Double> apparent = new LinkedHashMap<>();
        double mediumAtoms = recipe.ingredients().stream()
                .filter(i -> !i.overlayer())
                .mapToDouble(Ingredient::amount)
                .sum();
        double hydrocarbon = 0;
        for (Ingredient ingredient : recipe.ingredients()) {
            double atoms = ingredient.overlayer() ? ingredient.amount() : ingredient.amount() / mediumAtoms;
            List<Emitted> emitted = emission.of(ingredient, atoms);
            Contribution part =
                    parts.computeIfAbsent(ingredient.symbol(), symbol -> new Contribution(setup.channels()));
            Element element = Elements.bySymbol(ingredient.symbol()).orElseThrow();
            Line main = data.mainLine(element, setup.photonEv()).orElseThrow();
            paint(painter, part, emitted, main, setup);
            double depth = recipe.thickness();
            double[] answer = ingredient.overlayer() ? scattering.within(depth) : scattering.below(depth);
            painter.tails(part.tail, emitted, answer);
            double amount = apparentAmount(emitted, main, setup, recipe.chargingEv());
            apparent.merge(ingredient.symbol(), amount, Double::sum);
            if (ingredient.symbol().equals("C")) hydrocarbon += amount * hydrocarbonShare(ingredient);
        }
        double[] expected = secondary(setup, parts, recipe.chargingEv(), draw);
        for (Contribution part : parts.values()) {
            for (int i = 0; i < expected.length; i++) expected[i] += part.structure[i] + part.tail[i];
        }
        double top = 0;
        for (int i = 0; i < expected.length; i++) top = Math.max(top, expected[i]);
        double scale = setup.topCounts() / top;
        double[] counts = new double[expected.length];
        for (int i = 0; i < expected.length; i++) counts[i] = draw.count(scale * expected[i]);
        BindingScan scan = new BindingScan(
                "corpus " + number,
                setup.photonEv(),
                painter.energies(),
                counts,
                true,
                OptionalDouble.of(0.1),
                OptionalDouble.of(setup.passEnergyEv()));
        double sum = apparent.values().stream().mapToDouble(Double::doubleValue).sum();
        List<SurveyCase.ElementTruth> truths = new ArrayList<>();
        for (Map.Entry<String, Contribution> e : parts.entrySet()) {
            truths.add(truth(
                    e.getKey(),
                    e.getValue(),
                    parts,
                    expected,
                    scale,
                    100 * apparent.getOrDefault(e.getKey(), 0.0) / sum,
                    setup));
        }
        truths.sort(Comparator.comparingDouble(SurveyCase.ElementTruth::apparentPercent)
                .reversed());
        return new SurveyCase(
                number,
                scan,
                new Transmission.PowerLaw(setup.transmissionPower() + draw.normal(TRANSMISSION_ERROR)),
                setup.monochromated(),
                recipe.chargingEv(),
                100 * hydrocarbon / sum,
                truths);
    }

    private static double hydrocarbonShare(Ingredient carbon) {
        return carbon.states().stream()
                .filter(s -> Math.abs(s.shiftEv() - Recipe.HYDROCARBON) < HYDROCARBON_WITHIN_EV)
                .mapToDouble(Ingredient.State::share)
                .sum();
    }

    private void paint(Painter painter, Contribution part, List<Emitted> emitted, Line main, Setup setup) {
        boolean together = data.doublet(main, setup.photonEv())
                .map(Doublet::splittingEv)
                .filter(s -> s > UNRESOLVED_DOUBLET_EV)
                .isEmpty();
        String name = main.orbital().toString();
        for (Emitted peak : emitted) {
            painter.peak(part.structure, peak, 0, 1);
            if (peak.line().equals(name) && (together || peak.first())) painter.peak(part.main, peak, 0, 1);
            if (peak.line().equals("auger")) continue;
            for (double[] satellite : setup.satellites()) {
                painter.peak(part.structure, peak, -satellite[0], satellite[1]);
            }
            if (setup.strayShare() > 0) painter.peak(part.structure, peak, setup.strayShiftEv(), setup.strayShare());
        }
    }

    private double apparentAmount(List<Emitted> emitted, Line main, Setup setup, double charging) {
        String name = main.orbital().toString();
        double sigma = data.crossSection(main, setup.photonEv()).orElseThrow();
        double amount = 0;
        for (Emitted peak : emitted) {
            if (!peak.line().equals(name)) continue;
            double kinetic = setup.photonEv() - peak.bindingEv() + charging;
            amount += peak.area() / (sigma * Math.pow(kinetic / 1000, 0.75));
        }
        return amount;
    }

    private static double[] secondary(Setup setup, Map<String, Contribution> parts, double charging, Draw draw) {
        int n = setup.channels();
        double mean = 0;
        for (Contribution part : parts.values()) {
            for (int i = 0; i < n; i++) mean += (part.structure[i] + part.tail[i]) / n;
        }
        double slope = draw.between(0.5, 1.5);
        double share = draw.logBetween(0.03, 0.8);
        double flat = mean * (setup.monochromated() ? draw.logBetween(0.0005, 0.01) : draw.logBetween(0.03, 0.3));
        double band = mean * draw.between(0.02, 0.3);
        double[] out = new double[n];
        for (int i = 0; i < n; i++) {
            double binding = setup.lowEv() + i * setup.stepEv();
            double kinetic = Math.max(40, setup.photonEv() - binding);
            double transmission = Math.pow(kinetic / 1000, setup.transmissionPower());
            out[i] = flat * transmission;
            if (binding > charging) {
                double rise = -Math.expm1(-(binding - charging) / 60);
                out[i] += share * mean * rise * Math.pow(kinetic / 1000, -slope) * transmission;
            }
            if (binding > charging && binding < charging + 9) out[i] += band * transmission;
        }
        return out;
    }

    private static SurveyCase.ElementTruth truth(
            String symbol,
            Contribution own,
            Map<String, Contribution> all,
            double[] expected,
            double scale,
            double percent,
            Setup setup) {
        double top = 0;
        for (double value : own.main) top = Math.max(top, value);
        double counts = 0;
        double beside = 0;
        double overlap = 0;
        for (int i = 0; i < own.main.length; i++) {
            if (top == 0 || own.main[i] < 0.05 * top) continue;
            counts += scale * own.main[i];
            beside += scale * (expected[i] - own.main[i]);
            for (Map.Entry<String, Contribution> e : all.entrySet()) {
                if (!e.getKey().equals(symbol)) overlap += scale * e.getValue().structure[i];
            }
        }
        double counting = Math.sqrt(2 * beside);
        double deviation = Math.hypot(counting, OVERLAP_KNOWN_TO * overlap);
        return new SurveyCase.ElementTruth(
                symbol,
                ReferenceData.shipped()
                        .mainLine(Elements.bySymbol(symbol).orElseThrow(), setup.photonEv())
                        .orElseThrow()
                        .toString(),
                percent,
                counts,
                1.645 * deviation,
                2.71 + 3.29 * deviation,
                2.71 + 3.29 * counting);
    }
}
